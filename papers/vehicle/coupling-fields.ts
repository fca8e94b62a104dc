/** What joins vehicles: each field once. */
import * as z from 'zod/mini';
import { group, may, text } from '../describe.ts';
import { figure, quantity } from '../schema/quantity.ts';

const stiffness = () => quantity('stiffness', 1000, 1e9);

const chain = group({
  count: may(figure('count', 1, 4), 'count', 'How many hang side by side; one, if nothing is said.'),
  grade: may(
    z.union([z.literal(30), z.literal(43), z.literal(70), z.literal(80), z.literal(100)]),
    'mark of the chain',
    'The number stamped on its links; unmarked counts as 30.',
  ),
  size: may(figure('length', 0.001, 0.04), 'size', 'Diameter of the wire of a link, by calipers.', {
    asked: 'the diameter of the wire of a link, by calipers, and the number stamped on it',
  }),
  workingLoad: may(
    quantity('force', 10, 500_000),
    'working load',
    'Of the chain itself, where it is tagged.',
  ),
  weakestPart: may(
    quantity('force', 10, 500_000),
    'weakest part',
    'Working load of the weakest hook, quick link, weld or eye.',
    { asked: 'the working load of the weakest hook, link, weld or eye' },
  ),
  weakestPartName: may(text(), 'weakest part name', 'Which part that is.'),
  weakestPartBreaks: may(
    quantity('force', 10, 1e6),
    'weakest part breaks',
    'Its least breaking load, where a maker states it.',
    { asked: 'the breaking load of the weakest hook, link, weld or eye, as its maker states it' },
  ),
  slack: may(
    figure('length', 0, 2),
    'slack',
    'How far the vehicles part before the shortest chain bears: hold them apart and measure.',
    { assumed: 'chain-slack' },
  ),
  slackDifference: may(
    figure('length', 0, 1),
    'slack difference',
    'How much more slack the other chains have.',
  ),
  length: may(figure('length', 0.02, 5), 'length of the chain', 'From hook to hook, pulled straight.', {
    assumed: 'chain-catch/length',
  }),
  stiffness: may(stiffness(), 'stiffness', 'Force ÷ stretch of the chain as it hangs, hooks and all.'),
});

export const coupling = () =>
  group({
    type: may(text(), 'type', 'Kind of {coupler}: knuckle, link and pin, bar, hook …', {
      asked: 'which kind of {coupler} it has at each end: knuckle, link and pin, bar, hook …',
    }),
    height: may(figure('length', 0.01, 1.5), 'height', 'Middle of the {coupler} above the rail, empty.', {
      assumed: 'engine-height/coupler',
      asked: 'the height of the middle of each {coupler} above the rail, empty, with a rule',
    }),
    face: may(
      figure('length', 0.002, 0.5),
      'height of the face',
      'From top to bottom of the knuckle, or of whatever holds the other one, with a rule.',
      { asked: 'how high the face of each {coupler} is, from top to bottom of its knuckle' },
    ),
    shank: may(
      figure('length', 0.01, 2),
      'shank',
      'From the pin that it turns on to where it meets the next one, with a rule; of a bar or link between two pins, half of it at each end.',
      {
        assumed: 'coupler/shank',
        asked: 'from the pin that the {coupler} turns on to where it meets the next one, with a rule',
      },
    ),
    swing: may(
      quantity('angle', 0.01, Math.PI / 2),
      'swing',
      'How far it turns to one side before it strikes; of two sides the lesser.',
      {
        assumed: 'coupler/swing',
        asked:
          'how far the {coupler} turns to one side before it strikes: hold it over, and measure the angle, or how far its end stands from the middle',
      },
    ),
    sidePlay: may(
      figure('length', 0.001, 1),
      'side play',
      'In place of the swing: how far its end moves from the middle to one side before it strikes.',
    ),
    pitch: may(
      quantity('angle', 0.005, Math.PI / 2),
      'pitch',
      'How far a bar or link turns up or down on its pin before it strikes; of the two the lesser.',
      {
        assumed: 'coupler/pitch',
        asked:
          'how far the bar or link turns up and down on its pin before it strikes: lift its far end and lower it, and measure the angle, or how far that end stands from level and from the pin',
      },
    ),
    slack: may(
      quantity('length', 0, 0.5),
      'slack',
      'Free movement: push the vehicle in, mark, pull it out, measure; half of what two together have.',
      { assumed: 'coupler-slack' },
    ),
    stiffness: may(stiffness(), 'stiffness', 'Force ÷ movement of its spring or rubber.', {
      assumed: 'coupler-stiffness',
    }),
    strength: may(
      quantity('force', 10, 1e6),
      'strength',
      'Working load in pull, of the weakest of hook, pin, shank and bolts.',
      { asked: 'the working load of the {coupler} in pull: its weakest pin, shank or bolt' },
    ),
    chain: may(chain, 'chain', 'Safety chain that hangs at this end.'),
  });
