/** Words for seating: why people sit where they do, and why they cannot be seated. */
import type { NoSeating, Reason } from '../engine/questions/seat/types.ts';
import { riderName, type Voice, vehicleName } from './voice.ts';

const reasons: Readonly<Record<Reason, string>> = {
  'single-in-middle': 'a single rider in the middle',
  'pair-over-trucks': 'two adults, one over each truck',
  'pair-about-middle': 'two adults, one on either side of the middle',
  'child-ahead-of-adult': 'a held child with its adult',
  'even-over-trucks': 'both ends carry alike',
  'left-empty': 'left empty',
};

export const reasonOfSeating = (reason: Reason): string => reasons[reason];

const refusals: Readonly<Record<NoSeating['why'], string>> = {
  'too-few-seats': 'There are fewer free seats on the cars than people to be seated.',
  rules:
    'No seating keeps the ratings of the cars, the host’s rules, and children with the adults who hold them.',
  solver: 'The search for a seating did not come to an end.',
};

export const refusalOfSeating = ({ why }: NoSeating): string => refusals[why];

/** What is told of how people sit now. */
interface AsTheySit {
  /** The car that keeps least; absent: none can be told. */
  readonly worst?: { readonly vehicle: string; readonly keeps: number };
  readonly culprit?: { readonly rider: string; readonly keepsWithout: number };
  readonly move?: {
    readonly rider: string;
    readonly to: { readonly vehicle: string; readonly seat: string };
    readonly changesWith?: string;
    readonly keeps: number;
  };
  readonly unknown: readonly string[];
}

export const tellShare = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

/** Who sets it, in sentences; the move that helps most, apart, since it is also pressed. */
export function tellPlatform(
  { worst, culprit, move, unknown }: AsTheySit,
  voice: Pick<Voice, 'outing'>,
): { readonly lines: readonly string[]; readonly move: string } {
  const seatName = (vehicle: string, id: string): string =>
    voice.outing.train.vehicles.find((v) => v.id === vehicle)?.seats.find((s) => s.id === id)?.name ?? id;
  const lines = [
    worst &&
      `${vehicleName(voice, worst.vehicle)} sets it: in the hardest place of the line its lightest wheel keeps ${tellShare(worst.keeps)} of an even load.`,
    culprit &&
      `${riderName(voice, culprit.rider)} takes most of it: without them it would keep ${tellShare(culprit.keepsWithout)}.`,
    unknown.length > 0 &&
      `Cannot tell for ${unknown.map((id) => vehicleName(voice, id)).join(', ')}: measure how high the centre of gravity lies.`,
  ];
  return {
    lines: lines.filter((line) => typeof line === 'string'),
    move: move
      ? `${riderName(voice, move.rider)} to seat ${seatName(move.to.vehicle, move.to.seat)} of ${vehicleName(voice, move.to.vehicle)}${
          move.changesWith ? `, changing places with ${riderName(voice, move.changesWith)}` : ''
        }: then ${tellShare(move.keeps)}`
      : '',
  };
}
