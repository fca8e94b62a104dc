/** The counts, the sentence and the screen never disagree with the verdict and its tables, over the same outings. */
import { describe, expect, it } from 'vitest';
import { drivenRows } from '../../desk/driven.ts';
import type { Answer, CountWay } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Finding, FindingOf } from '../../engine/questions/finding.ts';
import type { FindingCode } from '../../engine/questions/findings.ts';
import { isCar } from '../../engine/things/train/cars.ts';
import type { Voice } from '../../words/voice.ts';
import { bundled } from '../support/bundled.ts';
import { runs } from '../support/tier.ts';

const quick = await bundled<typeof import('../support/dressed-outings.ts')>('dressed-outings.ts');

const answers: { readonly seed: number; readonly outing: Outing; readonly answer: Answer }[] = [];
for (let seed = 1; seed <= runs(60, 2000); seed++) {
  const outing = quick.dressed(seed);
  answers.push({ seed, outing, answer: quick.countedAnswer(outing) });
}

/** The map lets stops take up to so much less than their room: its speeds lie as much below at most. */
const FIT = 0.004;

const starting = new Set([
  'cannot-start',
  'does-not-hold',
  'no-brake-answers',
  'runs-away',
  'brake-does-not-hold-fall',
]);
/** By what is counted: starting, stopping, holding and the host's number. */
const forbidsCars = ({ severity, code, facts }: Finding): boolean =>
  severity === 'forbids' &&
  (starting.has(code) ||
    code === 'too-many-cars' ||
    ((code === 'cannot-stop' || code === 'too-slow-to-drive') &&
      String(facts['reason']).startsWith('stopping')));

describe('the counts of today', () => {
  it('allow the train as it is where nothing of what is counted forbids it, and only there', () => {
    const allowed = { yes: 0, no: 0 };
    for (const { seed, outing, answer } of answers) {
      const here = outing.train.vehicles.filter(isCar).length;
      const [{ least, by }] = answer.cars;
      if (here === 0 || (least === null && by === null)) continue;
      const fits = least !== null && here <= least;
      expect(fits, `${seed}: ${here} cars, ${JSON.stringify(answer.cars[0])}`).toBe(
        !answer.findings.some(forbidsCars),
      );
      allowed[fits ? 'yes' : 'no']++;
    }
    // Both kinds are there to be told apart.
    expect(Math.min(allowed.yes, allowed.no)).toBeGreaterThan(runs(6, 200));
  });

  it('of starting, keeping a speed and holding say where a limit is said', () => {
    const told = { booked: 0, slow: 0 };
    for (const { seed, outing, answer } of answers) {
      const here = outing.train.vehicles.filter(isCar).length;
      const [count] = answer.cars;
      const finding = <C extends FindingCode>(code: C) =>
        answer.findings.find((f) => f.code === code) as FindingOf<C> | undefined;
      if (here === 0) continue;
      const fits = (way: CountWay): boolean =>
        here <= count[way]! && !count.none.includes(way) && here >= (count.from[way] ?? 0);
      const stuck = finding('cannot-start');
      if (count.pulled !== null) expect(fits('pulled'), `${seed} pulled`).toBe(stuck === undefined);
      if (count.pulledBooked !== null) {
        const places = stuck?.facts.places ?? '';
        expect(fits('pulledBooked'), `${seed} booked ${places}`).toBe(places === '');
        if (stuck && places === '') told.booked++;
      }
      if (count.keepsSpeed !== null) {
        // Nobody knows by how much more than the fastest at which its pull was measured.
        const kept = answer.haul!.balancingSpeed ?? Infinity;
        if (fits('keepsSpeed')) expect(kept, `${seed} keeps`).toBeGreaterThan(3 * 0.44704 - 0.02);
        else {
          expect(kept, `${seed} keeps`).toBeLessThan(3 * 0.44704 + 0.02);
          told.slow++;
        }
        if (finding('slow-on-grade')) expect(fits('keepsSpeed'), `${seed} slow`).toBe(false);
      }
      const asked = finding('does-not-hold') ?? finding('holds-only-while-brake-is-tight');
      expect(fits('held'), `${seed} held`).toBe(asked === undefined);
    }
    expect(told.booked).toBeGreaterThan(runs(0, 20));
    expect(told.slow).toBeGreaterThan(runs(3, 100));
  });

  it('of stopping say no less than the speed table: what is stopped runs as meant within what is seen', () => {
    const told = { yes: 0, no: 0 };
    for (const { seed, outing, answer } of answers) {
      const here = outing.train.vehicles.filter(isCar).length;
      const [{ stopped, none, from }] = answer.cars;
      if (here === 0 || stopped === null) continue;
      const { limit, reason, reasons } = answer.speeds!;
      const meant = Math.min(outing.plannedSpeed ?? Infinity, outing.host.speed?.value ?? Infinity);
      const slowed = reasons.some(({ kind }) => kind === 'cannot-stop' || kind.startsWith('stopping'))
        ? limit.some((v, j) => {
            const { kind } = reasons[reason[j]];
            return (
              (kind === 'cannot-stop' || (kind.startsWith('stopping') && kind !== 'stopping-end')) &&
              v < meant * (1 - FIT)
            );
          })
        : false;
      const fits = here <= stopped && !none.includes('stopped') && here >= (from.stopped ?? 0);
      // What stops in its room everywhere is slowed by no sight; other reasons may slow it first.
      if (fits) expect(slowed, `${seed} stopped ${stopped}`).toBe(false);
      told[fits ? 'yes' : 'no']++;
    }
    expect(Math.min(told.yes, told.no)).toBeGreaterThan(runs(3, 100));
  });
});

