/**
 * Vessels, trees of vessels and whole trains against a general-purpose integrator on a plain right-hand side,
 * 400 random cases. The bounds below leave room for another machine's rounding.
 */
import { describe, expect, it } from 'vitest';
import { exact } from '../../engine/base/quantity.ts';
import { seeded } from '../../engine/base/spread.ts';
import { type AirNode, AirTree, LAMINAR } from '../../engine/things/brake/network.ts';
import { trainAir } from '../../engine/things/brake/train-air.ts';
import { emptyTime, filledPressure, fillTime, type Thermal } from '../../engine/things/brake/vessel.ts';
import { loadedTrain } from '../support/braked-trains.ts';
import { beside } from '../support/measured.ts';
import { integrate } from '../support/odex.ts';
import { assumedValues } from '../support/random-outings.ts';

/** Written out anew, in other terms than the engine's: mass flow by the nozzle's exit speed and density. */
const R = 287.053;
function nozzle(up: number, down: number, area: number, temperature: number): number {
  if (up <= down) return 0;
  const throat = Math.max(down, up * 1.2 ** -3.5);
  const density = (up / (R * temperature)) * (throat / up) ** (1 / 1.4);
  const exitSpeed = Math.sqrt(2 * 3.5 * R * temperature * (1 - (throat / up) ** (2 / 7)));
  return area * density * exitSpeed;
}

const ODEX = '`odex` on the flow of a nozzle, written out anew';
const sea = 101_325;
const { brakeParts } = assumedValues;
const draws = (seed: number) => {
  const next = seeded(seed);
  return (low: number, high: number): number => low + (high - low) * next();
};
const spreadLog = (draw: (a: number, b: number) => number, low: number, high: number): number =>
  Math.exp(draw(Math.log(low), Math.log(high)));

describe('one vessel', () => {
  it('filling: 150 random vessels, both thermal bounds', () => {
    const draw = draws(11);
    const errors: number[] = [];
    for (let k = 0; k < 150; k++) {
      const thermal: Thermal = k % 2 === 0 ? 'isothermal' : 'adiabatic';
      const passage = {
        volume: spreadLog(draw, 1e-4, 0.1),
        area: spreadLog(draw, 1e-7, 1e-4),
        temperature: draw(260, 310),
      };
      const supply = draw(120_000, 1e6);
      const from = draw(20_000, supply * 0.9);
      const to = draw(from, supply * 0.995);
      const time = fillTime(passage, supply, from, to, thermal);
      const n = thermal === 'adiabatic' ? 1.4 : 1;
      const rate = (_: number, [p]: number[]): number[] => [
        (n * nozzle(supply, p, passage.area, passage.temperature) * R * passage.temperature) / passage.volume,
      ];
      const [reached] = integrate(rate, 0, [from], time);
      errors.push(Math.abs(reached - to) / supply);
      errors.push(Math.abs(filledPressure(passage, supply, from, time, thermal) - to) / supply);
    }
    beside(import.meta.url, 'filling of a vessel: pressures, of their range', ODEX, errors);
    expect(Math.max(...errors)).toBeLessThan(2e-6);
  });

  it('emptying: 150 random vessels, both thermal bounds', () => {
    const draw = draws(12);
    const errors: number[] = [];
    for (let k = 0; k < 150; k++) {
      const thermal: Thermal = k % 2 === 0 ? 'isothermal' : 'adiabatic';
      const passage = {
        volume: spreadLog(draw, 1e-4, 0.1),
        area: spreadLog(draw, 1e-7, 1e-4),
        temperature: draw(260, 310),
      };
      const outside = draw(70_000, 102_000);
      const from = outside * draw(1.05, 8);
      const to = draw(outside * 1.01, from);
      const time = emptyTime(passage, outside, from, to, thermal);
      const cold = (p: number): number =>
        thermal === 'adiabatic' ? passage.temperature * (p / from) ** (2 / 7) : passage.temperature;
      const n = thermal === 'adiabatic' ? 1.4 : 1;
      const rate = (_: number, [p]: number[]): number[] => [
        (-n * nozzle(p, outside, passage.area, cold(p)) * R * cold(p)) / passage.volume,
      ];
      const [reached] = integrate(rate, 0, [from], time);
      errors.push(Math.abs(reached - to) / outside);
    }
    beside(import.meta.url, 'emptying of a vessel: pressures, of their range', ODEX, errors);
    expect(Math.max(...errors)).toBeLessThan(2e-6);
  });
});

