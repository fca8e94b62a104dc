/** The questions of an answer, in the order in which equals among their findings are told. The only wiring. */
import { assumptions } from '../questions/assumptions/question.ts';
import { balance } from '../questions/balance/question.ts';
import { brakeGear } from '../questions/brakes/gear-question.ts';
import { brakes } from '../questions/brakes/question.ts';
import { chains } from '../questions/chains/question.ts';
import { clearance } from '../questions/clearance/question.ts';
import { couplers } from '../questions/couplers/question.ts';
import { crests } from '../questions/crests/question.ts';
import { crew } from '../questions/crew/question.ts';
import { singleFailures } from '../questions/failures/question.ts';
import { flag } from '../questions/flag/question.ts';
import { gap } from '../questions/gap/question.ts';
import { haul } from '../questions/haul/question.ts';
import { hold } from '../questions/hold/question.ts';
import { host } from '../questions/host/question.ts';
import { humps } from '../questions/humps/question.ts';
import { order } from '../questions/order/question.ts';
import { part } from '../questions/part/question.ts';
import { pitch } from '../questions/pitch/question.ts';
import { practice } from '../questions/practice/question.ts';
import type { Question } from '../questions/question.ts';
import { ratings } from '../questions/ratings/question.ts';
import { sight } from '../questions/sight/question.ts';
import { speed } from '../questions/speed/question.ts';
import { standards } from '../questions/standards/question.ts';
import { survey } from '../questions/survey/question.ts';
import { swing } from '../questions/swing/question.ts';
import { wheels } from '../questions/wheels/question.ts';
import { wayBackOf } from './way-back.ts';

/** All that are asked of one way over a line. */
export const ofOneWay: readonly Question<unknown>[] = [
  host,
  practice,
  order,
  crew,
  ratings,
  swing,
  crests,
  pitch,
  humps,
  wheels,
  clearance,
  standards,
  haul,
  hold,
  brakeGear,
  sight,
  survey,
  assumptions,
  balance,
  speed,
  gap,
  chains,
  couplers,
  part,
  singleFailures,
  flag,
  brakes,
];

export const questions: readonly Question<unknown>[] = [...ofOneWay, wayBackOf(ofOneWay)];
