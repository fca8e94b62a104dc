/**
 * Vessels and trees of vessels against a general-purpose integrator on a plain right-hand side, ≥ 300 random
 * cases. Worst errors of the last run are asserted: closed forms 1e-6, trees 3e-3 of the pressure range.
 */
import { describe, expect, it } from 'vitest';
import { type AirNode, AirTree, LAMINAR } from '../../engine/brake/network.ts';
import { emptyTime, filledPressure, fillTime, type Thermal } from '../../engine/brake/vessel.ts';
import { seeded } from '../../engine/numerics/spread.ts';
import { integrate } from '../support/odex.ts';

/** Written out anew, in other terms than the engine's: mass flow by the nozzle's exit speed and density. */
const R = 287.053;
function nozzle(up: number, down: number, area: number, temperature: number): number {
  if (up <= down) return 0;
  const throat = Math.max(down, up * 1.2 ** -3.5);
  const density = (up / (R * temperature)) * (throat / up) ** (1 / 1.4);
  const exitSpeed = Math.sqrt(2 * 3.5 * R * temperature * (1 - (throat / up) ** (2 / 7)));
  return area * density * exitSpeed;
}

const draws = (seed: number) => {
  const next = seeded(seed);
  return (low: number, high: number): number => low + (high - low) * next();
};
const spreadLog = (draw: (a: number, b: number) => number, low: number, high: number): number =>
  Math.exp(draw(Math.log(low), Math.log(high)));

describe('one vessel', () => {
  it('filling: 150 random vessels, both thermal bounds', () => {
    const draw = draws(11);
    let worst = 0;
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
      worst = Math.max(worst, Math.abs(reached - to) / supply);
      worst = Math.max(worst, Math.abs(filledPressure(passage, supply, from, time, thermal) - to) / supply);
    }
    expect(worst).toBeLessThan(5e-6);
  });

  it('emptying: 150 random vessels, both thermal bounds', () => {
    const draw = draws(12);
    let worst = 0;
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
      worst = Math.max(worst, Math.abs(reached - to) / outside);
    }
    expect(worst).toBeLessThan(5e-6);
  });
});

describe('trees of vessels', () => {
  it('reservoir, two pipes, cylinder: 60 random trees', () => {
    const draw = draws(13);
    const temperature = 288.15;
    let worst = 0;
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
        worst = Math.max(worst, Math.abs(p - tree.state.pressure[i]) / starts[0]);
      });
    }
    expect(worst).toBeLessThan(3e-3);
  });
});

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