const voices = (outing: Outing): Voice[] =>
  (['imperial', 'metric'] as const).map((system) => ({ system, wording: 'us', outing }));

/** Speeds named in a text, m/s. */
const speedsIn = (text: string): number[] =>
  [...text.matchAll(/([\d.]+) (mph|km\/h)/g)].map(
    ([, figure, unit]) => Number(figure) * (unit === 'mph' ? 0.44704 : 1 / 3.6),
  );
/** Rounded down to a tenth of either unit. */
const GRAIN = 0.1 * 0.44704 + 1e-9;

describe('the sentence under the word', () => {
  it('names the fastest and the slowest of the zones, the least count and the longest gap', () => {
    let told = 0;
    let braked = 0;
    for (const { seed, outing, answer } of answers) {
      for (const voice of voices(outing)) {
        const { not, speed, cars, brake, ...alone } = quick.sentenceParts(answer, voice);
        // Most are alone on their line: with others that run the same way the gap is told.
        const others: Outing = { ...outing, otherTrains: 'same-way' };
        const { gap } = quick.sentenceParts(answer, { ...voice, outing: others });
        if (not === '' && (outing.otherTrains === 'none' || !outing.line.loop))
          expect(alone.gap).toBe('with no other train on the line');
        const [{ least, by }] = answer.cars;
        const number = /at most (\d+) cars?/.exec(cars)?.[1];
        const none = cars.startsWith('no car, the engine alone') ? 0 : null;
        expect(number === undefined ? none : Number(number), `${seed} ${cars}`).toBe(least);
        if (least === null) expect(cars).toMatch(by === null ? /nobody can tell/ : /no number of cars/);
        expect(not === '', `${seed} ${not}`).toBe(answer.verdict === 'go' || answer.verdict === 'limits');
        if (not !== '') continue;
        const limits = drivenRows(answer, voice)
          .filter(({ zone }) => zone.kind === 'run')
          .map(({ zone }) => zone.speed);
        const eased = answer.findings.flatMap((f) => (f.code === 'wheels-slide' && f.facts.eased ? [f] : []));
        expect(brake !== '', `${seed} ${brake}`).toBe(eased.length > 0);
        // The tightest of them, and no more than its wheels bear.
        const share = /(\d+) % of full/.exec(brake)?.[1];
        if (share !== undefined)
          for (const { facts } of eased)
            expect(Number(share) / 100, `${seed} ${brake}`).toBeLessThanOrEqual(
              facts.dayShare && facts.dayShare.si < 1 ? facts.dayShare.si : facts.share.si,
            );
        braked += brake === '' ? 0 : 1;
        const said = speedsIn(speed.replace(/ \(planned: [^)]*\)/, ''));
        const [top, low] = [Math.max(...limits), Math.min(...limits)];
        const [fastest, slowest] = [Math.max(...said), Math.min(...said)];
        expect(fastest, `${seed} ${speed}`).toBeLessThanOrEqual(top + 1e-9);
        expect(fastest).toBeGreaterThan(top - GRAIN);
        expect(slowest).toBeLessThanOrEqual(low + 1e-9);
        expect(slowest).toBeGreaterThan(low - GRAIN);
        const metres = Number.parseFloat(gap) * (voice.system === 'imperial' ? 0.3048 : 1);
        const longest = Math.max(...answer.speeds!.gap);
        expect(metres).toBeGreaterThanOrEqual(longest - 1e-9);
        expect(metres).toBeLessThan(longest + 0.31);
        told++;
      }
    }
    expect(told).toBeGreaterThan(runs(8, 250));
    expect(braked).toBeGreaterThan(0);
  });
});

describe('the screen of a check', () => {
  it('is 24 lines of 80 letters at most, the prompt on the last, and begins with the word', () => {
    for (const { seed, outing, answer } of answers.slice(0, runs(20, 300))) {
      for (const voice of voices(outing)) {
        const lines = quick.screenText(answer, voice).split('\n');
        expect(lines.length, `${seed}\n${lines.join('\n')}`).toBeLessThanOrEqual(23);
        for (const line of lines) expect(line.length, `${seed} ${line}`).toBeLessThanOrEqual(80);
        expect(lines[0]).toMatch(/: (GO|GO WITHIN LIMITS|HOLD|CANNOT TELL)$/);
        expect(lines.some((line) => line.startsWith('Cars on '))).toBe(true);
      }
    }
  });
});
