/** Does the outing keep the host's rules? */

import type { Question } from '../question.ts';
import { askHost } from './ask.ts';

export const host: Question<null> = {
  id: 'host',
  reads: ['line', 'train', 'chains', 'riders', 'host', 'conditions'],
  codes: [
    'gauge-differs',
    'too-many-cars',
    'too-many-riders',
    'too-many-riders-on-car',
    'too-many-riders-per-axle',
    'chains-missing',
    'too-few-cars-braked',
    'guard-missing',
    'lights-missing',
    'seat-too-high',
    'rider-too-young',
  ],
  ask: ({ context }) => ({ findings: askHost(context), data: null }),
};
