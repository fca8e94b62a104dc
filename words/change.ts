/** Changes and remedies in words. */
import type { Change } from '../engine/outing/change.ts';
import type { Remedy } from '../engine/questions/finding.ts';
import { printQuantity } from '../units/index.ts';
import { calliper } from './calliper.ts';
import { brakeKindWords } from './findings/brakes.ts';
import { slowerThanAWalk, walkWords } from './pace.ts';
import { tellVerdict } from './verdict.ts';
import { chainage, riderName, say, trade, type Voice, vehicleName } from './voice.ts';

const list = (names: readonly string[]): string =>
  names.length <= 1 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

/** Vehicles of one name once, with how many: "Plank car (7) and Van". */
function counted(names: readonly string[]): string {
  const kinds = [...new Set(names)];
  const of = (name: string): number => names.filter((n) => n === name).length;
  return list(kinds.map((name) => (of(name) > 1 ? `${name} (${of(name)})` : name)));
}

const crewName = ({ outing }: Voice, id: string): string =>
  outing.crew?.find((one) => one.id === id)?.name ?? riderName({ outing }, id);

const moved = (by: number, voice: Voice): string => calliper(Math.abs(by), voice, 'nearest');

/** What to do, as an order. */
export function tellChange(change: Change, voice: Voice): string {
  const names = (ids: readonly string[]): string => list(ids.map((id) => vehicleName(voice, id)));
  const rider = (id: string): string => riderName(voice, id);
  const speed = (v: number): string =>
    printQuantity(v * (1 + 1e-9), 'speed', {
      system: voice.system,
      toward: 'down',
      digits: voice.system === 'imperial' ? 1 : 0,
    }).replace('.0 ', ' ');
  switch (change.kind) {
    case 'fewer-cars':
      return change.leave.length === 1
        ? `leave ${names(change.leave)} behind`
        : `leave ${change.leave.length} cars behind: ${counted(change.leave.map((id) => vehicleName(voice, id)))}`;
    case 'fewer-riders':
      return `leave ${change.leave.length === 1 ? 'one rider' : `${change.leave.length} riders`} behind: ${list(change.leave.map(rider))}`;
    case 'slower':
      return `run at ${speed(change.speed)} at the most${walkWords(change.speed, voice.outing)}${slowerThanAWalk(change.speed, voice.outing) ? ',' : ''} from ${chainage(voice, change.from, 'down')} to ${chainage(voice, change.to, 'up')}`;
    case 'slower-everywhere':
      return `run at ${speed(change.speed)} at the most everywhere${walkWords(change.speed, voice.outing)}`;
    case 'brake-car':
      return `give ${vehicleName(voice, change.vehicle)} the brake of ${vehicleName(voice, change.like)}`;
    case 'rail-state':
      return change.state === 'dry' ? 'wait for a dry rail' : 'sand under the engine’s driving wheels';
    case 'order':
      return `change the order to ${names(change.order)}`;
    case 'seat':
      return list(
        change.moves.map(
          (m) => `move ${rider(m.rider)} to seat ${m.seat} of ${vehicleName(voice, m.vehicle)}`,
        ),
      );
    case 'ballast':
      return `put ${say(voice, { si: change.mass, kind: 'mass' }, 'up')} of ballast under the floor of ${vehicleName(voice, change.vehicle)}, no higher than ${say(voice, { si: change.height, kind: 'length' }, 'down')} above the rail`;
    case 'chains':
      return 'fasten safety chains between all vehicles';
    case 'chain-size':
      return `fit a grade ${change.grade} chain of ${say(voice, { si: change.size, kind: 'length' }, 'up')} ${change.gap === undefined ? 'behind every vehicle' : `behind vehicle ${change.gap + 1}`}, with hooks and links to match`;
    case 'longer-coupling':
      return `fit a bar ${say(voice, { si: change.by, kind: 'length' }, 'up')} longer behind vehicle ${change.gap + 1}`;
    case 'coupler-raised':
      return `shim the ${change.end} coupler of ${vehicleName(voice, change.vehicle)} ${moved(change.by, voice)} ${change.by > 0 ? 'higher' : 'lower'}`;
    case 'part-lifted':
      return `lift the ${change.part} of ${vehicleName(voice, change.vehicle)} ${moved(change.by, voice)}, or cut it away`;
    case 'wheel-gauge': {
      const of = voice.outing.train.vehicles.find((v) => v.id === change.vehicle);
      const name = of?.wheelsets?.find((w) => w.id === change.wheelset)?.name ?? change.wheelset;
      return `press the wheels of ${vehicleName(voice, change.vehicle)}, ${name}, ${moved(change.by, voice)} ${change.by > 0 ? 'farther apart' : 'nearer together'}`;
    }
    case 'guard-rail': {
      const way = voice.outing.line.flangeways?.find((f) => f.id === change.flangeway);
      return `move the guard rail at ${way?.name ?? change.flangeway} ${moved(change.by, voice)} ${change.by > 0 ? 'nearer to its rail' : 'away from its rail'}`;
    }
    case 'set-back':
    case 'raised': {
      const of = voice.outing.line.structures?.find((s) => s.id === change.structure);
      const by = say(voice, { si: Math.abs(change.by), kind: 'length' }, 'up');
      return change.kind === 'raised'
        ? `raise what hangs over the track at ${of?.name ?? change.structure} by ${by}`
        : change.by < 0
          ? `set ${of?.name ?? change.structure} nearer to the track by ${by}`
          : `set ${of?.name ?? change.structure} back by ${by}`;
    }
    case 'alone':
      return 'let no other train on the line while this one is on it';
    case 'guard':
      return `take a ${trade(voice.wording, 'conductor')} on the last car`;
    case 'relieve': {
      const duty = voice.outing.riders.find((r) => r.id === change.rider)?.duty;
      return `let ${crewName(voice, change.by)} ${duty === 'guard' ? 'ride as ' : ''}${duty === 'guard' ? trade(voice.wording, 'conductor') : 'drive'} in place of ${rider(change.rider)}`;
    }
    case 'look-out':
      return `let ${crewName(voice, change.by)} look out at ${change.at}`;
    case 'parking-brake':
      return `fit ${vehicleName(voice, change.vehicle)} with a parking brake of ${say(voice, { si: change.force, kind: 'force' }, 'up')}`;
    case 'driver-brake':
      return `fit ${vehicleName(voice, change.vehicle)} with a brake that the driver works on the run, of ${say(voice, { si: change.force, kind: 'force' }, 'up')}`;
    case 'together':
      return change.changes.map((c) => tellChange(c, voice)).join(', and ');
    case 'brake-kind':
      // Reservoirs and valves for every car: nobody does it before the train leaves.
      return `make the train brake an ${brakeKindWords(change.brake)}, in the workshop`;
  }
}

/** One that leaves the word as it is says so: it clears this, and something else stands. */
export const tellRemedy = ({ change, betters, verdict }: Remedy, voice: Voice): string =>
  `${tellChange(change, voice)} (${betters ? 'then' : 'clears this, and the word stays'}: ${tellVerdict(verdict)})`;
