/**
 * From the replies to the papers: what was answered as it was typed, what a shape gives as assumed, nothing else. What
 * cannot be left out and was is asked for; nothing of any example is ever in them.
 */
import { VERSION } from '../../papers/index.ts';
import type { System } from '../../units/index.ts';
import { isThrough, pullIsKnown, steamKeys } from './applies.ts';
import type { FieldKey, Need, Replies } from './field.ts';
import { givenLine, lacksCurves, lacksSights, toldLine } from './line.ts';
import { askedIn, fieldOf, type Question, questions } from './questions.ts';
import { answered, type Fault, type Figure, faultsOf, isUnmeasured, Read } from './reading.ts';
import { type Seated, seated } from './seats.ts';
import { type TrainParts, trainParts } from './vehicles.ts';
import type { Json } from './written.ts';

/** Papers that a person brings: a survey or a host's file instead of the last question. */
export interface Brought {
  readonly line?: Json;
  readonly host?: Json;
  /** Of a survey: how long and what it holds, what was done to it, and what it cannot say. */
  readonly notes?: readonly string[];
}

export interface Growth {
  /** What cannot be read. */
  readonly faults: readonly Fault[];
  /** Without these no word but "cannot tell", in the order in which they are asked. */
  readonly missing: readonly FieldKey[];
  /** What else is not known, and makes the word more careful. */
  readonly open: readonly FieldKey[];
  /** Undefined: nobody can say yet how many seats there are. */
  readonly seated: Seated | undefined;
  /** The outing with all its papers inside, once something can be reckoned. */
  readonly paper?: Json;
}

const onLine: ReadonlySet<FieldKey> = new Set([
  'line.grade',
  'line.gradeLength',
  'line.length',
  'line.shape',
  'line.name',
]);
/** The first is asked for; the others stand beside it. */
const pullKeys: ReadonlySet<FieldKey> = new Set(['engine.pull', 'engine.power', ...steamKeys]);
const counted: readonly FieldKey[] = [
  'people.adults',
  'people.heavy',
  'people.youths',
  'people.children',
  'people.weighed',
];

/** What is asked of a question, papers that were brought taken into account. */
export function askedWith(question: Question, replies: Replies, { line }: Brought): FieldKey[] {
  return askedIn(question, replies).filter(
    (key) =>
      !line ||
      (!onLine.has(key) &&
        (key !== 'line.curve' || lacksCurves(line)) &&
        (key !== 'line.sight' || lacksSights(line))),
  );
}

/** Whether other replies say what this one would. */
const saidOtherwise = (key: FieldKey, replies: Replies): boolean =>
  (key === 'engine.holds' && (replies['engine.parks'] ?? 'none') !== 'none') ||
  (pullKeys.has(key) && (key !== 'engine.pull' || pullIsKnown(replies))) ||
  (counted.includes(key) && counted.some((other) => replies[other] !== undefined));

/** A brake of the cars that does not answer the driver no stop counts: no word waits for how hard it brakes. */
const needOf = (key: FieldKey, replies: Replies): Need =>
  key === 'cars.pull' && !(isThrough(replies['cars.brake']) && replies['cars.worked'] === 'yes')
    ? 'more'
    : fieldOf(key).need;

export function grow(typed: Replies, system: System, brought: Brought = {}): Growth {
  const replies = answered(typed);
  const keys = questions.flatMap(({ id }) => askedWith(id, replies, brought));
  const unsaid = keys.filter((key) => replies[key] === undefined && !saidOtherwise(key, replies));
  const missing = unsaid.filter((key) => needOf(key, replies) !== 'more');
  const open = keys.filter(
    (key) =>
      (unsaid.includes(key) && needOf(key, replies) === 'more' && fieldOf(key).form !== 'text') ||
      isUnmeasured(replies[key], fieldOf(key)),
  );
  const faults = faultsOf(replies, system);
  const wanting = faults.length > 0 || missing.some((key) => fieldOf(key).need === 'paper');
  const made = wanting ? undefined : paperOf(new Read(replies, system), brought);
  return {
    faults: made && !made.ok ? [made.fault] : faults,
    missing,
    open,
    seated: seated(new Read(replies, system)),
    ...(made?.ok ? { paper: made.paper } : {}),
  };
}

