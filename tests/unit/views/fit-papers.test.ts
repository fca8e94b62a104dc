/** The section to be left clear on paper and as a drawing exchange file, read back by a reader of its own; worksheets. */
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { besideCurve, lookAtClear } from '../../../desk/clear.ts';
import { keepClear } from '../../../desk/keep-clear.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { calliperPicture, calliperPictures } from '../../../views/fit/calliper-pictures.ts';
import { dxf, layerName } from '../../../views/fit/dxf.ts';
import { leftClearCsv } from '../../../views/fit/left-clear-csv.ts';
import { scaleFor, templateDocument, templatesDxf, templatesPlot } from '../../../views/fit/template.ts';
import { wheelPlot } from '../../../views/fit/wheel-plot.ts';
import { sheetOf, worksheetDocument } from '../../../views/fit/worksheet.ts';
import { type Scene, sceneToSvg } from '../../../views/strip/scene.ts';
import { curvesTable } from '../../../views/tables/clear.ts';
import { beside, CAR } from '../../support/beside.ts';
import { altered } from '../../support/rules.ts';
import { wheeled } from '../../support/wheeled.ts';

const curve = { from: 40, to: 90, startCurvature: 1 / 12, endCurvature: 1 / 12, gaugeWidening: 0 };
const curved = (): Outing => beside({ line: { curves: [curve] } });
const voice = (outing: Outing) => ({ system: 'metric', wording: 'us', outing }) as const;
const all = (): true => true;

/** Group codes and values, two lines each. */
function pairsOf(text: string): { code: number; value: string }[] {
  const lines = text.split('\n');
  expect(lines.pop()).toBe('');
  expect(lines.length % 2).toBe(0);
  return Array.from({ length: lines.length / 2 }, (_, i) => ({
    code: Number(lines[2 * i]),
    value: lines[2 * i + 1],
  }));
}

/** Closed polylines by layer, mm. */
function polylinesOf(text: string): Map<string, [number, number][]> {
  const found = new Map<string, [number, number][]>();
  let [layer, in_] = ['', false];
  const pairs = pairsOf(text);
  pairs.forEach(({ code, value }, i) => {
    if (code === 0) in_ = value === 'VERTEX' ? in_ : value === 'POLYLINE';
    if (code === 8 && in_) {
      layer = value;
      if (!found.has(layer)) found.set(layer, []);
    }
    if (code === 10 && in_) found.get(layer)?.push([Number(value), Number(pairs[i + 1].value)]);
  });
  return found;
}

