/**
 * Outings that together make every finding. Most are made by random outings; what is rare has an outing of its own
 * here: a new code that chance does not make gets one line. Runs by itself in a bundle (tests/support/bundled.ts).
 */

import { familiesFor } from '../../engine/answer/families.ts';
import type { Polygon } from '../../engine/base/numerics/polygon.ts';
import { exact } from '../../engine/base/quantity.ts';
import { remembered } from '../../engine/base/remember.ts';
import type { HostRules, Outing, Restriction } from '../../engine/outing/types.ts';
import { trackFindings } from '../../engine/questions/clearance/tracks.ts';
import type { Finding } from '../../engine/questions/finding.ts';
import type { FindingCode } from '../../engine/questions/findings.ts';
import type { BrakeKind } from '../../engine/things/brake/kinds/index.ts';
import type { CrewMember } from '../../engine/things/duty.ts';
import type { Shown } from '../../engine/things/in-date.ts';
import type { Line, Structure, Track } from '../../engine/things/line/types.ts';
import type { BrakeGear, Vehicle } from '../../engine/things/vehicle/types.ts';
import { car } from './balance.ts';
import { beside, CAR, post } from './beside.ts';
import { brakedTrain } from './braked-trains.ts';
import { crested, knuckle } from './crested.ts';
import { dressed, firstAnswer, quickInquiry } from './dressed-outings.ts';
import { furnished, unequalTrains } from './finding-sums.ts';
import { drawer } from './random-outings.ts';
import { altered, party, plain, rider, rule, withHost } from './rules.ts';
import { loopRoad, pointsOf, roadThatEnds, straight } from './tracks.ts';
import { wheeled } from './wheeled.ts';

/** A long engine and short cars over a hump of a tenth. */
const overHump = (face?: number, changes: Partial<Vehicle> = {}): Outing => {
  const heights = [0, 40, 41, 42, 80].map((at) => ({ at, height: at < 41 ? 0.1 * at : 8.2 - 0.1 * at }));
  const on = { type: 'knuckle', height: 0.11, ...(face === undefined ? {} : { face }) };
  const shapes = [
    { length: 3.6, overhang: 0.9 },
    { length: 1.2, overhang: 0.2 },
  ];
  return altered(crested(heights, shapes, [on, on]), 0, changes);
};
/** Half a box, from the middle below to the middle above. */
const box = (half: number, high: number): Polygon => [
  { x: 0, y: 0.02 },
  { x: half, y: 0.02 },
  { x: half, y: high },
  { x: 0, y: high },
];
const profiled = (changes: Partial<Vehicle>): Outing => {
  const outing = car1(changes);
  const { gauge } = outing.train.vehicles[0];
  const profiles = [{ gauge, points: box(0.25, 0.8), source: 'drawing 3' }];
  return { ...outing, host: { ...outing.host, profiles } };
};
const car1 = (changes: Partial<Vehicle>): Outing => altered(plain(2, { riders: party(3) }), 1, changes);
const host = (rules: Partial<HostRules>): Outing => withHost(2, rules, { riders: party(3) });
const braked = (kind: BrakeKind, cars: number, ...changes: [object?, object?]): Outing =>
  plain(cars, { train: brakedTrain(kind, cars, ...changes) });
