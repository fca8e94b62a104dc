/** Heights that cannot tell how steep the line is: it asks to be levelled. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { askSurvey } from '../../../engine/questions/survey/ask.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { plain } from '../../support/rules.ts';

const says = (heightQuality: Line['heightQuality']) => {
  const outing = plain(1);
  return askSurvey(openOuting({ ...outing, line: { ...outing.line, heightQuality } }));
};

describe('a line whose heights are', () => {
  it.each(['gps', 'assumed'] as const)('%s cannot be told: measure it', (quality) =>
    expect(says(quality)).toMatchObject([
      {
        code: 'heights-poor',
        severity: 'unknown',
        question: 'line',
        facts: { quality },
        measure: 'line.profile',
        sure: 'assumed',
        source: 'survey',
      },
    ]),
  );
  it.each(['levelled', 'taped', 'stated'] as const)('%s is asked nothing', (quality) =>
    expect(says(quality)).toEqual([]),
  );
});

describe('a track of the route of which something is not told', () => {
  const asks = (...unstated: NonNullable<Line['unstated']>) => {
    const outing = plain(1);
    const whole = { ...outing.line, name: 'Main' };
    const on = { ...outing, line: { ...outing.line, heightQuality: 'levelled' as const, unstated }, whole };
    return askSurvey(openOuting(on)).map(({ code, severity, measure, where, facts }) => ({
      told: `${severity} ${code} ${measure}`,
      where,
      facts,
    }));
  };
  const gap = { from: 10, to: 60, track: 'Loop' } as const;

  it('is asked for, on the track where it lies', () => {
    expect(asks({ ...gap, lacks: 'sights' })).toEqual([
      {
        told: 'unknown track-not-told line.tracks.sights',
        where: { from: 10, to: 60 },
        facts: { track: 'Loop', lacks: 'sights' },
      },
    ]);
    expect(asks({ ...gap, track: 'Main', lacks: 'sights' })[0].told).toBe(
      'unknown track-not-told line.sights',
    );
  });
  it('as a note where only a worse rail could be meant', () =>
    expect(asks({ ...gap, lacks: 'railStretches' })[0].told).toBe(
      'notes track-not-told line.tracks.railStretches',
    ));
  it('as a structure where one stands near that is told of the other track', () =>
    expect(asks({ ...gap, lacks: 'structures', near: 'Bridge' })).toMatchObject([
      {
        told: 'unknown structure-beside-track line.tracks.structures',
        facts: { track: 'Loop', structure: 'Bridge' },
      },
    ]));
  it('once, however often the route comes over it; each thing and structure by itself', () => {
    const lacks = 'structures' as const;
    expect(
      asks(
        { ...gap, lacks, near: 'Bridge' },
        { ...gap, from: 100, to: 150, lacks, near: 'Bridge' },
        { ...gap, lacks, near: 'Shed' },
        { ...gap, lacks: 'sights' },
        { ...gap, track: 'Yard', lacks: 'sights' },
      ),
    ).toHaveLength(4);
  });
});