describe('the section to be left clear', () => {
  const outing = curved();
  const clear = lookAtClear(outing);
  const made = keepClear(clear);

  it('has one for the straight and one for each curve, as wide as the tables say', () => {
    expect(made.map((t) => t.where)).toEqual(['straight', { from: curve.from, to: curve.to }]);
    const [straight, bend] = made.map(({ outline }) => ({
      left: Math.max(...outline.map((p) => p.x)),
      right: Math.max(...outline.map((p) => -p.x)),
    }));
    expect(straight.left).toBeCloseTo(clear.straight ?? 0, 9);
    expect([bend.left, bend.right].sort()).toEqual(
      [clear.curves[0].inside, clear.curves[0].outside].sort().map((n) => expect.closeTo(n, 9)),
    );
    expect(bend.left).toBeGreaterThan(CAR.width / 2);
  });

  it('is nothing where nothing is measured', () => {
    const { envelope: _none, ...bare } = outing.train.vehicles[0];
    const unknown = { ...outing, train: { ...outing.train, vehicles: [bare] } };
    expect(keepClear(lookAtClear(unknown))).toEqual([]);
    expect(templatesPlot(lookAtClear(unknown), 0.18, voice(outing))).toBeUndefined();
  });

  it('as DXF holds the same corners in full size, a layer each', () => {
    const text = templatesDxf(clear, outing.line.gauge, voice(outing));
    const pairs = pairsOf(text);
    expect(pairs.at(-1)).toEqual({ code: 0, value: 'EOF' });
    expect(pairs.filter((p) => p.value === 'SECTION')).toHaveLength(
      pairs.filter((p) => p.value === 'ENDSEC').length,
    );
    const polylines = polylinesOf(text);
    expect([...polylines.keys()]).toEqual(['STRAIGHT-1', 'R-12000-MM-LEFT-2']);
    const [straight] = polylines.values();
    expect(straight).toEqual(
      made[0].outline.map(({ x, y }) => [expect.closeTo(-x * 1000, 3), expect.closeTo(y * 1000, 3)]),
    );
    const [first, second] = [...polylines.values()].map((of) => of.map(([x]) => x));
    // Beside each other, not over.
    expect(Math.min(...second)).toBeGreaterThan(Math.max(...first));
  });

  it('letters that a reader may not know are left out of names and texts', () => {
    expect(layerName('Kurve “Süd” 12’')).toBe('KURVE-S-D-12');
    expect(layerName('…')).toBe('SHEET');
    const text = dxf([
      {
        layer: 'a',
        x: 0,
        outline: [],
        lines: [],
        letters: [{ x: 0, y: 0, high: 1, text: 'host’s — 1\n0\nEOF' }],
      },
    ]);
    expect(
      pairsOf(text)
        .filter((p) => p.code === 1)
        .at(-1)?.value,
    ).toBe("host's - 1-0-EOF");
  });

  it('on paper is to the scale that it says, by the bar and by its own width', () => {
    const document = templateDocument(clear, outing.line.gauge, 'a4', voice(outing), all);
    const text = JSON.stringify(document);
    const scale = scaleFor(made, 'a4');
    expect(text).toContain(`Scale 1 : ${scale}`);
    expect(text).toContain('this bar measures 100 mm');
    // 100 mm are 283.46 pt; pictures are printed at their own width.
    expect(text).toContain('x2=\\"283.5\\"');
    const half = Math.max(...made[0].outline.map((p) => p.x));
    const x = 595.28 / 2 - 36 - (half * 72) / 0.0254 / scale;
    expect(text).toContain(`M${Math.round(x * 10) / 10},`);
    expect(scaleFor([], 'a4')).toBe(1);
  });

  it('is drawn', () => {
    const scene = templatesPlot(clear, outing.line.gauge, voice(outing));
    expect(scene && sceneToSvg(scene)).toMatch(/What must be left clear[\s\S]*12.0 m left/);
  });
});