type Made = { readonly ok: true; readonly paper: Json } | { readonly ok: false; readonly fault: Fault };

function paperOf(read: Read, brought: Brought): Made | undefined {
  const [gauge, weight] = [read.figure('engine.gauge'), read.figure('engine.weight')];
  if (!gauge || !weight) return undefined;
  const line = brought.line
    ? ({ ok: true, line: givenLine(brought.line, read) } as const)
    : toldLine(read, gauge);
  if (!line.ok) return line;
  const parts = trainParts(read, gauge, weight);
  const engine = String(parts.engine['name']);
  const train = `${engine}${parts.cars === 0 ? ', alone' : ` and ${parts.cars} ${parts.cars === 1 ? 'car' : 'cars'}`}`;
  return {
    ok: true,
    paper: {
      heedway: 'outing',
      version: VERSION,
      name: train,
      line: line.line,
      train: trainOf(read, train, parts),
      host: brought.host ?? hostOf(read),
      conditions: { railState: read.text('line.rail') },
      riders: ridersOf(read, parts),
    },
  };
}

const hostOf = (read: Read): Json => {
  const speed = read.figure('line.speed');
  return {
    heedway: 'host',
    version: VERSION,
    name: speed ? "The host's rules, as told" : "The host's rules: not known yet",
    ...(speed ? { speed: { value: speed.text, source: 'as the host told it' } } : {}),
  };
};

const trainOf = (read: Read, name: string, parts: TrainParts): Json => {
  const chains = read.text('cars.chains');
  return {
    heedway: 'train',
    version: VERSION,
    name,
    vehicles: membersOf(parts),
    ...(chains === undefined ? {} : { chainsFastened: chains === 'yes' }),
  };
};

function membersOf({ engine, car, driverCar, cars }: TrainParts): Json[] {
  const alike = cars - (driverCar ? 1 : 0);
  return [
    { vehicle: engine, id: 'engine' },
    ...(driverCar ? [{ vehicle: driverCar, id: 'driver-car' }] : []),
    ...(car ? [{ vehicle: car, id: 'car', ...(alike > 1 ? { count: alike } : {}) }] : []),
  ];
}

interface Seat {
  readonly vehicle: string;
  readonly seat: string;
}

/** Seats for riders: car by car in turn and from the middle out, so that every car is loaded alike and evenly. */
function seatsOf({ driverCar, cars, seats }: TrainParts): Seat[] {
  const alike = cars - (driverCar ? 1 : 0);
  const ids = [
    ...(driverCar ? ['driver-car'] : []),
    ...Array.from({ length: alike }, (_, i) => (alike > 1 ? `car-${i + 1}` : 'car')),
  ];
  const fromTheMiddle = Array.from({ length: seats }, (_, i) => i).sort(
    (a, b) => Math.abs(a - (seats - 1) / 2) - Math.abs(b - (seats - 1) / 2),
  );
  return fromTheMiddle.flatMap((i) =>
    ids.filter((id) => !(id === 'driver-car' && i === 0)).map((vehicle) => ({ vehicle, seat: `${i + 1}` })),
  );
}

/** The driver, then who was weighed and the heaviest first; whoever finds no seat waits on the platform. */
function ridersOf(read: Read, parts: TrainParts): Json[] {
  const driver = read.figure('people.driver');
  const many = (key: FieldKey, body: Json): Json[] => Array.from({ length: read.count(key) }, () => body);
  const bodies = [
    ...read.figures('people.weighed').map(({ text }: Figure) => ({ weight: text })),
    ...many('people.heavy', { typical: 'heavy' }),
    ...many('people.adults', { typical: 'adult' }),
    ...many('people.youths', { typical: 'youth' }),
    ...many('people.children', { typical: 'child' }),
  ];
  const seats = seatsOf(parts);
  return [
    {
      name: 'Driver',
      ...(driver ? { weight: driver.text } : { typical: 'adult' }),
      ...(parts.driverCar ? { vehicle: 'driver-car', seat: '1' } : { vehicle: 'engine', seat: 'driver' }),
      duty: 'driver',
    },
    ...bodies.map((body, i) => ({ name: `Rider ${i + 1}`, ...body, ...(seats[i] ?? {}) })),
  ];
}
