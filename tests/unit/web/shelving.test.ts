/** Papers side by side: whatever they are called, none is put over another. */
import { describe, expect, it } from 'vitest';
import { beside, freeAmong, makeRoom, putAway } from '../../../web/state/shelving.ts';

const paper = (name: string, train = 'A') => ({ name, train });
const [gala, other] = [paper('Gala'), paper('Other')];

describe('the shelf', () => {
  it('takes the open paper back to where it lay, under a new name if it has one', () => {
    const papers = [gala, other];
    expect(putAway({ papers, open: 'Gala' }, paper('Gala', 'B'))).toEqual([paper('Gala', 'B'), other]);
    expect(putAway({ papers, open: 'Gala' }, paper('Autumn', 'B'))).toEqual([paper('Autumn', 'B'), other]);
  });

  it('never puts it over another of the same name', () => {
    const renamed = paper('Other', 'B');
    expect(putAway({ papers: [gala, other], open: 'Gala' }, renamed)).toEqual([paper('Other 2', 'B'), other]);
    // From elsewhere.
    expect(putAway({ papers: [gala] }, paper('Gala', 'B'))).toEqual([gala, paper('Gala 2', 'B')]);
    // Which was open lies here no more.
    expect(putAway({ papers: [gala], open: 'Gone' }, other)).toEqual([gala, other]);
  });

  it('has the same paper once', () => {
    expect(putAway({ papers: [gala] }, { ...gala })).toEqual([gala]);
    expect(beside([gala], { ...gala })).toEqual([gala]);
  });

  it('makes room for the name of what is opened from elsewhere', () => {
    expect(makeRoom([gala, other], paper('Gala', 'B'))).toEqual([paper('Gala 2'), other]);
    expect(makeRoom([gala, paper('Gala 2')], paper('Gala', 'B'))).toEqual([paper('Gala 3'), paper('Gala 2')]);
    expect(makeRoom([gala], { ...gala })).toEqual([gala]);
  });

  it('numbers names', () => {
    expect(freeAmong('Gala', [])).toBe('Gala');
    expect(freeAmong('Gala', [gala, paper('Gala 2')])).toBe('Gala 3');
  });
});
