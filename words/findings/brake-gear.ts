/** Words for the brakes that answer or not, and the wheels that slide. */
import type { FindingOf } from '../../engine/questions/finding.ts';
import type { FactsOf } from '../../engine/questions/findings.ts';
import { tellRail } from '../rails.ts';
import { chainage, say, type Voice } from '../voice.ts';
import { brakeKindWords } from './brakes.ts';
import type { Tellers, Tools } from './teller.ts';

/** A share that a hand on a brake can follow: by 5 %, downward. */
export const twentieths = (share: number): number => Math.floor(share * 20 + 1e-9) * 5;

type Slides = FindingOf<'wheels-slide'>;

const most = (voice: Voice, share: number, gauge: Slides['facts']['gauge']): string =>
  gauge ? say(voice, gauge, 'down') : `${twentieths(share)} % of full brake`;

/** What the day's rail bears, and the stretch that bears less: "12 inHg on a dry rail, 8 inHg in Hollow Tunnel (greasy)". */
export function hardestWords({ facts, where }: Slides, voice: Voice): string {
  const { share, gauge, rail, dayRail, dayShare, dayGauge, others = 0 } = facts;
  const least = most(voice, share.si, gauge);
  if (dayRail === undefined || where.from === undefined || where.to === undefined)
    return `${least} on a ${tellRail(rail)} rail`;
  const piece = `${chainage(voice, where.from, 'down')} to ${chainage(voice, where.to, 'up')}`;
  const more = others > 0 ? ` and on ${others} more` : '';
  const there = `${least} ${where.place ? `in ${where.place} (${tellRail(rail)}, ${piece})` : `from ${piece} (${tellRail(rail)})`}${more}`;
  return dayShare && dayShare.si < 1
    ? `${most(voice, dayShare.si, dayGauge)} on a ${tellRail(dayRail)} rail, ${there}`
    : there;
}

const hardest = (f: Slides, voice: Voice): string => `Brake no harder than ${hardestWords(f, voice)}`;

/** What becomes of one who does not ease. */
function heldFullOn({ held }: FactsOf<'wheels-slide'>, t: Tools<'wheels-slide'>): string {
  if (!held) return '';
  const [stop, full] = [t.fact('stop', 'up'), t.fact('held', 'up')];
  const way = `Held full on, from ${t.fact('speed')} on the steepest fall`;
  return stop === full ? ` ${way}, it is as long, ${full}.` : ` ${way}, it is ${full} instead of ${stop}.`;
}

/** Why a brake does not answer the driver. */
const whyNot: Readonly<Record<string, string>> = {
  'worked-by-another': 'Someone else must act first; Heedway counts on the driver alone.',
  'only-parks':
    'A parking brake is wound on when the train stands. A hand lever that stops it too is told by `stops`.',
  'out-of-reach': 'It is worked by arm, and the driver sits elsewhere.',
  'nothing-to-push-it': 'Nothing ahead of it brakes, so nothing pushes on its coupler.',
};

function noneStops(gears: string | undefined, why: string | undefined): string {
  const reason = why && whyNot[why];
  if (!gears || !reason) return 'None of the brakes on the train answers from where the driver sits.';
  return `What it has (${gears}) is not counted in a stop: ${reason[0].toLowerCase()}${reason.slice(1)}`;
}

export const brakeGearWords = {
  'brake-force-unknown': ({ facts }, t) => ({
    what: `Nobody has said how hard the ${brakeKindWords(t.fact('gear'))} of ${t.vehicle} brakes.`,
    why:
      facts.kind === 'surge'
        ? `It brakes by its push alone: give lever, spring and block of what the ${t.word('coupler')} works. A pull measured with it pushed in is the most that it can give, not what it gives.`
        : 'Without its force the stopping distance is a guess. Pull the braked car with a spring balance, or give cylinder, lever and block.',
  }),
  'wheels-slide': (f, t) => {
    const ratio = `brake ratio ${t.found('up')}, adhesion ${t.required('down')}`;
    const slides = f.facts.likely ? 'slides' : 'may slide';
    if (!f.facts.eased) {
      return {
        what: `The ${brakeKindWords(t.fact('gear'))} of ${t.vehicle} ${slides} its wheels: ${ratio}.`,
        why: 'Nobody eases a brake that comes on by itself: its wheels lock, keep about a third of their hold at speed, and wear flats. The stop is reckoned so.',
      };
    }
    return {
      what: `${hardest(f, t.voice)}: the ${brakeKindWords(t.fact('gear'))} of ${t.vehicle} ${slides} its wheels (${ratio}).`,
      why: `The stop is reckoned with a driver who feels the slide, eases and brakes anew.${heldFullOn(f.facts, t)}`,
    };
  },
  'brake-kinds-do-not-work-together': (_f, t) => ({
    what: `The ${brakeKindWords(t.fact('kind'))} of ${t.fact('vehicles')} is of another kind than the one the engine works.`,
    why: 'Air and vacuum, straight and automatic do not work together: across the joint there is no continuous brake. It is left out of the stop.',
  }),
  'brake-pipe-broken': (_f, t) => ({
    what: `The ${brakeKindWords(t.fact('kind'))} of ${t.fact('vehicles')} does not answer the driver.`,
    why: 'No supply or pipe reaches it through the vehicles ahead. It is left out of the stop.',
  }),
  'vacuum-limited-by-air': (_f, t) => ({
    what: `At this air pressure the brakes of ${t.vehicle} get ${t.found('down')} of vacuum, not ${t.required()}.`,
    why: `The air presses with ${t.fact('air')}; a vacuum brake can have no more than a share of it.`,
  }),
  'brake-not-worked-by-driver': (_f, t) => ({
    what: `The ${brakeKindWords(t.fact('gear'))} of ${t.fact('vehicles')} does not answer the driver and is not counted in the stop.`,
    why: whyNot[t.fact('why')] ?? 'Heedway counts on the driver alone.',
  }),
  'not-braked': (_f, t) => ({
    what: `${t.found()} of ${t.required()} cars have a brake that answers the driver.`,
    why: `Without one: ${t.fact('cars')}. Their weight is stopped by the others.`,
  }),
  'no-brake-answers': ({ facts }, t) => ({
    what: facts.fitted ? 'The driver has no brake that stops the train.' : 'The driver has no brake at all.',
    why: facts.fitted
      ? `${noneStops(facts.gears && t.fact('gears'), facts.why && t.fact('why'))} That it would roll to a stand is no stop.`
      : 'No vehicle has a brake. That the train would roll to a stand is no stop.',
  }),
} satisfies Partial<Tellers>;
