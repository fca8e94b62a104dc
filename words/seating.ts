/** Words for seating: why people sit where they do, and why they cannot be seated. */
import type { NoSeating, Reason } from '../engine/questions/seat/types.ts';

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
