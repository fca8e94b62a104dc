/** Which outings belong to one day on one line. */
import { describe, expect, it } from 'vitest';
import { sameDay, tellTrainOfDay } from '../../../desk/same-day.ts';

const paper = (name: string, date: string | undefined, line: string) => ({
  name,
  ...(date === undefined ? {} : { date }),
  line: { name: line },
  train: { name: 'Fenwick' },
});

describe('trains of one day', () => {
  const open = paper('One', '2026-05-31', 'Larkfield');
  const two = paper('Two', '2026-05-31', 'Larkfield');
  it('are those of the same day and line, and not the open one itself', () => {
    const papers = [open, two, paper('Late', '2026-06-01', 'Larkfield'), paper('Far', '2026-05-31', 'Elm')];
    expect(sameDay(open, papers)).toEqual([two]);
  });
  it('are none where no day is written: silence is no day', () => {
    const undated = paper('One', undefined, 'Larkfield');
    expect(sameDay(undated, [paper('Two', undefined, 'Larkfield')])).toEqual([]);
  });
  it('are told by name and train, the invented as such', () => {
    expect(tellTrainOfDay(two)).toBe('Two: Fenwick');
    expect(tellTrainOfDay({ ...two, invented: true })).toMatch(/\(.*invented.*\)/);
  });
});
