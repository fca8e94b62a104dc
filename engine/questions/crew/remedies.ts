/** Who of the people that are listed could: each is looked at here, and tried on the whole outing by whoever offers it. */
import { applyChange, type Change } from '../../outing/change.ts';
import type { Outing } from '../../outing/types.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';
import { askOrder } from '../order/ask.ts';
import { askCrew } from './ask.ts';
import { atWork } from './at-work.ts';

/** At most so many people are offered for one duty. */
const MOST = 3;

const serious = (outing: Outing): number =>
  [...askCrew(outing), ...askOrder(outing)].filter(
    ({ severity }) => severity === 'forbids' || severity === 'unknown',
  ).length;

/** Of those who have no duty, whoever leaves less in the way than there is now, by the host's rules of people. */
function whoCould(outing: Outing, change: (by: string) => Change): Family[] {
  const busy = new Set(atWork(outing).map(({ id }) => id));
  const now = serious(outing);
  return (outing.crew ?? [])
    .filter(({ id }) => !busy.has(id))
    .map(({ id }) => change(id))
    .filter((one) => serious(applyChange(outing, one)) < now)
    .slice(0, MOST)
    .map((one) => ({ size: 1, changes: [one] }));
}

/** @param name of whoever is in the way */
export function relievedOf(outing: Outing, name: string): readonly Family[] {
  const worker = atWork(outing).find((one) => one.name === name);
  if (!worker) return [];
  if (worker.duty !== 'lookout') return whoCould(outing, (by) => ({ kind: 'relieve', rider: worker.id, by }));
  const at = worker.said?.looksOutAt;
  return at === undefined ? [] : whoCould(outing, (by) => ({ kind: 'look-out', at, by }));
}

type OfPerson = Extract<Finding, { readonly facts: { readonly who: string } }>;

const relieved = (outing: Outing, finding: Finding): readonly Family[] =>
  relievedOf(outing, (finding as OfPerson).facts.who);

export const crewRemedies: Remedies = {
  'out-of-hours': relieved,
  'hours-not-said': relieved,
  'not-fit-to-work': relieved,
  'not-declared': relieved,
  'crew-too-young': relieved,
  'crew-age-not-said': relieved,
  'nobody-beside': relieved,
  'no-lookout': posted,
};

/** One for each post, as they are listed. */
function posted(outing: Outing): readonly Family[] {
  const { crew = [], host } = outing;
  const busy = new Set(atWork(outing).map(({ id }) => id));
  const free = crew.filter(({ id }) => !busy.has(id));
  const posts = (host.lookouts ?? []).filter(({ at }) => !crew.some(({ looksOutAt }) => looksOutAt === at));
  if (posts.length === 0 || free.length < posts.length) return [];
  const changes = posts.map(({ at }, i): Change => ({ kind: 'look-out', at, by: free[i].id }));
  return [
    { size: posts.length, changes: [changes.length === 1 ? changes[0] : { kind: 'together', changes }] },
  ];
}
