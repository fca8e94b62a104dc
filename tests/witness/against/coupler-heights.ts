/** What the engine says of the one gap of a train on level track. */
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { lookAtCrests } from '../../../engine/questions/crests/look.ts';

export const heldOn = (outing: Outing) => lookAtCrests(openOuting(outing))[0].under;
