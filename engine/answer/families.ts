/**
 * The changes that the questions know, by question. Beside the list of questions and not in it: the answer itself does
 * without them, and the page that shows it first need not load them.
 */
import { wayBack } from '../outing/moves.ts';
import type { Outing } from '../outing/types.ts';
import { balanceRemedies } from '../questions/balance/remedies.ts';
import { brakeGearRemedies } from '../questions/brakes/gear-remedies.ts';
import { chainsRemedies } from '../questions/chains/remedies.ts';
import { clearanceRemedies } from '../questions/clearance/remedies.ts';
import { couplersRemedies } from '../questions/couplers/remedies.ts';
import { crestRemedies } from '../questions/crests/remedies.ts';
import { crewRemedies } from '../questions/crew/remedies.ts';
import { failuresRemedies } from '../questions/failures/remedies.ts';
import type { Family, Remedies } from '../questions/family.ts';
import type { Finding } from '../questions/finding.ts';
import { gapRemedies } from '../questions/gap/remedies.ts';
import { haulRemedies } from '../questions/haul/remedies.ts';
import { holdRemedies } from '../questions/hold/remedies.ts';
import { hostRemedies } from '../questions/host/remedies.ts';
import { humpRemedies } from '../questions/humps/remedies.ts';
import { orderRemedies } from '../questions/order/remedies.ts';
import { partRemedies } from '../questions/part/remedies.ts';
import { pitchRemedies } from '../questions/pitch/remedies.ts';
import { practiceRemedies } from '../questions/practice/remedies.ts';
import { ratingsRemedies } from '../questions/ratings/remedies.ts';
import { sightRemedies } from '../questions/sight/remedies.ts';
import { speedRemedies } from '../questions/speed/remedies.ts';
import { standardRemedies } from '../questions/standards/remedies.ts';
import { swingRemedies } from '../questions/swing/remedies.ts';
import { wheelRemedies } from '../questions/wheels/remedies.ts';
import { inquire } from './inquiry.ts';
import { ofOneWay } from './questions.ts';
import { worseOnTheWayBack } from './way-back.ts';

/** By the id of the question whose findings they are for. */
export const remediesOf: Readonly<Record<string, Remedies>> = {
  host: hostRemedies,
  practice: practiceRemedies,
  order: orderRemedies,
  crew: crewRemedies,
  ratings: ratingsRemedies,
  swing: swingRemedies,
  crests: crestRemedies,
  pitch: pitchRemedies,
  humps: humpRemedies,
  wheels: wheelRemedies,
  clearance: clearanceRemedies,
  standards: standardRemedies,
  haul: haulRemedies,
  hold: holdRemedies,
  brakeGear: brakeGearRemedies,
  sight: sightRemedies,
  balance: balanceRemedies,
  speed: speedRemedies,
  gap: gapRemedies,
  chains: chainsRemedies,
  couplers: couplersRemedies,
  part: partRemedies,
  singleFailures: failuresRemedies,
};

const byCode: Remedies = Object.assign({}, ...Object.values(remediesOf));

/** Changes worth trying for a finding, by its code; for the way back those for what is worse on it. */
export const familiesFor = (outing: Outing, finding: Finding): readonly Family[] =>
  finding.code === 'way-back'
    ? ofTheWayBack(outing, finding)
    : (byCode[finding.code]?.(outing, finding) ?? []);

/** Of so many reasons, the worst first. */
const REASONS = 3;

function ofTheWayBack(outing: Outing, { severity }: Finding): Family[] {
  const back = wayBack(outing);
  if (!back) return [];
  const out = inquire(outing);
  const worse = worseOnTheWayBack(outing, ofOneWay, {}, (question) => out.of(question).findings);
  return worse
    .filter((f) => f.severity === severity)
    .slice(0, REASONS)
    .flatMap((f) => familiesFor(back, f));
}
