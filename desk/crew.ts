/**
 * The crew of an outing on one sheet: who does what, what each is signed off for, hours, what each says, who else
 * could, and what of it is in the way. The words for the answer's findings are the answer's own.
 */
import { exampleBriefing } from '../data/briefing.ts';
import { applyChange } from '../engine/outing/change.ts';
import type { Outing, Signal } from '../engine/outing/types.ts';
import { askCrew } from '../engine/questions/crew/ask.ts';
import { type AtWork, atWork } from '../engine/questions/crew/at-work.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { askGuard } from '../engine/questions/host/guard.ts';
import { askGround, askOrder } from '../engine/questions/order/ask.ts';
import type { CrewMember, Duty } from '../engine/things/duty.ts';
import { tellCompetence, tellHours, tellSays } from '../words/crew.ts';
import type { Voice } from '../words/voice.ts';
import { trade } from '../words/voice.ts';

export interface OnSheet {
  readonly name: string;
  /** "drives", "looks out at the crossing", "stands by". */
  readonly does: string;
  readonly signedOff: readonly string[];
  readonly hours: string;
  readonly says: string;
  /** Duties of today's that he or she could take over, by the host's rules of people. */
  readonly could: readonly Duty[];
}

export interface CrewSheet {
  readonly people: readonly OnSheet[];
  readonly signals: readonly Signal[];
  /** As it was said for the day. */
  readonly signalsToday?: string;
  readonly dress: string;
  /** The host has no words of its own for what the crew wears. */
  readonly dressExample: boolean;
  /** What is amiss on the ground, and what that is to whoever works there. */
  readonly ground: readonly Finding[];
  /** What the answer says of people at work. */
  readonly findings: readonly Finding[];
}

type Json = Readonly<Record<string, unknown>>;

const competences: ReadonlySet<string> = new Set([
  'driver-competence',
  'guard-competence',
  'lookout-competence',
  'fit-for-duty',
]);

/** @param paper an outing's with all parts in it @param outing as it was read, or with what is tried on it */
export function crewSheet(paper: Json, outing: Outing, voice: Voice): CrewSheet {
  const briefing = ((paper['host'] as Json | undefined)?.['briefing'] ?? {}) as { readonly dress?: string };
  const working = atWork(outing);
  const ids = new Set(working.map(({ id }) => id));
  const standBy = (outing.crew ?? []).filter(({ id }) => !ids.has(id));
  return {
    people: [
      ...working.map((one) => onSheet(outing, one.name, one.said, doesWords(one, voice), [], voice)),
      ...standBy.map((one) =>
        onSheet(outing, one.name, one, 'stands by', couldTake(outing, working, one), voice),
      ),
    ],
    signals: outing.host.signals ?? [],
    ...(outing.signals === undefined ? {} : { signalsToday: outing.signals }),
    dress: briefing.dress ?? exampleBriefing.dress,
    dressExample: briefing.dress === undefined,
    ground: askGround(outing),
    findings: crewFindings(outing),
  };
}

/** Of people at work, with what the host and the trade ask of who is there. */
export const crewFindings = (outing: Outing): readonly Finding[] => [
  ...askCrew(outing),
  ...askOrder(outing).filter(({ facts }) => 'what' in facts && competences.has(facts.what)),
  ...askGuard(outing),
];

function onSheet(
  { host, shown = [] }: Outing,
  name: string,
  said: CrewMember | undefined,
  does: string,
  could: readonly Duty[],
  voice: Voice,
): OnSheet {
  const asked = (['sober', 'fit'] as const).filter(
    (says) => host[says === 'sober' ? 'soberDeclared' : 'fitDeclared']?.value,
  );
  return {
    name,
    does,
    signedOff: shown
      .filter(({ what, of }) => of === name && competences.has(what))
      .map((one) => tellCompetence(one, voice)),
    hours: said?.hours ? tellHours(said.hours, voice) : '',
    says: tellSays(said, asked),
    could,
  };
}

function doesWords({ duty, said }: AtWork, { wording }: Voice): string {
  if (duty === 'lookout') return `looks out at ${said?.looksOutAt ?? ''}`;
  return duty === 'driver' ? 'drives' : `rides as ${trade(wording, 'conductor')}`;
}

/** Duties of those at work in which nothing of his or her own would be in the way. */
function couldTake(outing: Outing, working: readonly AtWork[], { id, name }: CrewMember): Duty[] {
  const duties = working.flatMap(({ id: rider, duty, said }) => {
    const at = said?.looksOutAt;
    if (duty === 'lookout' && at === undefined) return [];
    const after = applyChange(
      outing,
      duty === 'lookout'
        ? { kind: 'look-out', at: at as string, by: id }
        : { kind: 'relieve', rider, by: id },
    );
    return inTheWay(after, name) ? [] : [duty];
  });
  return [...new Set(duties)];
}

const inTheWay = (outing: Outing, name: string): boolean =>
  [...askCrew(outing), ...askOrder(outing)].some(
    ({ severity, facts }) =>
      (severity === 'forbids' || severity === 'unknown') &&
      (('who' in facts && facts.who === name) || ('of' in facts && facts.of === name)),
  );
