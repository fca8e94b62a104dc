/** What happened in the invented year, by the number of the run day: facts alone, what was done about them, where the line was slow. */
import type { Json } from '../../records/record.ts';

export interface Happened {
  readonly incident: Json;
  /** What is to be done, and by how many days; done on the next run day, if it says what was done. */
  readonly measure?: { readonly what: string; readonly days: number; readonly done?: string };
  /** Slow until the next run day. */
  readonly slow?: {
    readonly from: string;
    readonly to: string;
    readonly speed: string;
    readonly why: string;
  };
}

const atFrog = (at: string, facts: string): Json => ({
  what: 'derailment',
  facts,
  at,
  direction: 'forward',
  vehicle: 'Light car 1',
  axle: 1,
  side: 'left',
  speed: '4 mph',
  rail: 'dry',
  hurt: 'nobody',
});

export const happened: ReadonlyMap<number, Happened> = new Map([
  [
    2,
    {
      incident: atFrog('1640 ft', 'Leading wheel off to the left at the frog; the train stood within a car.'),
      measure: {
        what: 'Guard gap and back to back at the frog to be measured',
        days: 14,
        done: 'Guard gap 1/16 in wide, shimmed; wheelset as on its sheet',
      },
    },
  ],
  [
    5,
    {
      incident: atFrog('1652 ft', 'Same wheel off again a yard behind the frog, at a walk.'),
      slow: { from: '1600 ft', to: '1700 ft', speed: '3 mph', why: 'wheel off at the frog twice' },
      measure: { what: 'Wheelset to be changed', days: 7, done: 'Wheelset changed, ran six laps empty' },
    },
  ],
  [
    8,
    {
      incident: {
        what: 'burn',
        facts: 'Hand on the blower pipe while raking; cooled with water for 20 minutes.',
        vehicle: 'Fenwick',
        hurt: 'first aid',
      },
      measure: { what: 'Blower pipe to be lagged', days: 21, done: 'Lagged from valve to smokebox' },
    },
  ],
  [
    11,
    {
      incident: {
        what: 'near-miss',
        facts:
          'A family stepped onto the crossing with the train two lengths off; it stood a car short of them.',
        place: 'Larkfield',
        direction: 'forward',
        speed: '4 mph',
        rail: 'damp',
        hurt: 'nobody',
      },
      measure: { what: 'Somebody with a flag at the crossing on run days', days: 14 },
    },
  ],
  [
    13,
    {
      incident: {
        what: 'complaint',
        facts: 'A rider says that a seat of the second car pinches.',
        hurt: 'nobody',
      },
    },
  ],
]);