const geared = (outing: Outing, change: Partial<BrakeGear>): Outing => ({
  ...outing,
  train: {
    ...outing.train,
    vehicles: outing.train.vehicles.map((v) => ({
      ...v,
      brakes: v.brakes.map((gear) => ({ ...gear, ...change })),
    })),
  },
});
const restricted = (more: Partial<Restriction>): Outing => {
  const outing = plain(2);
  const of = outing.line.name;
  const one = {
    of,
    from: 30,
    to: 50,
    why: 'soft bank',
    since: '2026-05-30',
    source: 'record 1a2b3c4d',
    ...more,
  };
  return { ...outing, restrictions: [one] };
};
const strong = { type: 'link', chain: { count: 2, size: 0.00635, slack: 0.01, weakestPart: exact(9000) } };
const unmeasured = ({ centreHeight: _, ...vehicle }: Vehicle): Vehicle => vehicle;
const unrigged = ({ rigging: _, ...gear }: BrakeGear): BrakeGear => gear;
const unpowered = ({ traction: _, ...vehicle }: Vehicle): Vehicle => vehicle;
const swapped = (index: number, change: (v: Vehicle) => Vehicle): Outing => {
  const outing = plain(2);
  const vehicles = outing.train.vehicles.map((v, i) => (i === index ? change(v) : v));
  return { ...outing, train: { ...outing.train, vehicles } };
};
/** Ridden, on a line with a track beside it. */
const railed = (track: (line: Line) => Track, changes: Partial<Line> = {}): Outing => {
  const line = straight(beside({}).line);
  return beside({ line: { ...line, ...changes, tracks: [track(line)] }, ridden: true });
};
/** What riders step on stands 0.2 m above the rail, as wide as the car. */
const atPlatform = (changes: Partial<Structure>, host: Partial<HostRules>): Outing => ({
  ...beside({
    structures: [post({ platform: true, distance: CAR.width / 2 + 0.03, top: 0.18, ...changes })],
    vehicle: { step: { height: 0.2, width: CAR.width } },
  }),
  host: { name: 'made up', ...host },
});
const stub = (radius?: number) => ({
  id: 'stub-1',
  name: 'Stub',
  side: 'left' as const,
  spacings: [
    { at: 30, spacing: 0 },
    { at: 32, spacing: 1 },
  ],
  ...(radius === undefined ? {} : { radius }),
});
const sheet = (standards: HostRules['standards']): Outing => {
  const outing = wheeled();
  const bare = outing.train.vehicles.map(({ flange: _, ...v }): Vehicle => v);
  return {
    ...outing,
    host: { ...outing.host, ...(standards ? { standards } : {}) },
    train: { ...outing.train, vehicles: bare },
  };
};
const onLine = (changes: Partial<Outing['line']>): Outing => {
  const outing = plain(2);
  return { ...outing, line: { ...outing.line, ...changes } };
};
const steep = [
  { at: 0, height: 0 },
  { at: 100, height: 16 },
  { at: 200, height: 16 },
];
const tight = { from: 20, to: 30, startCurvature: 0.6, endCurvature: 0.6, gaugeWidening: 0 };
const one = [rider('a', '1')];
/** Couplers of one make round a curve of 10 m. */
const bent = (coupling: Vehicle['front']): Outing => {
  const curve = { ...tight, to: 60, startCurvature: 0.1, endCurvature: 0.1 };
  const outing = onLine({ curves: [curve] });
  const vehicles = outing.train.vehicles.map((v) => ({ ...v, front: coupling, rear: coupling }));
  return { ...outing, train: { ...outing.train, vehicles } };
};
/** A bar between the second and third vehicle. */
const barred = (rear: Vehicle['rear'], front: Vehicle['front']): Outing =>
  altered(
    swapped(1, (v) => ({ ...v, rear })),
    2,
    { front },
  );
const coupled = (front: number, rear?: number): Outing =>
  altered(
    swapped(1, (v) => ({ ...v, rear: { ...strong, height: front } })),
    2,
    {
      front: { ...strong, ...(rear === undefined ? {} : { height: rear }) },
    },
  );

/** A train braked through a hose alone, on chains that hold anything, with its rear or its head on a bank. */
const chained = (heights: Outing['line']['heights'], cars = 3): Outing => {
  const outing = braked('straight-air', cars);
  const vehicles = outing.train.vehicles.map((v) => ({ ...v, front: strong, rear: strong }));
  const end = heights[heights.length - 1].at;
  return {
    ...outing,
    plannedSpeed: 2,
    train: { ...outing.train, vehicles },
    line: { ...outing.line, loop: false, length: end, heights: [...heights] },
  };
};
const unreadable = (): Outing => {
  const outing = plain(2);
  const line = Object.defineProperty({ ...outing.line }, 'heightQuality', {
    get: () => {
      throw new Error('cannot be read');
    },
  });
  return { ...outing, line };
};

/** The host asks for the boiler's test; what is shown of it. */
const asksForBoiler = (...states: readonly Shown['state'][]): Outing => {
  const inDate = [{ what: 'boiler-hydraulic-test', of: 'engine', source: 'rule book, p. 4' }] as const;
  const outing = host({ inDate });
  const of = outing.train.vehicles[0].name;
  return { ...outing, shown: states.map((state) => ({ what: 'boiler-hydraulic-test', of, state })) };
};

