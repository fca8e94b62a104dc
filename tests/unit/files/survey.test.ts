/** A surveyed table: each fault with its row in the file, nothing passed over that means nothing or contradicts. */
import { describe, expect, it } from 'vitest';
import { readSurvey } from '../../../desk/survey.ts';
import { choices } from '../../../papers/import/types.ts';
import { adviceWords } from '../../../words/survey.ts';

const about = { name: 'x', gauge: '7.25 in' };
const read = (text: string, name = 'a.csv') => readSurvey(text, name, about);
/** `row:column field` of each problem, and its words. */
const faults = async (text: string, name?: string): Promise<string[]> =>
  (await read(text, name)).problems.map((p) => `${p.row}:${p.column} ${p.message}`);

describe('a row is told as the file has it', () => {
  it('behind remarks, empty lines and a cell of two lines', async () => {
    const table =
      '# levelled in May\n\nChainage (ft),Height (ft),Place\n0,0,\n\n# the mill\n100,1,"Mill\nhalt"\n200,low,\n';
    expect(await faults(table)).toEqual([
      expect.stringMatching(/^9:2 height: found "low"; expected a length/),
    ]);
    const good = await read(table.replace('low', '1.5'));
    expect(good.made?.line.places.map((p) => p.name)).toEqual(['Mill halt']);
  });

  it('of a satellite track too', async () => {
    const track =
      '<gpx><trk><trkseg>\n<trkpt lat="51" lon="0"><ele>1</ele></trkpt>\n<trkpt lat="north" lon="0">\n<ele>high</ele></trkpt>\n</trkseg></trk></gpx>';
    expect(await faults(track, 'a.gpx')).toEqual([
      expect.stringMatching(/^3:\d+ lat: found "north"; expected degrees/),
      expect.stringMatching(/^4:\d+ ele: found "high"; expected metres/),
    ]);
  });

  it('and a line that cannot be is told under the name of the survey', async () => {
    const { problems } = await readSurvey('Chainage (ft),Height (ft)\n0,0\n100,1\n', 'a.csv', {
      ...about,
      gauge: '9 ft',
    });
    expect(problems).toEqual([expect.objectContaining({ file: 'a.csv', path: 'gauge' })]);
    expect(problems[0].message).toContain('in the line that was made of it, gauge: found');
  });
});

const curves = (rows: string, head = 'Chainage (ft),Height (ft),Radius (ft),Hand'): string =>
  `${head}\n${rows}`;

describe('a word that means nothing is refused', () => {
  it.each([
    ['0,0,90,starboard\n100,1,,\n', /^2:4 hand: found "starboard"; expected left or right/],
    ['0,0,90,clockwise\n100,1,,\n', /^2:4 hand: found "clockwise"/],
    ['0,0,90,\n100,1,,\n', /^2:4 hand: found an empty cell/],
    ['0,0,,left\n100,1,,\n', /^2:4 hand: found left on a row without a radius/],
    ['0,0,-90,left\n100,1,,\n', /^2:4 hand: found left beside a negative radius/],
  ])('%j', async (rows, words) => {
    expect(await faults(curves(rows))).toEqual([expect.stringMatching(words)]);
  });

  it('as a kind of place', async () => {
    const table = 'Chainage (ft),Height (ft),Kind,Place\n0,0,pagoda,Lake\n100,1,station,Yard\n';
    expect(await faults(table)).toEqual([
      expect.stringMatching(/^2:3 kind: found "pagoda"; expected one of station/),
    ]);
  });

  it('and what means something is taken', async () => {
    const { made, notes } = await read(
      curves('0,0,90,L\n100,1,90,right\n200,2,straight,-\n300,2,-80,R\n400,2,,\n'),
    );
    expect(made?.json['curves']).toMatchObject([{ hand: 'left' }, { hand: 'right' }, { hand: 'right' }]);
    expect(notes.join()).not.toContain('No column tells the hand');
    const bare = await read(curves('0,0,90\n100,1,-90\n200,1,\n', 'Chainage (ft),Height (ft),Radius (ft)'));
    expect(bare.made?.json['curves']).toMatchObject([{ hand: 'left' }, { hand: 'right' }]);
    expect(bare.notes.join()).toContain('No column tells the hand');
  });
});

describe('columns that contradict each other', () => {
  const head = 'Chainage (ft),Length (ft),Height (ft),Rise (ft),Grade (%)\n0,,0,,\n';
  it.each([
    ['100,90,1,1,1', /^3:2 length: found a length of 27\.432 m where the chainage grows by 30\.48 m/],
    ['100,100,1,2,1', /^3:4 rise: found a rise of 0\.6096 m where the height grows by 0\.3048 m/],
    [
      '100,100,1,1,2',
      /^3:5 grade: found a grade of 2\.00 % from the row before, where the heights give 1\.00 %/,
    ],
    ['100,100,,1,2', /^3:5 grade/],
  ])('%s', async (row, words) => {
    expect(await faults(`${head}${row}\n`)).toEqual([expect.stringMatching(words)]);
  });

  it('but for what rounding takes', async () => {
    expect(await faults(`${head}100,100.05,1.04,1,1.1\n`)).toEqual([]);
  });
});

