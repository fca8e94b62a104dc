/** The tests that a paper keeps: how old each is, and whether what it found still counts. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';
import type { WorkedPart } from '../../engine/things/vehicle/types.ts';
import { checkFile } from '../../papers/check.ts';
import { daysBetween, tooOldOn, workedSince } from '../../papers/compile/expired.ts';
import type { KeptState, KeptTest } from '../../words/measured/ages.ts';
import { single } from '../make-up.ts';
import { type Instead, type Json, testsIn } from './apply.ts';
import { kindOf } from './record.ts';

/** Which part of a vehicle a field is of, as far as work on it makes a test of it void. */
const parts: readonly (readonly [RegExp, WorkedPart])[] = [
  [/^brakes\./, 'brakes'],
  [/^resistance\./, 'wheels'],
  [/^(centreHeight|tare)$/, 'body'],
  [/^(front|rear)\./, 'couplers'],
  [/^traction\./, 'engine'],
];

/** @param today where the paper says no day */
export function keptTests(paper: Json, today: string): KeptTest[] {
  const on = (paper['date'] as string | undefined) ?? today;
  const host = checkFile('host', paper['host']);
  const most = host.ok ? host.value.measuredLasts?.value : undefined;
  const all = testsIn(paper);
  return all.map((test, i) => {
    const date = `${test['date']}`;
    const days = daysBetween(date, on);
    const kind = kindOf(test);
    return {
      number: i + 1,
      name: `${test['name']}`,
      date,
      ...(kind === undefined ? {} : { kind: kind satisfies TestKind }),
      ...(Number.isFinite(days) ? { days } : {}),
      state: stateOf(paper, insteadOf(test), all.slice(i + 1).flatMap(insteadOf), {
        date,
        tooOld: tooOldOn(date, paper['date'] as string | undefined, most),
      }),
    };
  });
}

const insteadOf = (record: Json): readonly Instead[] =>
  (record['instead'] as readonly Instead[] | undefined) ?? [];

function stateOf(
  paper: Json,
  own: readonly Instead[],
  later: readonly Instead[],
  { date, tooOld }: { readonly date: string; readonly tooOld: boolean },
): KeptState {
  if (own.length === 0) return 'check';
  const replaced = (one: Instead): boolean =>
    later.some((o) => o.field === one.field && o.gear === one.gear && o.vehicle === one.vehicle);
  const standing = own.filter((one) => !replaced(one));
  if (standing.length === 0) return 'replaced';
  if (tooOld) return 'too-old';
  const worked = ({ field, vehicle }: Instead): boolean => {
    const part = parts.find(([of]) => of.test(field))?.[1];
    const on =
      paper['heedway'] === 'vehicle' ? paper : single(paper).find(({ id }) => `${id}` === vehicle)?.vehicle;
    return part !== undefined && workedSince(on?.['worked'] as never, part, date);
  };
  if (standing.every(worked)) return 'worked';
  return standing.some(worked) ? 'partly-worked' : 'counts';
}