/** A driver and a guard at work by rules of every kind, and what is said of the driver and of the day. */
const atWork = (
  said: Partial<CrewMember>,
  sky: Partial<Outing['conditions']>,
  more: Partial<Outing>,
): Outing => {
  const book = { source: 'rule book, p. 4' };
  const rules: Partial<HostRules> = {
    inDate: [{ what: 'driver-competence', of: 'driver', ...book }],
    mostOnDuty: rule(43_200),
    fitDeclared: rule(true),
    youngestDriver: rule(16),
    drivesAlone: rule(18),
    lookouts: [{ at: 'the crossing', ...book }],
    guardSignals: rule(true),
    lightningStops: rule(true),
    mostWind: rule(10),
    mostHeat: rule(308),
    runsAtNight: rule(false),
  };
  const [d, g] = [rider('d', '1', { duty: 'driver' }), rider('g', '2', { duty: 'guard', vehicle: 'car2' })];
  const crew = [{ id: 'd', name: d.name, mass: exact(70), ...said }];
  const of = withHost(2, rules, { riders: [d, g], crew, ...more });
  return { ...of, conditions: { ...of.conditions, ...sky } };
};

const own: Partial<Record<FindingCode, () => Outing>> = {
  'out-of-date': () => asksForBoiler('out'),
  'not-shown': () => asksForBoiler(),
  'in-grace': () => asksForBoiler('grace'),
  'line-closed': () => restricted({}),
  'line-slow': () => restricted({ speed: 1 }),
  'limit-off-line': () => restricted({ to: 1e5 }),
  'defect-open': () => {
    const of = plain(2).train.vehicles[0].name;
    return plain(2, { defects: [{ of, what: 'cracked tire', rejects: true, since: '2026-05-30' }] });
  },
  // And with it all else of the people and of the day that nobody said.
  'hours-not-said': () => atWork({}, {}, {}),
  // And with it all else that is amiss with them.
  'out-of-hours': () => {
    const signedFor = { line: 'Elsewhere' };
    const shown = [{ what: 'driver-competence', of: 'rider d', state: 'stands', signedFor }] as const;
    const sky = { lightning: true, wind: 11, temperature: 309, night: true };
    return atWork({ hours: { onDuty: 43_260 }, fit: false, age: 15 }, sky, { shown });
  },
  'no-brake-answers': () => {
    const outing = plain(2);
    return {
      ...outing,
      train: { ...outing.train, vehicles: outing.train.vehicles.map((v) => ({ ...v, brakes: [] })) },
    };
  },
  'held-train-runs-away': () =>
    chained([
      { at: 0, height: 12 },
      { at: 400, height: 0 },
    ]),
  'held-train-rolls-back': () =>
    chained([
      { at: 0, height: 3 },
      { at: 150, height: 0 },
      { at: 300, height: 3 },
    ]),
  'train-longer-than-line': () =>
    onLine({
      loop: false,
      length: 4,
      heights: [
        { at: 0, height: 0 },
        { at: 4, height: 0 },
      ],
    }),
  'question-failed': unreadable,
  'traction-unknown': () => swapped(0, unpowered),
  'brake-force-unknown': () => swapped(1, (v) => ({ ...v, brakes: v.brakes.map(unrigged) })),
  'brake-kinds-do-not-work-together': () => {
    const outing = braked('automatic-vacuum', 2);
    return altered(outing, 2, { brakes: brakedTrain('straight-air', 1).vehicles[1].brakes });
  },
  'brake-pipe-broken': () => {
    const outing = braked('automatic-vacuum', 2);
    return { ...outing, train: { ...outing.train, pipeBrokenAfter: [0] } };
  },
  'brake-not-worked-by-driver': () => geared(braked('mechanical', 2), { workedBy: 'guard' }),
  'brake-slow-to-fill': () => braked('straight-air', 10, { hoseDiameter: 0.003, chokeDiameter: 0.003 }),
  'brake-slow-to-release': () => braked('straight-air', 10, { hoseDiameter: 0.001, chokeDiameter: 0.001 }),
  'brake-slower-than-stated': () =>
    geared(braked('straight-air', 6), { deadTime: exact(0.1), buildUp: exact(0.1) }),
  'brake-lost-with-hose': () => braked('straight-air', 2),
  'supply-loss-unknown': () => geared(braked('electric', 2), { force: exact(200) }),
  'gauge-differs': () => car1({ gauge: 0.19 }),
  'too-many-riders': () => host({ mostRiders: rule(1) }),
  'too-many-riders-on-car': () => host({ mostRidersPerCar: rule(1) }),
  'too-many-riders-per-axle': () => host({ ridersPerAxle: rule(0.25) }),
  'chains-missing': () => {
    const outing = host({ chainsRequired: rule(true) });
    return { ...outing, train: { ...outing.train, chainsFastened: false } };
  },
  'too-few-cars-braked': () => altered(host({ brakedShare: rule(1) }), 2, { brakes: [] }),
  'guard-missing': () => host({ guardFromCars: rule(2) }),
  'lights-missing': () => {
    const outing = host({ lightsAtNight: rule(true), guardAtNight: rule(true) });
    return { ...outing, conditions: { ...outing.conditions, night: true } };
  },
  'seat-too-high': () => host({ seatHeight: rule(0.2) }),
  'rider-too-young': () => withHost(2, { youngestRider: rule(5) }, { riders: [rider('a', '1', { age: 4 })] }),
  'child-alone': () => plain(2, { riders: [rider('a', '1', { age: 5 })] }),
  'infant-aboard': () => plain(2, { riders: [rider('a', '1', { age: 0.5 }), rider('b', '2')] }),
  'more-people-than-seats': () => plain(2, { riders: [...party(4), ...one] }),
  'seat-shared': () => plain(2, { riders: [...party(2), ...one] }),
  'coupler-heights-differ': () => coupled(0.11, 0.12),
  'coupler-height-unknown': () => coupled(0.11),
  'no-chain-on-grade': () => {
    const outing = onLine({ loop: false, length: 200, heights: steep });
    return { ...outing, train: { ...outing.train, chainsFastened: false } };
  },
  'dark-at-night': () => {
    const outing = plain(2);
    return { ...outing, conditions: { ...outing.conditions, night: true } };
  },
  'brake-not-tried': () => plain(2),
  'car-overloaded': () => car1({ ratings: { load: 100 } }),
  'axle-overloaded': () => car1({ ratings: { axleLoad: 20 } }),
  'seat-overloaded': () => car1({ seats: car(drawer(3)).seats.map((s) => ({ ...s, most: 40 })) }),
  'rider-not-seated': () => {
    const { seat: _, ...waiting } = rider('a', '1');
    return plain(2, { riders: [waiting] });
  },
  'curve-too-tight': () => onLine({ curves: [tight] }),
  'grade-beyond-range': () => onLine({ loop: false, length: 200, heights: steep }),
  'heights-poor': () => onLine({ heightQuality: 'gps' }),
  'centre-of-gravity-unknown': () => swapped(1, unmeasured),
  'truck-lifts': () => {
    const short = car(drawer(3), { id: 'car1', tare: 40, trucks: [0.9, 1.3] });
    return altered(plain(1, { riders: one }), 1, { ...short });
  },
  // Standing it bears a thousandth less than it may; the brake moves weight forward.
  'truck-overloaded': () => {
    const outing = plain(1, { riders: party(4), plannedSpeed: 2.5 });
    const still = (outing.train.vehicles[1].tare.value + 4 * 70) / 4;
    return altered(outing, 1, { ratings: { axleLoad: still * 1.001 } });
  },
  'parting-held-by-chains': () => {
    const outing = plain(2);
    const vehicles = outing.train.vehicles.map((v) => ({ ...v, front: strong, rear: strong }));
    return { ...outing, train: { ...outing.train, vehicles } };
  },
  assumed: () =>
    plain(1, { assumptions: [{ of: 'a mass', where: 'car 1', key: 'mass', source: 'made up' }] }),
  'driver-missing': () => plain(2),
  'propelled-without-lookout': () => {
    const outing = plain(2);
    return { ...outing, train: { ...outing.train, vehicles: [...outing.train.vehicles].reverse() } };
  },
  'head-unmanned': () => plain(2, { riders: [rider('d', '1', { duty: 'driver' })] }),
  'couplers-slip-by': () => overHump(0.03),
  'coupler-face-unknown': () => overHump(),
  'outside-profile': () => profiled({ section: box(0.3, 0.9) }),
  'outline-not-measured': () => profiled({}),
  'no-profile-of-gauge': () => profiled({ gauge: 0.5 }),
  'wheel-worn': () => wheeled({ hollow: 0.003 }),
  'wheel-wears-out': () => ({
    ...wheeled({
      wear: [
        { day: 0, flangeThickness: (5 / 32) * 0.0254 },
        { day: 100, flangeThickness: 0.0035 },
      ],
      flangeThickness: exact(0.0035),
    }),
    day: 400,
  }),
  'part-strikes-track': () => overHump(undefined, { lowParts: [{ name: 'ash pan', at: 1.8, height: 0.02 }] }),
  'low-parts-not-measured': () => overHump(),
  'wheel-lifts-on-hump': () => {
    const group = { id: 'd', name: 'drivers', at: 1.8, axles: 3, wheelBase: 1, driven: true, travel: 0 };
    return overHump(undefined, { groups: [group] });
  },
  'coupler-sink-unknown': () => {
    const level = [0, 90].map((at) => ({ at, height: 0 }));
    const shape = { length: 2, overhang: 0.4 };
    const outing = crested(level, [shape, shape], [knuckle(0.11), knuckle(0.135)]);
    return { ...outing, riders: party(1).map((r) => ({ ...r, vehicle: outing.train.vehicles[1].id })) };
  },
  'strikes-structure': () => beside({ structures: [post({ distance: CAR.width / 2 - 0.01 })] }),
  'rider-strikes-structure': () =>
    beside({ structures: [post({ distance: CAR.width / 2 - 0.01, bottom: 1 })], ridden: true }),
  'little-room-beside': () => beside({ structures: [post({ distance: CAR.width / 2 + 0.03 })] }),
  'within-arms-reach': () => beside({ structures: [post({ distance: CAR.width / 2 + 0.3 })], ridden: true }),
  'platform-gap': () => atPlatform({ distance: CAR.width / 2 + 0.05 }, { platformGap: rule(0.04) }),
  'platform-step': () => atPlatform({ top: 0.05 }, { platformStep: rule(0.1) }),
  'platform-not-measured': () => beside({ structures: [post({ platform: true, top: 0.1 })] }),
  'frame-too-long-for-curve': () =>
    beside({
      structures: [post()],
      line: {
        curves: [{ from: 40, to: 90, startCurvature: 1 / 0.78, endCurvature: 1 / 0.78, gaugeWidening: 0 }],
      },
    }),
  'siding-too-short': () => beside({ line: { sidings: [stub(0.9)] } }),
  'siding-not-measured': () => beside({ line: { sidings: [stub()] } }),
  'track-not-told': () =>
    railed((line) => loopRoad(line, 1.2), {
      unstated: [{ from: 40, to: 100, track: 'Loop', lacks: 'sights' }],
    }),
  'structure-beside-track': () =>
    railed((line) => loopRoad(line, 1.2), {
      unstated: [{ from: 40, to: 100, track: 'Loop', lacks: 'structures', near: 'wall' }],
    }),
  'other-move': () => {
    const outing = plain(1);
    return { ...outing, moves: [{ number: 2, line: outing.line, turned: true }] };
  },
  'track-not-measured': () => {
    const { turnout: _, ...start } = pointsOf();
    return railed((line) => ({ ...roadThatEnds(line), start: { ...start, lacks: 'lead' } }));
  },
  'trains-do-not-pass': () =>
    railed((line) => loopRoad(line, 0.9), {
      curves: [
        { from: 60, to: 64, startCurvature: 1 / 40, endCurvature: 1 / 40, gaugeWidening: 0 },
        { from: 64, to: 72, startCurvature: -1 / 40, endCurvature: -1 / 40, gaugeWidening: 0 },
        { from: 72, to: 76, startCurvature: 1 / 40, endCurvature: 1 / 40, gaugeWidening: 0 },
      ],
    }),
  'reach-between-trains': () => railed((line) => loopRoad(line, 1.2)),
  'body-not-measured': () => {
    const outing = beside({ structures: [post()] });
    const vehicles = outing.train.vehicles.map(({ envelope: _, ...v }): Vehicle => v);
    return { ...outing, train: { ...outing.train, vehicles } };
  },
  'standard-refused': () => sheet({ wheelWidth: { least: 0.1, source: 'sheet' } }),
  'standard-slow': () => sheet({ wheelWidth: { slowBelow: 0.1, slowSpeed: 1, source: 'sheet' } }),
  'standard-not-measured': () => sheet({ flangeAngle: { least: 1, source: 'sheet' } }),
  'wheel-strikes-frog': () => wheeled({ backToBack: [0.1755] }),
  'wheelset-binds-at-guard': () => wheeled({ backToBack: [0.173] }),
  'wheelset-binds-in-gauge': () => wheeled({ backToBack: [0.1773] }),
  'wheel-diameters-differ': () => wheeled({ diameters: [0.11, 0.112] }),
  'frame-binds-in-curve': () => {
    const outing = wheeled({}, [], {
      curves: [{ from: 40, to: 60, startCurvature: 1 / 12, endCurvature: 1 / 12, gaugeWidening: 0 }],
    });
    const [{ groups }] = outing.train.vehicles;
    return altered(outing, 0, {
      groups: [{ ...groups[0], axles: 3, wheelBase: 0.9, middlePlay: 0 }, ...groups.slice(1)],
      ratings: {},
    });
  },
  'wheel-drops-in': () => wheeled({ width: 0.006 }),
  'flange-strikes-floor': () => wheeled({ flangeHeight: 0.008 }),
  'back-to-back-varies': () => wheeled({ backToBack: [0.1735, 0.1745] }),
  'flangeways-not-measured': () =>
    wheeled({}, [], { places: [{ id: 'p', name: 'Points', kind: 'switch', at: 20, stop: false }] }),
  'coupler-swing-short': () => bent({ type: 'knuckle', shank: 0.12, swing: exact(0.05) }),
  'coupler-swing-unknown': () => bent({ type: 'knuckle', shank: 0.12 }),
  'coupler-pitch-short': () =>
    barred(
      { type: 'bar', height: 0.15, shank: 0.15, pitch: exact(0.05) },
      { type: 'bar', height: 0.18, shank: 0.15, pitch: exact(0.05) },
    ),
  'coupler-pitch-unknown': () =>
    barred({ type: 'bar', height: 0.15, shank: 0.15 }, { type: 'bar', height: 0.18, shank: 0.15 }),
  'coupler-overloaded': () => swapped(1, (v) => ({ ...v, front: { type: 'link', strength: exact(20) } })),
};

