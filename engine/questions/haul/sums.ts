/** Sums of resistance, traction, adhesion and haulage. */
import { GRAVITY, INCH, MPH, POUND, POUND_FORCE } from '../../base/constants.ts';
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';

const LONG_TON = 2240 * POUND;
const SHORT_TON = 2000 * POUND;
const PSI = POUND_FORCE / (INCH * INCH);
const mass = input('mass', 'mass', positive);
const grade = input('grade', 'grade', { low: -0.15, high: 0.15 });

export const haulageSums: readonly Sum[] = [
  {
    id: 'grade-force',
    inputs: [mass, grade],
    results: [result('force', 'force'), result('per-weight', 'specificForce')],
    equation: 'F = m·g·q;  q = i',
    letters: 'F force, m mass, g gravity, q per-weight, i grade',
    remark: '20 lb per short ton for each 1 %',
    source: 'US Army TR0603 ed. 3, 2.7; Molesworth p. 223',
    compute: ({ mass: m, grade: i }) => [m * GRAVITY * i, i],
  },
  {
    id: 'curve-resistance',
    inputs: [
      mass,
      input('radius', 'length', positive),
      input('constant', 'length', { low: 0, high: 2, default: 0.08 }),
    ],
    results: [result('force', 'force'), result('per-weight', 'specificForce')],
    equation: 'F = m·g·q;  q = c/R',
    letters: 'F force, m mass, g gravity, q per-weight, c constant, R radius',
    source: 'form common to railway practice; c by measurement, 0.70 m at standard gauge (US Army TR0603)',
    compute: ({ mass: m, radius, constant: c }) => [(m * GRAVITY * c) / radius, c / radius],
  },
  {
    id: 'curve-resistance-by-degree',
    inputs: [mass, input('degree', 'angle', { low: 0, high: Math.PI })],
    results: [result('force', 'force'), result('per-weight', 'specificForce')],
    equation: 'F = q·m;  q = 0.8·D',
    letters: 'F force in lbf, q per-weight in lb/short ton, m mass in short ton, D degree in °',
    source: 'US Army TR0603 ed. 3, 2.8',
    compute: ({ mass: m, degree }) => {
      const perTon = 0.8 * ((degree * 180) / Math.PI);
      return [(m / SHORT_TON) * perTon * POUND_FORCE, (perTon * POUND_FORCE) / (SHORT_TON * GRAVITY)];
    },
  },
  {
    id: 'davis-resistance',
    inputs: [
      mass,
      input('axles', 'count', { low: 2, high: 16, whole: true, default: 4 }),
      input('speed', 'speed', { low: 0, high: 45 }),
      input('grade', 'grade', { low: -0.15, high: 0.15, default: 0 }),
    ],
    results: [result('force', 'force'), result('per-weight', 'specificForce')],
    equation: 'F = q·m;  q = 1.3 + 29/w + 0.045·V + 0.044·V²/(w·n) + 20·G;  w = m/n',
    letters:
      'F force in lbf, q per-weight in lb/short ton, m mass in short ton, w load-of-an-axle, V speed in mph, n axles, G grade in %',
    source: 'Davis 1926, as worked in Car & Locomotive Cyclopedia 1970 p. 842 (grade term corrected to 20·G)',
    compute: ({ mass: m, axles: n, speed, grade: i }) => {
      const tons = m / SHORT_TON;
      const w = tons / n;
      const V = speed / MPH;
      const perTon = 1.3 + 29 / w + 0.045 * V + (0.044 * V * V) / (w * n) + 20 * i * 100;
      return [perTon * tons * POUND_FORCE, (perTon * POUND_FORCE) / (SHORT_TON * GRAVITY)];
    },
  },
  {
    id: 'small-gauge-resistance',
    inputs: [
      mass,
      input('rate', 'specificForce', { low: 0, high: 0.2, default: 40 / 2240 }),
      input('grade', 'grade', { low: -0.15, high: 0.15, default: 0 }),
    ],
    results: [result('force', 'force')],
    equation: 'F = m·g·(r + i)',
    letters: 'F force, m mass, g gravity, r rate, i grade',
    remark: 'r is 40 lb per long ton as a working allowance, 20 to keep a train moving',
    source: 'Heywood, Minimum Gauge Railways, 3rd ed. (1898), pp. 40–41',
    compute: ({ mass: m, rate, grade: i }) => [m * GRAVITY * (rate + i)],
  },
  {
    id: 'tractive-effort',
    inputs: [
      input('pressure', 'gaugePressure', positive),
      input('bore', 'length', positive),
      input('stroke', 'length', positive),
      input('wheel', 'length', positive),
      input('cylinders', 'count', { low: 2, high: 4, whole: true, default: 2 }),
      input('factor', 'ratio', { low: 0, open: true, high: 1, default: 0.85 }),
    ],
    results: [result('force', 'force')],
    equation: 'F = f·p·d²·s·n/(2·D)',
    letters: 'F force, f factor, p pressure, d bore, s stroke, n cylinders, D wheel',
    source: 'railway practice; worked figures of two published locomotives',
    compute: ({ pressure: p, bore: d, stroke: s, wheel, cylinders: n, factor: f }) => [
      (f * p * d * d * s * n) / (2 * wheel),
    ],
  },
  {
    id: 'tractive-power-per-pressure',
    inputs: [
      input('bore', 'length', positive),
      input('stroke', 'length', positive),
      input('wheel', 'length', positive),
    ],
    results: [result('per-psi', 'force')],
    equation: 'k = d²·s/D',
    letters: 'k per-psi in lbf, d bore in in, s stroke in in, D wheel in in',
    remark: 'pull in lb for each lb per sq in of mean pressure',
    source: 'Heywood, Minimum Gauge Railways, 3rd ed. (1898)',
    compute: ({ bore: d, stroke: s, wheel }) => [((d * d * s) / wheel) * PSI],
  },
  {
    id: 'haulable-load',
    inputs: [
      input('pull', 'force', positive),
      input('engine', 'mass', positive),
      input('resistance', 'specificForce', { low: 0, high: 0.2 }),
      input('grade', 'grade', { low: 0, high: 0.15, default: 0 }),
      input('curve', 'specificForce', { low: 0, high: 0.2, default: 0 }),
      input('weather', 'ratio', { low: 0, open: true, high: 1, default: 1 }),
    ],
    results: [result('trailing', 'mass'), result('whole', 'mass')],
    equation: 'M = F·w/(g·(r + i + c));  L = M − m',
    letters: 'M whole, F pull, w weather, g gravity, r resistance, i grade, c curve, L trailing, m engine',
    source: 'force balance; the army’s worked form is army-trailing-load',
    compute: ({ pull, engine, resistance, grade: i, curve, weather }) => {
      const rate = resistance + i + curve;
      if (rate <= 0) return { symbol: 'resistance', found: '0', expected: 'some resistance, grade or curve' };
      const whole = (pull * weather) / (GRAVITY * rate);
      if (whole < engine)
        return { symbol: 'pull', found: `${pull}`, expected: 'enough to move the engine itself' };
      return [whole - engine, whole];
    },
  },
  {
    id: 'army-trailing-load',
    inputs: [
      input('tractive-effort', 'force', positive),
      input('engine', 'mass', positive),
      input('engine-resistance', 'specificForce', { low: 0, high: 0.2, default: 20 / 2000 }),
      input('rolling', 'specificForce', { low: 0, high: 0.2, default: 7 / 2000 }),
      input('grade', 'grade', { low: 0, high: 0.15, default: 0 }),
      input('degree', 'angle', { low: 0, high: Math.PI, default: 0 }),
      input('weather', 'ratio', { low: 0, open: true, high: 1, default: 1 }),
    ],
    results: [result('trailing', 'mass')],
    equation: 'L = w·(F − q·m)/(r + 20·G + 0.8·D)',
    letters:
      'L trailing in short ton, w weather, F tractive-effort in lbf, q engine-resistance in lb/short ton, m engine in short ton, r rolling in lb/short ton, G grade in %, D degree in °',
    source: 'US Army TR0603 ed. 3, 2.11',
    compute: ({
      'tractive-effort': te,
      engine,
      'engine-resistance': own,
      rolling,
      grade: i,
      degree,
      weather,
    }) => {
      const drawbar = (te - engine * GRAVITY * own) * weather;
      if (drawbar <= 0)
        return {
          symbol: 'tractive-effort',
          found: `${te}`,
          expected: 'more than the engine’s own resistance',
        };
      const rate = rolling + (20 * i * 100) / 2000 + (0.8 * ((degree * 180) / Math.PI)) / 2000;
      return [drawbar / (GRAVITY * rate)];
    },
  },
  {
    id: 'heywood-load',
    inputs: [
      input('pressure', 'gaugePressure', positive),
      input('bore', 'length', positive),
      input('stroke', 'length', positive),
      input('wheel', 'length', positive),
      input('engine', 'mass', positive),
      input('grade', 'grade', { low: 0, high: 0.15, default: 0 }),
    ],
    results: [result('trailing', 'mass'), result('pull', 'force')],
    equation: 'L = (F − m·(100 + 2240·i))/(40 + 2240·i);  F = 0.9·p·d²·s/D',
    letters:
      'L trailing in long ton, F pull in lbf, m engine in long ton, i grade, p pressure in psi, d bore in in, s stroke in in, D wheel in in',
    source: 'Heywood, Minimum Gauge Railways, 3rd ed. (1898), pp. 31, 40–41',
    compute: ({ pressure: p, bore: d, stroke: s, wheel, engine, grade: i }) => {
      const pull = (0.9 * p * d * d * s) / wheel;
      const own = (engine / LONG_TON) * (100 + 2240 * i) * POUND_FORCE;
      if (pull <= own)
        return { symbol: 'pressure', found: `${p}`, expected: 'enough to move the engine itself' };
      const load = (pull - own) / ((40 + 2240 * i) * POUND_FORCE);
      return [load * LONG_TON, pull];
    },
  },
  {
    id: 'adhesion-limit',
    inputs: [
      input('adhesion', 'ratio', { low: 0, open: true, high: 1 }),
      input('load', 'force', notNegative),
    ],
    results: [result('force', 'force')],
    equation: 'F = µ·N',
    letters: 'F force, µ adhesion, N load',
    source: 'definition of adhesion',
    compute: ({ adhesion, load }) => [adhesion * load],
  },
  {
    id: 'adhesion-by-speed',
    inputs: [input('speed', 'speed', { low: 0, high: 160 / 3.6 })],
    results: [result('adhesion', 'ratio')],
    equation: 'µ = 7.5/(V + 44) + 0.161',
    letters: 'µ adhesion, V speed in km/h',
    source: 'Curtius and Kniffler (from memory)',
    compute: ({ speed }) => [7.5 / (speed * 3.6 + 44) + 0.161],
  },
  {
    id: 'steam-power-pull',
    inputs: [input('power', 'power', positive), input('speed', 'speed', { low: 0, open: true, high: 30 })],
    results: [result('force', 'force')],
    equation: 'F = P/v',
    letters: 'F force, P power, v speed',
    source: 'definition of power',
    compute: ({ power, speed }) => [power / speed],
  },
];
