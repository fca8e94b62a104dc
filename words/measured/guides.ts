/**
 * How each test is made: what for, what is needed, the steps, what to mind. Common practice, no source. `{…}`: words that
 * differ across the Atlantic.
 */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';

/** What is drawn beside it. */
export type Picture = 'run' | 'stop' | 'pull' | 'gauge' | 'tilt' | 'block' | 'scales' | 'rule' | 'look';

export interface GuideWords {
  readonly what: string;
  readonly needs: readonly string[];
  readonly steps: readonly string[];
  /** On top of what every test that moves, or that pulls, says. */
  readonly mind?: string;
  readonly picture: Picture;
}

export const movingSafety = [
  'Never with riders until the brakes are proved: the driver alone.',
  'Somebody at each end of the stretch, a way to stop by hand, nobody on the track.',
];

export const standingSafety = [
  'Nobody rides on it. Chock it before you reach under it, and again when you have read.',
];

const posts = 'Marks beside the track at known distances of the line: at least four, 10 to 20 paces apart.';
const watch = 'A stopwatch: the one here, or frames of a video.';
const balance = 'A spring balance that reads to about what you expect, and a known weight to check it.';

export const guides: Readonly<Record<TestKind, GuideWords>> = {
  'coast-down': {
    what: 'How easily the train rolls: what it needs to start and haul, how far a tail runs, and part of every stop.',
    needs: [posts, watch, 'Straight line as level as you have, its heights known.'],
    steps: [
      'Run up to a walk or a little more, power off and brakes off before the first mark.',
      'Press as the front passes each mark. Let it come to rest, and read where its front stands.',
      'Do the same the other way over the same ground: that tells the {grade} from the bearings.',
      'Twice or more each way, and once from a higher speed.',
    ],
    mind: 'Somebody has a hand at the brake all the way. A run that somebody braked is left out.',
    picture: 'run',
  },
  'curve-resistance': {
    what: 'What a curve adds to the drag.',
    needs: [posts, watch, 'One curve of known radius with straight line before and behind it.'],
    steps: [
      'Coast through straight and curve in one run, marks before, in and behind the curve.',
      'Both ways, twice or more.',
    ],
    picture: 'run',
  },
  'stop-test': {
    what: 'What the brake really does: its full force, how long until it begins, how long until it is full.',
    needs: [
      'One mark beside the track.',
      'A tape.',
      'What shows the speed, or a stopwatch before the mark; or a phone that writes its speed down, with the second of the brake.',
    ],
    steps: [
      'Come up to the mark at an even speed, and put the brake full on as the front passes it.',
      'Measure where the front came to rest; write down the speed at the mark.',
      'From several speeds, the slowest first; the fastest at least half as high again. Both ways.',
      'One kind of brake at a time. Dry and wet are tests of their own.',
      "For the driver's reaction: let somebody give a signal at the mark that he does not expect, and brake as on any day.",
    ],
    mind: 'Begin at a walk, and go on only after a stop that was as short as you expected.',
    picture: 'stop',
  },
  'brake-pull': {
    what: 'The retarding force of one brake of one vehicle.',
    needs: [balance],
    steps: [
      'Put this brake full on and no other.',
      'Draw the vehicle along slowly by the balance at its {coupler}, and read while it moves.',
      'Three times forward and three times back.',
    ],
    picture: 'pull',
  },
  'starting-pull': {
    what: 'What a car needs to start, and to keep rolling.',
    needs: [balance],
    steps: [
      'On level line, brakes off. Pull by the balance until it just moves, and read.',
      'Let it stand between pulls. Three times each way.',
      'Read also what keeps it rolling at a walk.',
    ],
    picture: 'pull',
  },
  'hauling-pull': {
    what: 'What the engine pulls, and what holds its wheels to the rail.',
    needs: [balance, 'A post or a car that cannot move.'],
    steps: [
      'Make the engine fast to the post by the balance, slack taken up.',
      'Open up gently until the wheels slip or it gives no more; read the most.',
      'Shut off at once. Three times or more.',
    ],
    mind: 'Nobody stands in line with the pull: a hook that lets go flies.',
    picture: 'pull',
  },
  'locked-wheels': {
    what: 'How much this rail, as it is today, holds a wheel.',
    needs: [balance, 'A vehicle whose wheels can all be locked, weighed.'],
    steps: [
      'Lock every wheel.',
      'Drag it slowly along the rail by the balance and read while it slides.',
      'On several places, both ways. It is a figure of this rail today.',
    ],
    mind: 'A hand’s breadth at a time: sliding wears flats.',
    picture: 'pull',
  },
  'leak-down': {
    what: 'How fast the brake leaks: how long it holds a train by itself.',
    needs: ['The gauge of that brake.', watch],
    steps: [
      'Charge the brake, shut it off from pump or ejector, let the gauge settle.',
      'Read gauge and time now and every minute, until a third is gone or for five minutes.',
    ],
    picture: 'gauge',
  },
  'apply-time': {
    what: 'How long until the blocks of the last car touch, and until they press fully.',
    needs: [watch, 'Somebody at the last car, or a video of it with the sound of the call.'],
    steps: [
      'The driver calls and puts the brake full on.',
      'At the last car press when the blocks touch, and again when nothing moves any more.',
      'Five times.',
    ],
    picture: 'gauge',
  },
  recharge: {
    what: 'How long until the brake is ready again, and what the pump or ejector delivers.',
    needs: ['The gauge of that brake.', watch],
    steps: ['Put the brake on, release, and time the gauge between two figures.', 'Three times.'],
    picture: 'gauge',
  },
  tilt: {
    what: 'How high the centre of gravity lies: whether it stays up in a curve and when people lean.',
    needs: [
      'Two strong people, straps that catch it.',
      'A plank to tilt on, with a low stop along the rail.',
      'A phone or a plumb line for the angle.',
    ],
    steps: [
      'Hang straps so that it cannot fall further than you want.',
      'Tilt until the upper wheels just lift, and read the angle across the track.',
      'Twice or more to each side.',
    ],
    mind: 'Never with anybody on it, and nobody on the low side.',
    picture: 'tilt',
  },
  'wheel-block': {
    what: 'How much twist of the track the vehicle follows before a wheel lifts.',
    needs: ['Blocks or feelers of known thickness.'],
    steps: [
      'On level track put a thin block under one wheel.',
      'See whether paper can be pulled from under another wheel.',
      'Thicker and thicker until one lifts. At the opposite corner too.',
    ],
    picture: 'block',
  },
  weighing: {
    what: 'Weight, where along the vehicle it stands, and with one end raised how high.',
    needs: ['Scales under each group of axles, or one set moved from one to the other.', 'A block.'],
    steps: [
      'All wheels level: read under each group, the front first.',
      'For the height: raise the front by a block, free to roll, and read again.',
      'Lift off and weigh again: twice or more.',
    ],
    picture: 'scales',
  },
  slack: {
    what: 'Free movement in a {coupler} or a chain: what makes snatches.',
    needs: ['A rule.'],
    steps: ['Pull it tight, push it in, and measure how far it went.', 'Three times, anew each time.'],
    picture: 'rule',
  },
  spring: {
    what: 'How stiff a spring is.',
    needs: ['Known weights.', 'A rule.'],
    steps: ['Load it step by step and read its height at each.', 'Up and back down: friction shows.'],
    picture: 'rule',
  },
  'wheel-diameter': {
    what: 'The diameter on the tread, as it is worn.',
    needs: ['Chalk, a tape.'],
    steps: ['Chalk wheel and rail, roll it ten whole turns, measure along the rail.', 'Twice.'],
    picture: 'rule',
  },
  speedometer: {
    what: 'Whether what shows the speed tells the truth.',
    needs: ['A taped length of the line.', watch],
    steps: [
      'Run over it at an even speed, and write down what is shown and the time.',
      'At several speeds, both ways.',
    ],
    picture: 'run',
  },
  sight: {
    what: 'How far before a signal, crossing or curve one sees it.',
    needs: ['A tape, or steps counted over a taped length.'],
    steps: [
      'Sit or stoop to the height of the driver’s eyes.',
      'Go back along the line until you no longer see it; measure how far.',
      'Once by each of several people, in leaf and not.',
    ],
    mind: 'With somebody who looks out for trains.',
    picture: 'look',
  },
  riders: {
    what: 'What a rider of your railway weighs, and how far they differ.',
    needs: ['Scales beside the platform.'],
    steps: [
      'Weigh whoever is willing, as dressed for the ride, bags included.',
      'Write the weight and no name. Ten or more, one sort in one test.',
    ],
    picture: 'scales',
  },
};

export const needWords = {
  outing: 'the train on its line',
  vehicle: 'one vehicle',
  nothing: 'nothing but the readings',
} as const;
