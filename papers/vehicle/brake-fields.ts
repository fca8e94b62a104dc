/** Brakes of a vehicle: each field once. */
import { brakeKinds } from '../../engine/things/brake/kinds/index.ts';
import { blockMaterials } from '../../engine/things/vehicle/types.ts';
import { choice, group, may, must, rows, text, yes } from '../describe.ts';
import { figure, quantity } from '../schema/quantity.ts';

const bore = () => figure('length', 0.003, 0.6);
const passage = () => figure('length', 1e-4, 0.1);
const vessel = () => figure('volume', 1e-6, 5);
const leverRatio = () => figure('ratio', 0.01, 100);
const pull = () => quantity('force', 0, 500_000);

const efficiency = () =>
  may(
    quantity('ratio', 0.05, 1),
    'efficiency',
    'Force that reaches the blocks ÷ force that would without friction in pins and guides: pull a block off with a spring balance.',
    { assumed: 'rigging-efficiency' },
  );
const block = () => must(choice(...blockMaterials), 'block', 'What the brake blocks are made of.');
const blockFriction = () =>
  may(
    quantity('ratio', 0.01, 1),
    'block friction',
    'Friction of block on wheel, where it was measured; else by material and speed.',
    { assumed: 'block-friction' },
  );

const rigging = group({
  cylinders: may(
    figure('count', 1, 16),
    'cylinders',
    'How many cylinders work these blocks; one, if nothing is said.',
  ),
  bore: must(bore(), 'bore', 'Inside diameter of a cylinder.'),
  stroke: may(
    figure('length', 0.001, 0.6),
    'stroke',
    'How far the piston comes out with the brake hard on.',
    { asked: 'how far the piston comes out with the brake hard on' },
  ),
  leverRatio: must(
    leverRatio(),
    'lever ratio',
    'Force of all blocks together ÷ force of the piston: long arms ÷ short arms.',
  ),
  efficiency: efficiency(),
  block: block(),
  blockFriction: blockFriction(),
  workingPressure: may(
    quantity('gaugePressure', 1000, 2e6),
    'working pressure',
    'Air brake: pressure in the cylinder with the brake full on, by gauge.',
    { asked: 'the pressure in the cylinder with the brake full on, by gauge' },
  ),
  workingVacuum: may(
    quantity('vacuum', 1000, 101_325),
    'working vacuum',
    'Vacuum brake: vacuum that the train runs with, by gauge.',
    { asked: 'the vacuum that the train runs with, by gauge' },
  ),
  springForce: may(
    figure('force', 0, 20_000),
    'spring force',
    'Pull of the return spring at the piston, with a spring balance.',
    { assumed: 'spring-force' },
  ),
  reservoirVolume: may(
    vessel(),
    'reservoir volume',
    "The car's own reservoir: fill it with water and weigh, or from its measures.",
    { asked: "the volume of the car's reservoir: fill it with water and weigh it" },
  ),
  cylinderVolume: may(vessel(), 'cylinder volume', 'Cylinders with the pipes to them, pistons out.', {
    asked: 'the volume of the cylinders with the pipes to them, pistons out',
  }),
  pipeVolume: may(
    vessel(),
    'pipe volume',
    "This vehicle's length of train pipe with its hoses: bore and length.",
    { asked: "bore and length of the vehicle's train pipe, for its volume" },
  ),
  chokeDiameter: may(
    passage(),
    'choke diameter',
    'Narrowest passage to the cylinder; a drill that just goes through.',
    { asked: 'the narrowest passage to the cylinder: a drill that just goes through' },
  ),
  leakRate: may(
    group({
      fall: must(figure('gaugePressure', 0, 2e6), 'fall', 'What the gauge fell by.'),
      in: must(figure('time', 0.1, 86_400), 'in', 'In what time, by the clock.'),
    }),
    'leak rate',
    'Set the brake, shut the supply, and read the gauge when the riders would have boarded.',
    { asked: 'how far the gauge falls in five minutes with the brake set and the supply shut' },
  ),
  hoseDiameter: may(passage(), 'hose diameter', "Narrowest bore of this vehicle's pipe, hoses and cocks.", {
    asked: "the narrowest bore of the vehicle's pipe, hoses and cocks",
  }),
  chamberVolume: may(
    vessel(),
    'chamber volume',
    'Automatic vacuum: chamber side of all cylinders with its reservoir, pistons at rest.',
    { asked: 'the volume of the vacuum chamber with its reservoir, pistons at rest' },
  ),
  feedDiameter: may(
    passage(),
    'feed diameter',
    "Automatic air: groove through which the car's reservoir is charged.",
    { asked: "the diameter of the groove that charges the car's reservoir" },
  ),
});

