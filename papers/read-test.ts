/** Reading a test's record: apart from the papers that every answer needs, which do not wait for it. */
import type { Outing } from '../engine/outing/types.ts';
import type { Vehicle } from '../engine/things/vehicle/types.ts';
import { compileTest, type TestRecord } from './compile/test.ts';
import { compileVehicle } from './compile/vehicle.ts';
import {
  type Entry,
  type Load,
  outingFrom,
  type Part,
  type Read,
  type Reading,
  run,
  vehicleFrom,
} from './read.ts';
import { checkTest } from './test/check.ts';

/** A test's record, with the outing or the vehicle that it was made with. */
export interface ReadTest extends TestRecord {
  readonly outing?: Outing;
  readonly vehicle?: Vehicle;
}

async function testFrom(reading: Reading, part: Part): Promise<ReadTest | undefined> {
  const file = reading.checked('test', part, checkTest(part.json));
  const raw = part.json as Record<string, unknown> | null;
  const at = async (key: 'outing' | 'vehicle'): Promise<Part | undefined> =>
    raw && typeof raw === 'object' && raw[key] !== undefined
      ? reading.part(part, [key], raw[key])
      : undefined;
  const outingPart = await at('outing');
  const outing = outingPart && (await outingFrom(reading, outingPart));
  const vehiclePart = await at('vehicle');
  const vehicle = vehiclePart && (await vehicleFrom(reading, vehiclePart));
  const compiled =
    vehicle &&
    reading.compile(vehiclePart, (notes) => compileVehicle(vehicle, 'vehicle', vehicle.name, notes));
  if (!file) return undefined;
  const record = reading.compile(part, (notes) => compileTest(file, notes));
  return { ...record, ...(outing ? { outing } : {}), ...(compiled ? { vehicle: compiled } : {}) };
}

/** @param load gives the papers of train, line or vehicle that it names */
export const readTest = (entry: Entry, load: Load): Promise<Read<ReadTest>> => run(entry, load, testFrom);
