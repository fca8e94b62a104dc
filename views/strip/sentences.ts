/** The strip for those who do not see it: the same in sentences. */

import type { StripModel, StripWords } from './model.ts';
import { drawnOf } from './roads.ts';
import { pieces } from './speeds.ts';

export function stripSentences(model: StripModel, words: StripWords): string {
  const { line, facing } = model;
  const inOrder = <T extends { readonly at: number }>(list: readonly T[]): T[] =>
    [...list].sort((a, b) => facing * (a.at - b.at));
  const first = `${line.name}: ${line.loop ? 'a loop' : 'a line from end to end'} of ${words.length(line.length)}.`;
  const named = inOrder(line.places).map((p) => `${words.place(p)} at ${words.chainage(p.at)}`);
  const zones = pieces(model).map(({ zone, from, to }) => {
    const [a, b] = (facing > 0 ? [from, to] : [to, from]).map((s) => words.chainage(s));
    return zone.kind === 'arrive'
      ? `arrive and stop from ${a} to ${b}`
      : `${words.speed(zone.speed)} from ${a} to ${b}`;
  });
  const bends = line.curves
    .filter((c) => c.startCurvature === c.endCurvature && c.startCurvature !== 0)
    .map((c) => {
      const hand = c.startCurvature * facing > 0 ? words.left : words.right;
      return `${words.radius(1 / Math.abs(c.startCurvature))} to the ${hand} from ${words.chainage(c.from)} to ${words.chainage(c.to)}`;
    });
  return [
    first,
    model.notToRun ?? '',
    sentence('At most', facing > 0 ? zones : [...zones].reverse()),
    sentence(
      'Brake',
      (model.driven?.acts ?? []).map((act) => words.act(act)),
    ),
    sentence(
      'Rail',
      (model.rails ?? []).map(
        (p) => `${words.rail(p.state)} from ${words.chainage(p.from)} to ${words.chainage(p.to)}`,
      ),
    ),
    sentence('Places', named),
    sentence('Tracks beside it', tracksIn(model, words)),
    sentence('Curves', facing > 0 ? bends : [...bends].reverse()),
  ]
    .filter((s) => s !== '')
    .join(' ');
}

const tracksIn = ({ line }: StripModel, words: StripWords): string[] =>
  (line.tracks ?? []).flatMap((track) => {
    const drawn = drawnOf(track, line);
    return drawn ? [`${track.name} from ${words.chainage(drawn.from)} to ${words.chainage(drawn.to)}`] : [];
  });

const sentence = (head: string, parts: readonly string[]): string =>
  parts.length === 0 ? '' : `${head}: ${parts.join('; ')}.`;
