/** Words for what grounds or lifts over crests and sags. */
import type { FindingOf } from '../../engine/questions/finding.ts';
import { others, type Tellers, type Tools } from './teller.ts';

type Code = 'part-strikes-track' | 'low-parts-not-measured' | 'wheel-lifts-on-hump';

const place = (f: FindingOf<Code>, t: Tools<Code>): string =>
  `${f.facts.lie === 'crest' ? 'over the crest' : 'in the sag'} ${t.where.replace(/^.*, /, '')}`;

const FEW_POINTS =
  'That is if the track turns as sharply as the survey’s few points have it: level points a car’s length apart there.';

export const humpWords = {
  'part-strikes-track': (f, t) => ({
    what:
      f.severity === 'limits'
        ? `${t.vehicle}, ${t.fact('part')}: ${t.found('down')} left above the rail ${place(f, t)}; ${t.required('up')} is the usual least.${others(f, 'as near')}`
        : `${t.vehicle}, ${t.fact('part')}: strikes the track ${place(f, t)}.${others(f, 'the same')}`,
    why: `It hangs ${t.fact('height', 'down')} above the rail on the level, the rail comes up ${t.fact('rise', 'up')} there${f.facts.sink.si > 0 ? `, and springs give ${t.fact('sink', 'up')} under people` : ''}. ${
      f.severity === 'unknown'
        ? FEW_POINTS
        : 'A crossing’s boards, a guard rail, a stone beside the rail meet it first. Slower does not help.'
    }`,
  }),
  'low-parts-not-measured': (f, t) => ({
    what: `${t.vehicle}: the rail comes up ${t.found('up')} under it ${place(f, t)}, and nobody measured how low its parts hang.${others(f, 'the same')}`,
    why: `${t.required('down')} is what published practice leaves under a vehicle in all. Measure its lowest parts in the middle between the wheels and under both ends, or push it over by hand and look.${f.severity === 'notes' ? ' The survey has few points there: level more, the track may turn more gently.' : ''}`,
  }),
  'wheel-lifts-on-hump': (f, t) => ({
    what:
      f.measure === 'vehicle.axleGroups.travel'
        ? `${t.vehicle}, ${t.fact('group')}: a wheel would hang ${t.found('up')} ${place(f, t)} in a rigid frame; how far its axles move up and down is not measured.${others(f, 'the same')}`
        : `${t.vehicle}, ${t.fact('group')}: a wheel hangs ${t.found('up')} off the rail ${place(f, t)}, of a flange of ${t.required('down')}.${others(f, 'the same')}`,
    why: `Its middle axle stands ${t.fact('versine', 'up')} off the line of the outer ones there: a wheel that hangs bears nothing and brakes nothing, and its flange holds it no longer. ${f.measure === 'line.profile' ? FEW_POINTS : 'Slower does not help.'}`,
  }),
} satisfies Partial<Tellers>;
