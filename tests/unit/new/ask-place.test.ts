/** Where the figure goes that a finding asks for. */
import { expect, it } from 'vitest';
import { askPlace } from '../../../desk/ask-place.ts';
import { tellInvented } from '../../../desk/invented.ts';

const paper = {
  name: 'Outing',
  line: { name: 'Line', places: [{ name: 'Gate' }, { name: 'Loop points' }] },
  host: { name: 'Host' },
  train: {
    vehicles: [
      { vehicle: { name: 'Engine' } },
      { vehicle: { name: 'Car', front: { chain: {} } }, count: 2 },
      { id: 'last', vehicle: { name: 'Van', invented: true } },
    ],
  },
};

it.each([
  ['vehicle.traction', 'engine', ['train', 'vehicles', 0, 'vehicle', 'traction']],
  // Two alike are one paper.
  ['vehicle.brakes.hand-brake-2.force', 'car-2', ['train', 'vehicles', 1, 'vehicle', 'brakes', 1, 'force']],
  ['vehicle.centreHeight', 'last', ['train', 'vehicles', 2, 'vehicle', 'centreHeight']],
  ['coupling.strength', 'engine', ['train', 'vehicles', 0, 'vehicle', 'rear', 'strength']],
  // The chain of this gap hangs on the car behind.
  ['coupling.chain.size', 'engine', ['train', 'vehicles', 1, 'vehicle', 'front', 'chain', 'size']],
  ['line.twist', undefined, ['line', 'twist']],
  ['line.places.loop-points.sight', undefined, ['line', 'places', 1, 'sight']],
  ['train.chainsFastened', undefined, ['train', 'chainsFastened']],
  ['riders.duty', undefined, ['riders']],
] as const)('%s', (measure, vehicle, place) => {
  expect(askPlace(paper, measure, vehicle === undefined ? {} : { vehicle })).toEqual(place);
});

it('is nowhere for a vehicle that is not in the train', () => {
  expect(askPlace(paper, 'vehicle.traction', { vehicle: 'other' })).toBeUndefined();
});

it('names what is invented', () => {
  expect(tellInvented(paper)).toBe('with invented parts: Van');
  expect(tellInvented({ ...paper, invented: true })).toBe('an invented example');
  expect(tellInvented({ ...paper, train: { vehicles: [] } })).toBe('');
});