/** Codes that have an outing of their own. */
export const ownCodes: readonly string[] = Object.keys(own);

const figure = (n: number): string => String(Number(n.toPrecision(3)));
const flat = (value: unknown): string =>
  typeof value === 'number'
    ? figure(value)
    : typeof value === 'object' && value !== null
      ? Object.values(value).map(flat).join(' ')
      : String(value);

/** Changes that are tried for it: size of the family, how many, and the first of them. */
const tried = (outing: Outing, finding: Finding): string =>
  familiesFor(outing, finding)
    .filter(({ changes }) => changes.length > 0)
    .map(({ size, changes }) => `${size}: ${changes.length} × ${flat(changes[0])}`)
    .join(', ');

/**
 * What is found of a code in its own outing: weight, found of required, margin, where, facts, sum, what to measure, changes
 * tried.
 */
export const found: (code: string) => string[] = remembered(findingsOf);

function findingsOf(code: string): string[] {
  const outing = own[code as FindingCode]?.();
  if (!outing) throw new Error(`no outing of its own: ${code}`);
  return answered(outing)
    .filter((f) => f.code === code)
    .map((f) => {
      const amounts = [f.found, f.required].map((a) => (a === undefined ? '' : figure(a.si)));
      const facts = Object.entries(f.facts).map(([key, fact]) => `${key} ${flat(factOf(fact))}`);
      return [
        code,
        f.severity,
        amounts.join(' of '),
        f.margin === undefined ? '' : figure(f.margin),
        Object.values(f.where).map(flat).join(' '),
        facts.join(', '),
        f.sum?.id ?? '',
        f.measure ?? '',
        tried(outing, f),
      ].join(' | ');
    });
}