describe('trees of vessels', () => {
  it('reservoir, two pipes, cylinder: 60 random trees', () => {
    const draw = draws(13);
    const temperature = 288.15;
    const errors: number[] = [];
    for (let k = 0; k < 60; k++) {
      const volumes = [
        spreadLog(draw, 1e-3, 0.02),
        spreadLog(draw, 5e-5, 5e-4),
        spreadLog(draw, 5e-5, 5e-4),
        spreadLog(draw, 5e-5, 1e-3),
      ];
      const areas = [
        0,
        spreadLog(draw, 2e-6, 2e-5),
        spreadLog(draw, 2e-6, 2e-5),
        spreadLog(draw, 1e-6, 1e-5),
      ];
      const starts = [draw(2e5, 8e5), draw(5e4, 1e5), draw(5e4, 1e5), draw(5e4, 1e5)];
      const parents = [-1, 0, 1, k % 2 === 0 ? 2 : 1];
      const nodes = volumes.map(
        (volume, i): AirNode => ({
          name: `${i}`,
          parent: parents[i],
          area: areas[i],
          way: 'both',
          body: { kind: 'rigid', volume },
          vents: i === 2 ? [{ area: 2e-7, pressure: 101_325, way: 'both' }] : [],
          leak: 0,
          start: starts[i],
        }),
      );
      const tree = new AirTree(nodes, 101_325, temperature);
      const end = draw(0.02, 0.3);
      tree.run(end, () => false);
      const rate = (_: number, p: number[]): number[] => {
        const out = p.map(() => 0);
        const move = (a: number, b: number, area: number): void => {
          const flow = area * signed(p[a], p[b], temperature) * R * temperature;
          out[a] -= flow / volumes[a];
          out[b] += flow / volumes[b];
        };
        for (let i = 1; i < 4; i++) move(parents[i], i, areas[i]);
        out[2] += (2e-7 * signed(101_325, p[2], temperature) * R * temperature) / volumes[2];
        return out;
      };
      const expected = integrate(rate, 0, starts, end, 1e-7);
      expected.forEach((p, i) => {
        errors.push(Math.abs(p - tree.state.pressure[i]) / starts[0]);
      });
    }
    beside(import.meta.url, 'trees of vessels: pressures, of their range', ODEX, errors);
    expect(Math.max(...errors)).toBeLessThan(2e-4);
  });
});

describe('whole trains', () => {
  it('straight air from a supply without end: 40 random trains of one to six cars', () => {
    const draw = draws(14);
    const temperature = 288.15;
    const errors: number[] = [];
    for (let k = 0; k < 40; k++) {
      const cars = 1 + Math.floor(draw(0, 6));
      const springForce = draw(10, 120);
      const working = draw(2e5, 4e5);
      const rigging = {
        stroke: draw(0.015, 0.06),
        springForce,
        workingPressure: exact(working),
        hoseDiameter: draw(0.004, 0.01),
        chokeDiameter: draw(0.0015, 0.004),
        pipeVolume: draw(5e-5, 3e-4),
      };
      const supply = { reservoirVolume: undefined as never, valveDiameter: draw(0.003, 0.008) };
      const loaded = loadedTrain('straight-air', cars, rigging, supply);
      const laid = trainAir(loaded, 'straight-air', 'apply', sea, brakeParts);
      const tree = new AirTree(laid.nodes, sea, temperature);
      const end = draw(0.1, 0.8);
      tree.run(end, () => false, 1e-5);
      // Anew: pipes 0…cars, then cylinders; contents p·V as unknowns.
      const area = (Math.PI / 4) * 0.05 ** 2;
      const swept = area * rigging.stroke;
      const [clearance, strokeAt] = [0.15 * swept, Math.max(2000, springForce / area)];
      const choke = 0.65 * (Math.PI / 4) * rigging.chokeDiameter ** 2;
      const valve = 0.65 * (Math.PI / 4) * supply.valveDiameter ** 2;
      const engineHose = supply.valveDiameter;
      const hose = (d: number, length: number): number =>
        ((Math.PI / 4) * d * d) / Math.sqrt(2.5 + (0.03 * length) / d);
      const pipeVolume = (i: number): number =>
        i === 0 ? (Math.PI / 4) * engineHose ** 2 * 2 : rigging.pipeVolume;
      const passage = (i: number): number =>
        i === 1 ? hose(Math.min(engineHose, rigging.hoseDiameter), 2.2) : hose(rigging.hoseDiameter, 2.4);
      const pressures = (u: number[]): number[] =>
        u.map((content, i) =>
          i <= cars ? content / pipeVolume(i) : cylinderPressureOf(content, clearance, swept, strokeAt),
        );
      const rate = (_: number, u: number[]): number[] => {
        const p = pressures(u);
        const out = u.map(() => 0);
        const move = (a: number, b: number, c: number): void => {
          const flow = c * signed(p[a], p[b], temperature) * R * temperature;
          out[a] -= flow;
          out[b] += flow;
        };
        out[0] += valve * signed(sea + working, p[0], temperature) * R * temperature;
        for (let i = 1; i <= cars; i++) {
          move(i - 1, i, passage(i));
          move(i, cars + i, choke);
        }
        return out;
      };
      const start = [
        ...Array.from({ length: cars + 1 }, (_, i) => sea * pipeVolume(i)),
        ...Array.from({ length: cars }, () => sea * clearance),
      ];
      const expected = pressures(integrate(rate, 0, start, end, 1e-8));
      expected.forEach((p, i) => {
        errors.push(Math.abs(p - tree.state.pressure[i]) / working);
      });
    }
    beside(
      import.meta.url,
      'trains on straight air, with their pistons: pressures, of their range',
      ODEX,
      errors,
    );
    expect(Math.max(...errors)).toBeLessThan(1e-4);
  });
});

/** Pressure of a cylinder from its content: the stroke's quadratic where the spring gives way. */
function cylinderPressureOf(content: number, clearance: number, swept: number, strokeAt: number): number {
  const full = content / (clearance + swept);
  if (full - sea >= strokeAt) return full;
  if (content / clearance <= sea) return content / clearance;
  const a = swept / strokeAt;
  const b = clearance + sea * a;
  const c = sea * clearance - content;
  return sea + (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
}

/** Per unit of area; straight through zero near equal pressures, as the engine states. */
function signed(a: number, b: number, temperature: number): number {
  const [up, down] = a >= b ? [a, b] : [b, a];
  const edge = up * (1 - LAMINAR);
  const flow =
    down > edge
      ? (nozzle(up, edge, 1, temperature) * (up - down)) / (up * LAMINAR)
      : nozzle(up, down, 1, temperature);
  return a >= b ? flow : -flow;
}