describe('what must be left clear all along', () => {
  const second = { ...curve, from: 120, to: 150, startCurvature: -1 / 20, endCurvature: -1 / 20 };
  const outing = beside({ line: { curves: [curve, second] } });
  const clear = lookAtClear(outing);

  it('anywhere is as wide as the widest of all sections, on either side', () => {
    const made = keepClear(clear);
    const widths = made.map(({ outline }) => [
      Math.max(...outline.map((p) => p.x)),
      Math.max(...outline.map((p) => -p.x)),
    ]);
    expect(made.map((t) => t.where)[3]).toBe('anywhere');
    const [left, right] = [0, 1].map((side) => Math.max(...widths.slice(0, 3).map((w) => w[side])));
    expect(widths[3]).toEqual([expect.closeTo(left, 9), expect.closeTo(right, 9)]);
    // Outward in the one, inward in the other.
    expect(left).toBeGreaterThan(widths[1][0] - 1e-9);
    expect(templatesDxf(clear, outing.line.gauge, voice(outing))).toContain('ANYWHERE-4');
  });

  it('the section of the straight does wherever no curve’s does, before a curve as far off as the longest vehicle is long', () => {
    const base = beside({ line: { curves: [{ ...curve, startCurvature: 1 / 30, endCurvature: 1 / 30 }] } });
    const groups = base.train.vehicles[0].groups.map((g, i) => ({ ...g, at: 3.2 + i * 1.6 }));
    const outing = altered(base, 0, { length: 8, groups });
    const found = lookAtClear(outing);
    const { kept, straight = 0 } = found;
    if (!kept) throw new Error('nothing kept');
    const beyond = kept.at.filter((_, i) => Math.max(kept.left[i], kept.right[i]) > straight + 1e-4);
    const beside_ = besideCurve(kept);
    expect(Math.min(...beyond)).toBeGreaterThan(curve.from - beside_);
    expect(Math.max(...beyond)).toBeLessThan(curve.to + beside_);
    // Its ends reach more than three paces before it.
    expect(Math.min(...beyond)).toBeLessThan(curve.from - 3);
    expect(curvesTable(found, voice(outing)).note).toContain('as far as 8.0 m before and after it');
  });

  it('place by place is a sheet whose figures are no less than what is reached', () => {
    const { data: rows } = Papa.parse<string[]>(leftClearCsv(clear, voice(outing)) ?? '', {
      skipEmptyLines: true,
    });
    expect(rows.shift()).toEqual(['at, m', 'left, mm', 'of', 'right, mm', 'of']);
    expect(rows).toHaveLength(clear.kept?.at.length ?? 0);
    rows.forEach(([at, left, by, right], i) => {
      expect(Number(at)).toBeCloseTo(clear.kept?.at[i] ?? Number.NaN, 2);
      for (const [told, reach] of [
        [Number(left), clear.kept?.left[i] ?? Number.NaN],
        [Number(right), clear.kept?.right[i] ?? Number.NaN],
      ]) {
        expect(told).toBeGreaterThan(reach * 1000 - 1e-3);
        expect(told).toBeLessThan(reach * 1000 + 1.001);
      }
      expect(by).toBe(outing.train.vehicles[0].name);
    });
    const [car] = outing.train.vehicles;
    const odd = {
      ...outing,
      train: { ...outing.train, vehicles: [{ ...car, name: 'the "long, low" car' }] },
    };
    const named = Papa.parse<string[]>(leftClearCsv(lookAtClear(odd), voice(odd)) ?? '').data;
    expect(named[1][2]).toBe('the "long, low" car');
    const inches = leftClearCsv(clear, { ...voice(outing), system: 'imperial' }) ?? '';
    expect(Number(inches.split('\n')[1].split(',')[1]) % (1 / 16)).toBe(0);
  });

  it('says whom nobody measured, on every paper', () => {
    const [first] = outing.train.vehicles;
    const { envelope: _e, ...bare } = first;
    const two = {
      ...outing,
      train: { ...outing.train, vehicles: [first, { ...bare, id: 'b', name: 'Ladder car' }] },
    };
    const partly = lookAtClear(two);
    const missing = 'Not in it, for nobody measured them: Ladder car.';
    const scene = templatesPlot(partly, outing.line.gauge, voice(two));
    expect(scene && sceneToSvg(scene)).toContain(missing);
    expect(JSON.stringify(templateDocument(partly, outing.line.gauge, 'a4', voice(two), all))).toContain(
      missing,
    );
    expect(templatesDxf(partly, outing.line.gauge, voice(two))).toContain(missing);
    expect(leftClearCsv(partly, voice(two))).toContain('not measured: Ladder car');
    expect(templatesDxf(clear, outing.line.gauge, voice(outing))).not.toContain('nobody measured');
    const none = { ...two, train: { ...two.train, vehicles: [bare] } };
    expect(leftClearCsv(lookAtClear(none), voice(none))).toBeUndefined();
  });
});

