/** Wheelsets of a paper as the engine has them: figures that could not be are named, and the latest reading of wear counts. */
import { exact } from '../../engine/base/quantity.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import type { WearReading, Wheelset } from '../../engine/things/wheel/types.ts';
import { type Wearing, wearPoints } from '../../engine/things/wheel/wear.ts';
import { dayNumber } from '../due/day.ts';
import type { VehicleFile } from '../schema/index.ts';
import { slug } from './line.ts';
import { bySmallRule, type Notes, trouble } from './notes.ts';

type Written = NonNullable<VehicleFile['wheelsets']>[number];

/** Wheels that could not stand between the rails of their own gauge are misread or written in another unit. */
export function wheelsetsOf(file: VehicleFile, notes: Notes): NonNullable<Vehicle['wheelsets']> {
  const { gauge, axleGroups, wheelsets = [] } = file;
  const axles = axleGroups.map((g) => g.axles);
  const known = axles.every((n) => n !== undefined)
    ? axles.reduce((sum: number, n) => sum + (n ?? 0), 0)
    : undefined;
  if (known !== undefined && wheelsets.length > known)
    trouble(
      notes,
      ['wheelsets', known],
      `${wheelsets.length} wheelsets`,
      `at most ${known}: one for each axle`,
    );
  return wheelsets.map((written, i) => {
    checkOne(written, i, gauge, notes);
    return worn({ ...written, id: `${slug(written.name)}-${i + 1}`, wear: wearOf(written) });
  });
}

function checkOne(
  { backToBack, flangeThickness, width }: Written,
  i: number,
  gauge: number,
  notes: Notes,
): void {
  backToBack?.forEach((b, k) => {
    if (b >= gauge)
      trouble(
        notes,
        ['wheelsets', i, 'backToBack', k],
        bySmallRule(b),
        `less than the gauge, ${bySmallRule(gauge)}: between the backs of the wheels`,
      );
  });
  if (width !== undefined && flangeThickness && width <= flangeThickness.high)
    trouble(
      notes,
      ['wheelsets', i, 'width'],
      bySmallRule(width),
      'more than the flange: from the back of the wheel to its outer face',
    );
}

/** A day that no calendar has its field refused. */
function wearOf({ wear = [] }: Written): WearReading[] {
  return wear.flatMap(({ date, ...read }) => {
    const day = dayNumber(date);
    return day === undefined ? [] : [{ ...read, day }];
  });
}

/** The latest reading beside what is stated: whichever is more worn. */
function worn({ wear = [], ...stated }: Wheelset): Wheelset {
  if (wear.length === 0) return stated;
  const whole = { ...stated, wear };
  const latest = (of: Wearing): number | undefined => wearPoints(whole, of).at(-1)?.value;
  const more = (a: number | undefined, b: number | undefined): number | undefined =>
    a === undefined ? b : Math.max(a, b ?? a);
  const [flange, height, hollow] = [latest('flangeThickness'), latest('flangeHeight'), latest('hollow')];
  const { flangeThickness = flange === undefined ? undefined : exact(flange) } = stated;
  const [highest, deepest] = [more(stated.flangeHeight, height), more(stated.hollow, hollow)];
  return {
    ...whole,
    ...(flangeThickness
      ? { flangeThickness: { ...flangeThickness, low: Math.min(flangeThickness.low, flange ?? Infinity) } }
      : {}),
    ...(highest === undefined ? {} : { flangeHeight: highest }),
    ...(deepest === undefined ? {} : { hollow: deepest }),
  };
}