/** Of an amount its figure. */
const factOf = (fact: unknown): unknown =>
  typeof fact === 'object' && fact !== null && 'si' in fact ? fact.si : fact;

const made = new Set<string>();
/** What a question finds that its table does not have. */
const undeclared = new Set<string>();

function answered(outing: Outing): readonly Finding[] {
  const inquiry = quickInquiry(outing);
  // What is found by who looks at tracks stands in no answer.
  const all = [...firstAnswer(inquiry).findings, ...trackFindings(inquiry.context)];
  for (const [{ id, findings }, { said }] of inquiry.asked)
    for (const { code } of said.findings) if (!(code in findings)) undeclared.add(`${id}: ${code}`);
  for (const { code } of all) made.add(code);
  return all;
}

/** As many random outings as make all that is common. */
const RANDOM = 40;

interface Made {
  readonly made: ReadonlySet<string>;
  readonly undeclared: ReadonlySet<string>;
}

/**
 * Every code that outings of their own make, and random ones.
 *
 * @param enough when all of these are made, no more random outings are drawn
 */
export function codesMade(enough?: readonly string[]): Made {
  for (const code of ownCodes) found(code);
  for (const outing of unequalTrains(0)) answered(outing);
  const drawn = [dressed, furnished];
  for (let seed = 1; seed <= RANDOM && !enough?.every((code) => made.has(code)); seed++)
    for (const of of drawn) answered(of(seed));
  return { made, undeclared };
}