describe('wheels over the sheet', () => {
  const outing = wheeled();
  const { vehicles } = outing.train;
  const standards = {
    flangeThickness: { least: 0.003, source: 'sheet' },
    flangeHeight: { most: 0.005, source: 'sheet' },
  };

  it('draws each as measured, with the limits that the sheet has', () => {
    const svg = (of = vehicles): string => sceneToSvg(wheelPlot(of, standards, voice(outing)) as Scene);
    expect(svg().match(/axle \d/g)).toHaveLength(vehicles.flatMap((v) => v.wheelsets ?? []).length);
    expect(svg()).toContain('least 3.00 mm');
    expect(svg()).toContain('most 5.00 mm');
    expect(sceneToSvg(wheelPlot(vehicles, undefined, voice(outing)) as Scene)).not.toContain('least');
    // A hollow tread is drawn so.
    const hollow = vehicles.map((v) => ({
      ...v,
      wheelsets: (v.wheelsets ?? []).map((w) => ({ ...w, hollow: 0.001 })),
    }));
    expect(svg(hollow)).not.toBe(svg());
  });

  it('draws nothing of what is not measured', () => {
    const bare = vehicles.map((v) => ({
      ...v,
      wheelsets: (v.wheelsets ?? []).map(({ width: _width, ...w }) => w),
    }));
    expect(wheelPlot(bare, standards, voice(outing))).toBeUndefined();
  });
});

describe('a worksheet', () => {
  it('has a box for every reading of every axle and end, with what is known in it', () => {
    const outing = altered(wheeled(), 1, { lowParts: [{ name: 'ash pan', at: 1, height: 0.03 }] });
    const [, car] = outing.train.vehicles;
    const [backs, flanges, couplers, low] = sheetOf(car, voice(outing));
    const axles = car.groups.reduce((n, g) => n + g.axles, 0);
    expect(backs.rows).toHaveLength(axles);
    expect(backs.rows[0].slice(0, 5)).toEqual(['axle 1', '174.50 mm', '174.55 mm', '174.52 mm', '']);
    expect(flanges.rows[0].slice(1, 4)).toEqual(['3.97 mm', '3.97 mm', '3.97 mm']);
    expect(couplers.rows.map((r) => r[0])).toEqual(['front', 'rear']);
    expect(low.rows[0]).toEqual(['ash pan', '1000 mm', '30 mm']);
    expect(low.rows.length).toBeGreaterThan(1);
    for (const { head, rows } of sheetOf(car, voice(outing)))
      for (const row of rows) expect(row).toHaveLength(head.length);
  });

  it('asks of a group of three axles how far the middle one moves, of shorter ones not', () => {
    const outing = wheeled();
    const [, car] = outing.train.vehicles;
    const titles = (of: typeof car) => sheetOf(of, voice(outing)).map((t) => t.title);
    expect(titles(car).join()).not.toContain('three axles');
    const [group] = car.groups;
    const long = {
      ...car,
      groups: [{ ...group, name: 'drivers', axles: 3, travel: 0.006, middlePlay: 0.004 }],
    };
    const sheet = sheetOf(long, voice(outing)).find((t) => t.title.includes('three axles'));
    expect(sheet?.rows).toEqual([['drivers', '6 mm', '6 mm', '4 mm']]);
  });

  it('of a vehicle that nobody measured has all its boxes empty', () => {
    const outing = curved();
    const [vehicle] = outing.train.vehicles;
    const [backs] = sheetOf(vehicle, voice(outing));
    expect(backs.rows.length).toBe(vehicle.groups.reduce((n, g) => n + g.axles, 0));
    expect(backs.rows.flatMap((r) => r.slice(1)).join('')).toBe('');
  });

  it('shows where to put the calliper, each with how it is read', () => {
    const outing = wheeled();
    const ask = { vehicles: outing.train.vehicles, page: 'letter', voice: voice(outing) } as const;
    const text = JSON.stringify(worksheetDocument(ask, all));
    expect(text.match(/Where to put the calliper/g)).toHaveLength(1);
    expect(text).toContain('Inside calliper between the backs');
    for (const of of calliperPictures)
      expect(sceneToSvg(calliperPicture(of, of)), of).toMatch(/<svg[\s\S]*<text/);
  });
});
