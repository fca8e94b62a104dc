/** Words for how good the survey of the line is. */
import type { Tellers } from './teller.ts';

const lacking = {
  places: 'stations, signals and crossings along it',
  sights: 'how far the driver sees on it',
  structures: 'what stands beside and over it',
  flangeways: 'its frogs and crossings',
  railStretches: 'where its rail is usually worse',
} as const;

const words = { hold: 'hold', unknown: 'cannot tell', limits: 'go within limits' } as const;

export const surveyWords = {
  'track-not-told': (f, t) => ({
    what: `The route runs over ${t.fact('track')}, and of it nobody told ${lacking[f.facts.lacks]}.`,
    why: 'That nothing is written does not mean that nothing is there. Write it by its own distances, or an empty list.',
  }),
  'other-move': (f, t) => ({
    what: `Move ${f.facts.move} of this route, over ${t.where}: ${words[f.facts.word]}, for ${f.facts.findings === 1 ? 'one reason' : `${f.facts.findings} reasons`}.`,
    why: `Every other move is run with the last vehicle first. "move": ${f.facts.move} in the outing answers this one in full.`,
  }),
  'way-back': ({ facts: { word, reasons, run }, found }, t) => ({
    what: `The way back, ${run === 'pushed' ? 'pushed' : 'with the engine leading'}: ${words[word]}${found ? `, no faster than ${t.found('down')} where it is slowest` : ''}, for ${reasons.si === 1 ? 'one reason' : `${reasons.si} reasons`} more than on this way.`,
    why: `What is climbed on one way is a fall on the other. Speeds, stops and counts beside this are of this way alone: ${run === 'pushed' ? 'ask the way back as an outing of its own, with its vehicles in the order in which they are pushed' : 'look at the way back too (*way back* beside the rail, or --back), before it leaves'}.`,
  }),
  'structure-beside-track': (_f, t) => ({
    what: `${t.fact('structure')} stands near ${t.fact('track')}, over which the route runs, and is measured from another track alone.`,
    why: 'Measure it from the middle of this one too, and write it there under the same name, however far it is.',
  }),
  'heights-poor': (_f, t) => ({
    what: `The heights of the line are poor (${t.fact('quality')}).`,
    why: 'A satellite height is off by metres, a guessed one by more: the steepest place may be twice as steep. Level the line there at least; until then stops are reckoned as if its grades had been taped.',
  }),
} satisfies Partial<Tellers>;
