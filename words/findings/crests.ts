/** Words for couplers over crests and sags. */
import type { FindingOf } from '../../engine/questions/finding.ts';
import { others, type Tellers, type Tools } from './teller.ts';

type Apart = 'couplers-slip-by' | 'coupler-face-unknown';

const between = (t: Tools<Apart | 'coupler-sink-unknown'>): string =>
  `The couplers of ${t.vehicle} and ${t.fact('other')}`;

const place = (f: FindingOf<Apart>, t: Tools<Apart>): string =>
  `${f.facts.lie === 'crest' ? 'over the crest' : 'in the sag'} ${t.where.replace(/^.*, /, '')}`;

/** What it is made of. */
const parts = (f: FindingOf<Apart>, t: Tools<Apart>, more: readonly string[] = []): string =>
  [
    `the line bends them ${t.fact('line', 'up')} out of line there`,
    ...(f.facts.springs.si > 0 ? [`springs under people ${t.fact('springs', 'up')}`] : []),
    ...(f.facts.tilt.si > 0 ? [`cant and twist tilt them ${t.fact('tilt', 'up')} at the edge`] : []),
    ...(f.facts.stated.si > 0 ? [`they stand ${t.fact('stated', 'up')} apart on the level`] : []),
    ...more,
  ].join(', ');

/** A bend that may be no more than the distance between two points of the survey. */
const isSpaced = ({ measure }: FindingOf<'coupler-face-unknown'>): boolean => measure === 'line.profile';

const higher = (f: FindingOf<Apart>, t: Tools<Apart>): string =>
  f.facts.higher === 'ahead' ? t.vehicle : t.fact('other');

export const crestWords = {
  'couplers-slip-by': (f, t) => ({
    what:
      f.facts.people === 'any'
        ? `${between(t)} would slip by each other ${place(f, t)} with a full car beside an empty one.${others(f, 'the same')}`
        : f.severity === 'limits'
          ? `${between(t)} hold by ${t.found('down')} only ${place(f, t)}, of faces ${t.fact('face')} high.${others(f, 'the same')}`
          : `${between(t)} slip by each other ${place(f, t)}: that of ${higher(f, t)} rides over.${others(f, 'the same')}`,
    why: `Of it: ${parts(f, t)}. ${
      f.severity === 'unknown'
        ? 'That is if the track turns as sharply as the survey’s few points have it: level points a car’s length apart there.'
        : 'The train parts, or a car is lifted off its truck. Shim one of them, or put a car between that suits both. Slower does not help.'
    }`,
  }),
  'coupler-sink-unknown': (f, t) => ({
    what: `${between(t)} hold by ${t.found('down')} ${f.facts.lie === 'crest' ? 'over the crest' : 'in the sag'}; springs that nobody measured may sink ${t.fact('sink', 'up')} under people.${others(f, 'the same')}`,
    why: 'Heights are stated empty. Measure the coupler empty and with every seat taken: what it sinks is what the faces lose where the other car does not sink with it.',
  }),
  'coupler-face-unknown': (f, t) => ({
    what: `${between(t)} stand ${t.found('up')} out of line ${place(f, t)}${
      isSpaced(f)
        ? `, if the track bends at one point as surveyed; bent evenly between the points, ${t.fact('even', 'up')}`
        : ''
    }; ${
      f.facts.face
        ? `beyond ${t.required('down')} less than half of their faces, ${t.fact('face')} high, holds`
        : `half of a usual knuckle is ${t.required('down')}`
    }.${others(f, 'the same')}`,
    why: `Of it: ${parts(f, t, f.facts.doubt ? [`heights that nobody stated may differ by ${t.fact('doubt', 'up')}`] : [])}. ${
      isSpaced(f)
        ? 'Level points a car’s length apart there, or measure how high the faces are.'
        : f.measure === 'coupling.height'
          ? 'Measure both heights, empty.'
          : 'How high their faces are is not stated.'
    }${
      isSpaced(f) && f.severity === 'notes'
        ? ''
        : ' Before anybody gets on, push the two slowly over it and look how much of them holds.'
    }`,
  }),
} satisfies Partial<Tellers>;
