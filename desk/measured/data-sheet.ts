/**
 * What a club's papers keep of measured tests, as rows of a data sheet that may be published: what was found and on what, without
 * names, places, people or days. A free text of a paper is never among them.
 */
import { checkFile } from '../../papers/check.ts';
import { gearId } from '../../papers/compile/vehicle.ts';
import { type SheetRow, sheetUnits } from '../../papers/import/data-sheet.ts';
import type { LineFile, TestFile, VehicleFile } from '../../papers/schema/index.ts';
import { checkTest } from '../../papers/test/check.ts';
import type { SheetFigure, SummedUp } from '../../words/measured/data-sheet.ts';
import { single } from '../make-up.ts';
import { type Instead, type Json, testsIn } from './apply.ts';
import { runningRecord } from './foretold.ts';
import type { Predicted } from './predicted.ts';

/** @param first number of its first test in the sheet */
export function sheetRows(paper: Json, first = 1): SheetRow[] {
  return testsIn(paper).flatMap((record, i) => {
    const read = checkTest(record);
    return read.ok ? rowsOfTest(paper, read.value, record, first + i) : [];
  });
}

function rowsOfTest(paper: Json, file: TestFile, record: Json, number: number): SheetRow[] {
  const invented = paper['invented'] === true || file.invented === true;
  const line = checkFile('line', paper['heedway'] === 'line' ? paper : paper['line']);
  const rail = file.rail ?? ('rail' in file.test ? file.test.rail : undefined);
  const test: Omit<SheetRow, 'what' | 'value' | 'unit'> = {
    test: number,
    kind: file.test.kind,
    month: file.date.slice(0, 7),
    ...(line.ok ? { gauge: (line.value as LineFile).gauge } : {}),
    ...(rail === undefined ? {} : { rail }),
    ...(invented ? { invented: true as const } : {}),
  };
  const instead = (record['instead'] ?? []) as readonly Instead[];
  const brakes = file.test.kind === 'stop-test' ? file.test.brakes?.join(' ') : undefined;
  return [
    ...instead.flatMap((one) => figureRow(paper, one, test)),
    ...(file.foretold ?? []).map(
      ({ speed, measured, likely, careful }): SheetRow => ({
        ...test,
        ...(brakes === undefined ? {} : { brake: brakes }),
        what: 'stop',
        value: measured,
        unit: 'm',
        speed,
        ...(likely === undefined ? {} : { likely }),
        ...(careful === undefined ? {} : { careful }),
      }),
    ),
  ];
}

const PATH = /^[a-zA-Z]+(\.\w+)*$/;

function figureRow(
  paper: Json,
  { field, vehicle, gear, wrote }: Instead,
  test: Omit<SheetRow, 'what' | 'value' | 'unit'>,
): SheetRow[] {
  const { value, low, high, how, unit = '1' } = wrote as Json;
  // A leak is kept as what one reads of it: no one figure. And what is no path or unit of ours might say anything.
  // What was taken for a like vehicle nobody measured.
  if (typeof value !== 'number' || how !== 'measured' || !PATH.test(field) || !sheetUnits.includes(`${unit}`))
    return [];
  const car =
    vehicle === undefined ? undefined : single(paper).find(({ id }) => `${id}` === vehicle)?.vehicle;
  const read = checkFile('vehicle', paper['heedway'] === 'vehicle' ? paper : car);
  return [
    {
      ...test,
      ...(read.ok ? ofVehicle(read.value as VehicleFile, gear) : {}),
      // A place in a list says whose it is.
      what: field.replace(/\.\d+\./g, '.'),
      value,
      ...(typeof low === 'number' ? { low } : {}),
      ...(typeof high === 'number' ? { high } : {}),
      unit: `${unit}`,
    },
  ];
}

function ofVehicle(file: VehicleFile, gear: string | undefined): Partial<SheetRow> {
  const { gauge, bearing, role, tare, axleGroups, brakes = [] } = file;
  const radius = axleGroups.find((g) => g.wheelRadius !== undefined)?.wheelRadius;
  const brake = brakes.find((b, k) => b.name === gear || gearId(b.name ?? b.kind, k) === gear)?.kind;
  return {
    gauge,
    vehicle: role,
    ...(bearing === undefined ? {} : { bearing }),
    ...(radius === undefined ? {} : { wheel: Number((2 * radius).toPrecision(4)) }),
    weight: Number(tare.value.toPrecision(2)),
    ...(gear === undefined || brake === undefined ? {} : { brake }),
  };
}

/** @param sheets rows of each */
export function sumUp(sheets: readonly (readonly SheetRow[])[]): SummedUp {
  const groups = new Map<string, SheetRow[]>();
  const stops: Predicted[][] = [];
  const once = withoutTwins(sheets);
  for (const rows of once) {
    const own = new Map<number, Predicted[]>();
    for (const row of rows) {
      if (row.what === STOP) {
        own.set(row.test, [...(own.get(row.test) ?? []), stopOf(row)]);
        continue;
      }
      const key = [row.what, row.unit, ofWhat(row)].join('|');
      groups.set(key, [...(groups.get(key) ?? []), row]);
    }
    stops.push(...own.values());
  }
  const record = runningRecord(stops);
  return {
    sheets: sheets.length,
    tests: once.reduce((n, rows) => n + new Set(rows.map((r) => r.test)).size, 0),
    invented: once.flat().filter((r) => r.invented).length,
    figures: [...groups.values()].map((rows) => figureOf(rows)),
    ...(record ? { record } : {}),
  };
}

/** A test that two sheets hold, a club's and what was made of several, counts once. */
function withoutTwins(sheets: readonly (readonly SheetRow[])[]): readonly (readonly SheetRow[])[] {
  const seen = new Set<string>();
  return sheets.map((rows) => {
    const own = [...new Set(rows.map((r) => r.test))].filter((test) => {
      const key = JSON.stringify(rows.filter((r) => r.test === test).map(({ test: _, ...row }) => row));
      const fresh = !seen.has(key);
      seen.add(key);
      return fresh;
    });
    return rows.filter((r) => own.includes(r.test));
  });
}

const STOP = 'stop';

/** Beside which figures it may stand: of such a brake, bearing or rail. */
const ofWhat = ({ what, brake, bearing, rail }: SheetRow): string | undefined =>
  brake ?? (what.startsWith('resistance') ? bearing : /adhesion/i.test(what) ? rail : undefined);

function figureOf(rows: readonly SheetRow[]): SheetFigure {
  const [{ what, unit }] = rows;
  const values = rows.map((r) => r.value).sort((a, b) => a - b);
  const of = ofWhat(rows[0]);
  return {
    what,
    unit,
    ...(of === undefined ? {} : { of }),
    values: values.length,
    least: values[0],
    middle: (values[(values.length - 1) >> 1] + values[values.length >> 1]) / 2,
    greatest: values[values.length - 1],
  };
}

const stopOf = ({ value, speed = 0, likely = Infinity, careful = Infinity }: SheetRow): Predicted => ({
  speed,
  measured: value,
  likely,
  careful,
  inside: value <= careful,
});
