/** Single failures as a table, the same on the screen and in the terminal. */

import type { FailureCase, FailureLook } from '../../desk/failures.ts';
import { failureName } from '../../words/findings/failures.ts';
import { outcomeWords } from '../../words/parting.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, distance, say, type Voice, vehicleAt } from '../../words/voice.ts';

const speed = (voice: Voice, si: number): string => say(voice, { si, kind: 'speed' }, 'up');

export function failureTable({ cases }: FailureLook, voice: Voice): WordTable {
  return {
    title: 'If one thing fails at its worst place, and the crew do all they can with the rest',
    head: ['fails', 'where', 'at', 'the train', 'goes on', 'in order', 'fastest', 'head ends at'],
    rows: cases.map((c) => [
      failureName(c.failure),
      c.vehicle === undefined ? '' : `${c.failure === 'cock' ? '' : 'behind '}${vehicleAt(voice, c.vehicle)}`,
      `${speed(voice, c.speed)}, ${chainage(voice, c.at)}`,
      endWords(c, voice),
      distance(voice, Math.abs(c.way), 'up'),
      distance(voice, Math.abs(c.usual), 'up'),
      speed(voice, c.topSpeed),
      chainage(voice, c.end),
    ]),
    note: "At running speed, as unlucky as a cautious stop. Riders' own brakes are not counted. A cock left shut is found by a running brake test each time the train is made up.",
  };
}

function endWords(c: FailureCase, voice: Voice): string {
  const words = c.place === undefined ? outcomeWords[c.outcome] : `rolls back through ${c.place}`;
  return c.stops ? words : `${words} (${speed(voice, c.outcome === 'rolls' ? c.rollsOff : c.metAt)})`;
}