describe('what whoever surveyed it knows and the file does not say', () => {
  const table = 'Chainage (m),Height (m),Radius (m),Place\n0,0,,Yard\n100,1,30,\n200,0.4,,\n300,0.3,,Yard\n';

  it('is asked, and each answer has one that takes it back', async () => {
    const asked = await read(table);
    expect(asked.advice).toEqual(['loop', 'to the right', 'transitions']);
    expect(asked.made?.line.loop).toBe(false);
    const round = await readSurvey(table, 'a.csv', { ...about, ...choices.loop });
    expect(round.advice[0]).toBe('end to end');
    const back = await readSurvey(table, 'a.csv', { ...about, ...choices.loop, ...choices['end to end'] });
    expect(back.made?.json).toEqual(asked.made?.json);
    const right = await readSurvey(table, 'a.csv', { ...about, ...choices['to the right'] });
    expect(right.made?.json['curves']).toMatchObject([{ hand: 'right' }]);
    expect(right.advice).toContain('to the left');
    const left = { ...about, ...choices['to the right'], ...choices['to the left'] };
    expect((await readSurvey(table, 'a.csv', left)).made?.json).toEqual(asked.made?.json);
  });

  it('a loop comes back to the height and the place where it began, and says what was spread', async () => {
    const { made, notes } = await readSurvey(table, 'a.csv', { ...about, ...choices.loop });
    expect(made?.line.loop).toBe(true);
    expect(made?.line.heights.map(({ height }) => height)).toEqual([
      0,
      expect.closeTo(0.9, 6),
      expect.closeTo(0.2, 6),
      expect.closeTo(0, 9),
    ]);
    expect(made?.line.places.map(({ name, at }) => [name, at])).toEqual([['Yard', 0]]);
    expect(notes.join()).toContain('0.30 m of height misclosure');
  });

  it('what fails to close by more than a level can be out is no loop, and is refused as any line is', async () => {
    // 0.02 m for each root of a metre: of 300 m 0.35 m.
    for (const [end, closes] of [
      [0.34, true],
      [0.35, false],
      [5, false],
    ] as const) {
      const csv = `Chainage (m),Height (m)\n0,0\n150,1\n300,${end}\n`;
      const found = await readSurvey(csv, 'a.csv', { ...about, ...choices.loop });
      expect(found.made !== undefined, `${end}`).toBe(closes);
      if (!closes) expect(JSON.stringify(found)).toContain('above its start');
    }
  });

  it('where the hand stands in a column nothing is asked of it', async () => {
    const { advice } = await read(curves('0,0,90,L\n100,1,,\n'));
    expect(advice).toEqual(['loop', 'transitions']);
  });

  it('of a satellite track too: one that comes back to where it began is asked, another is no loop', async () => {
    const track = (...points: readonly (readonly [number, number])[]): string =>
      `<gpx><trk><trkseg>${points.map(([lat, ele]) => `<trkpt lat="${lat}" lon="0"><ele>${ele}</ele></trkpt>`).join('')}</trkseg></trk></gpx>`;
    const there = [
      [51, 10],
      [51.001, 11],
      [51.002, 12],
    ] as const;
    const round = track(...there, [51.001, 11], [51.00001, 10]);
    const loop = await read(round, 'a.gpx');
    expect([loop.made?.line.loop, loop.advice]).toEqual([true, ['end to end', 'level', 'curves']]);
    const ends = await readSurvey(round, 'a.gpx', { ...about, ...choices['end to end'] });
    expect([ends.made?.line.loop, ends.advice]).toEqual([false, ['loop', 'level', 'curves']]);
    const away = await read(track(...there), 'a.gpx');
    expect([away.made?.line.loop, away.advice]).toEqual([false, ['level', 'curves']]);
    const forced = await readSurvey(track(...there), 'a.gpx', { ...about, ...choices.loop });
    expect(forced.made).toBeUndefined();
    expect(forced.problems[0].message).toMatch(/found ends 22\d m apart; expected those of a loop/);
  });

  it('has a button and a flag, or says how it is measured', () => {
    for (const [advice, { say, button, flag }] of Object.entries(adviceWords)) {
      expect(say, advice).toMatch(/[.?]$/);
      expect([button !== undefined, flag !== undefined], advice).toEqual([
        advice in choices,
        advice in choices,
      ]);
    }
  });
});
