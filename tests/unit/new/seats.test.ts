/** More people than seats: said while people are counted, on the page and on the terminal. */
import { expect, it } from 'vitest';
import type { Replies } from '../../../desk/new/field.ts';
import { grow } from '../../../desk/new/make.ts';
import { tellSeated } from '../../../desk/new/seats.ts';
import { heedway } from '../../support/cli.ts';
import { all } from '../../support/four-replies.ts';

const told = (more: Replies, of: Replies = all): string =>
  tellSeated(grow({ ...of, ...more }, 'imperial').seated);
/** Two weighed people and two adults ride in two cars of four. */
const people = (adults: number): Replies => ({ 'people.adults': String(adults) });

it('is silent as long as everybody has a seat, and says how many have none from the first on', () => {
  expect([told({}), told(people(6))]).toEqual(['', '']);
  expect(told(people(7))).toBe(
    '9 ride, and there are 8 seats (2 cars of 4): 1 finds none. Take fewer people along, or more cars.',
  );
  expect(told({ ...people(7), 'people.children': '3' })).toContain('12 ride, and there are 8 seats');
  expect(told(people(7))).not.toContain('taken from its length');
});

it('counts the seat that the driver takes', () => {
  const first: Replies = { 'people.driverOn': 'first car' };
  expect(told({ ...people(5), ...first })).toBe('');
  expect(told({ ...people(6), ...first })).toContain(
    '8 ride, and there are 7 seats (2 cars of 4, one taken by the driver): 1 finds none.',
  );
});

it('takes seats from the length where nobody counted them, and says so; knows nothing before there is a length', () => {
  const { 'cars.seats': _seats, 'cars.length': _length, ...bare } = all;
  expect(told({ ...people(60) }, bare)).toContain(
    'Nobody counted the seats of a car: they go by its length.',
  );
  const { 'engine.gauge': _gauge, ...none } = bare;
  expect(told({ ...people(60) }, none)).toBe('');
  const { 'cars.count': _count, ...uncounted } = all;
  expect(told({ ...people(60) }, uncounted)).toBe('');
});

it('is the number of seats of the paper that is made, for every gauge, whoever sits where', () => {
  const { 'cars.seats': _seats, 'cars.length': _length, ...bare } = all;
  for (const gauge of ['3-1/2 in', '5 in', '7-1/4 in', '10-1/4 in', '15 in'])
    for (const more of [{}, { 'cars.seats': '3' }, { 'cars.length': '9 ft' }] as Replies[])
      for (const cars of ['1', '3']) {
        const growth = grow({ ...bare, ...more, 'engine.gauge': gauge, 'cars.count': cars }, 'imperial');
        const { vehicles } = (growth.paper?.['train'] ?? { vehicles: [] }) as {
          vehicles: { count?: number; vehicle: { role: string; seats?: { driver?: boolean }[] } }[];
        };
        expect(vehicles.length).toBeGreaterThan(1);
        const seats = vehicles
          .filter(({ vehicle }) => vehicle.role === 'car')
          .map(({ count = 1, vehicle }) => count * (vehicle.seats ?? []).filter((s) => !s.driver).length)
          .reduce((a, b) => a + b, 0);
        expect(growth.seated?.seats, `${gauge} ${JSON.stringify(more)} ${cars}`).toBe(seats);
      }
});

it('an engine alone takes nobody along', () => {
  expect(told({ 'cars.count': '0' })).toBe(
    '4 ride, and there is no car to sit on: say how many cars, or take nobody along.',
  );
  expect(told({ 'cars.count': '0', 'people.adults': '0', 'people.weighed': '' })).toBe('');
});

it('stands on the terminal in the same words', () => {
  const { stdout } = heedway('new', '--cars', '2', '--seats', '4', '--adults', '9', '--gauge', '7-1/4 in');
  expect(stdout.replace(/\s+/g, ' ')).toContain('9 ride, and there are 8 seats (2 cars of 4): 1 finds none.');
});