const hand = group({
  pull: may(
    quantity('force', 1, 2000),
    'pull',
    'Force that the person keeps up at the rim or lever, with a spring balance.',
    { asked: 'the force that the person keeps up at the rim or lever, with a spring balance' },
  ),
  wheelRadius: may(figure('length', 0.02, 1), 'wheel radius', 'Radius at which the hand pulls.'),
  screwLead: may(figure('length', 0.0005, 0.1), 'screw lead', 'How far the nut moves in one turn.'),
  leverRatio: must(
    leverRatio(),
    'lever ratio',
    'Force of all blocks ÷ force in the rod, or ÷ the pull where there is no screw.',
  ),
  efficiency: efficiency(),
  block: block(),
  blockFriction: blockFriction(),
});

const surge = group({
  leverRatio: must(
    leverRatio(),
    'lever ratio',
    'Force of all blocks ÷ push in the {coupler} beyond the spring.',
    {
      asked:
        'what the push works through: force of all blocks ÷ push in the {coupler}, and the push at which the blocks first touch',
    },
  ),
  efficiency: efficiency(),
  springForce: must(
    figure('force', 0, 20_000),
    'spring force',
    'Push at which the blocks first touch, with a spring balance.',
  ),
  block: block(),
  blockFriction: blockFriction(),
});

export const brake = group({
  name: may(text(), 'name', 'What it is called; its kind, if nothing is said.'),
  kind: must(
    choice(...brakeKinds),
    'kind',
    'How it is worked. Automatic: it comes on by itself when the pipe parts.',
  ),
  on: may(rows(text(), 1, 12), 'works on', 'Axle groups that it brakes; all, if nothing is said.'),
  force: may(
    pull(),
    'force',
    'Measured retarding force at the rail: brake full on, pull the vehicle along slowly with a spring balance.',
    {
      asked: 'the retarding force: brake full on, the pull on a spring balance that moves the vehicle slowly',
    },
  ),
  block: may(
    choice(...blockMaterials),
    'block',
    'What the brake blocks are made of, beside a measured force: says what wet rails and speed leave of it.',
    { assumed: 'block-wet', asked: 'what the brake blocks are made of' },
  ),
  rigging: may(rigging, 'rigging', 'Cylinder, levers and blocks, where the force was not measured.'),
  hand: may(hand, 'hand', 'Handwheel or lever, where a person works it.'),
  surge: may(surge, 'surge', 'What the push of the {coupler} works through.'),
  lag: may(quantity('time', 0.001, 60), 'lag', 'Electric: time to 63 % of its force.'),
  deadTime: may(
    quantity('time', 0, 60),
    'dead time',
    "From the driver's hand to the first touch of the blocks, by stopwatch or video.",
    { assumed: 'dead-time', asked: "the time from the driver's hand to the first touch of the blocks" },
  ),
  buildUp: may(
    quantity('time', 0, 120),
    'build up',
    'From the first touch to full force, by stopwatch or video.',
    { assumed: 'build-up', asked: 'the time from the first touch of the blocks to full force' },
  ),
  workedBy: may(
    choice('driver', 'guard', 'rider'),
    'worked by',
    'Who must act for it to come on; the driver, if nothing is said.',
  ),
  parking: may(yes(), 'parking', 'It is mechanical, does not leak off, and holds a standing train.'),
  stops: may(
    yes(),
    'stops too',
    'A lever that is pulled in a moment and stays where it is pulled: it stops the train as well as it parks it. A screw takes too long.',
  ),
  onSupplyLoss: may(
    choice('applies', 'lost'),
    'when its supply is lost',
    'What it does when the hose parts or the current fails, as built or wired: part it and see.',
    { asked: 'what the brake does when its supply is lost: part the hose or the plug and see' },
  ),
});

export const brakeSupply = group({
  reservoirVolume: may(vessel(), 'reservoir volume', 'Main reservoir: from its measures.', {
    asked: 'the volume of the main reservoir, from its measures',
  }),
  pressure: may(figure('gaugePressure', 1000, 2e6), 'pressure', 'What it is kept at, by gauge.', {
    asked: 'the pressure that the main reservoir is kept at, by gauge',
  }),
  vacuum: may(figure('vacuum', 1000, 101_325), 'vacuum', 'What it is kept at, by gauge.', {
    asked: 'the vacuum that is kept, by gauge',
  }),
  rate: may(
    figure('flow', 1e-6, 1),
    'rate',
    'Compressor: free air; ejector or pump: suction. Time it filling a vessel of known volume.',
    { asked: 'how long compressor or ejector takes to fill or empty a vessel of known volume' },
  ),
  greatestVacuum: may(
    figure('vacuum', 1000, 101_325),
    'greatest vacuum',
    'What ejector or pump reaches on a shut pipe, at sea level.',
    { asked: 'the vacuum that ejector or pump reaches on a shut pipe' },
  ),
  valveDiameter: may(passage(), 'valve diameter', "Narrowest passage of the driver's valve.", {
    asked: "the narrowest passage of the driver's valve: a drill that just goes through",
  }),
});
