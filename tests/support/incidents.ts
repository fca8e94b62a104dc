/** An invented line with its runs and incidents as entries, for tests of patterns: nothing is hashed or signed. */
import type { Kind } from '../../papers/record/fields.ts';
import type { Entry, Json } from '../../records/record.ts';

export const LENGTH = 400;

const hashOf = (n: number): string => n.toString(16).padStart(64, '0');

export function entriesOf(
  all: readonly { readonly kind: Kind; readonly content: Json; readonly day: string }[],
): Entry[] {
  return all.map(({ kind, content, day }, i) => ({
    body: { kind, content, author: 'a', said: `${day}T10:00:00+00:00`, stored: `${day}T10:00:00+00:00` },
    row: { hash: hashOf(i + 1), text: '' },
  })) as unknown as Entry[];
}

const level = [
  { at: '0 m', height: '0 m' },
  { at: `${LENGTH} m`, height: '0 m' },
];

/** 100 m of it turn left, 60 m right. */
export const bentLine = {
  heedway: 'line',
  version: 1,
  name: 'Bent line',
  gauge: '184 mm',
  shape: 'loop',
  profile: level,
  curves: [
    { from: '20 m', to: '120 m', radius: '30 m', hand: 'left' },
    { from: '200 m', to: '260 m', radius: '30 m', hand: 'right' },
  ],
};

export interface Run {
  readonly day: string;
  readonly vehicles?: readonly string[];
  readonly driver?: number;
  readonly direction?: 'forward' | 'reverse';
}

export const departure = ({ day, vehicles = ['Engine', 'Car'], driver = 1, direction }: Run) => ({
  kind: 'departure' as const,
  day,
  content: {
    outing: 'o',
    date: day,
    line: 'Bent line',
    train: 't',
    vehicles,
    rail: 'dry',
    word: 'go',
    told: ['go'],
    units: 'metric',
    wording: 'us',
    answer: hashOf(0),
    inputs: hashOf(0),
    paper: { line: bentLine, ...(direction ? { direction } : {}) },
    crew: [{ duty: 'driver', person: hashOf(1000 + driver) }],
    riders: [],
    done: [],
    notDone: [],
  },
});

/** @param run which of the runs, from 0, it belongs to */
export const derailed = (day: string, more: Json = {}, run?: number) => ({
  kind: 'incident' as const,
  day,
  content: {
    what: 'derailment',
    facts: 'off',
    line: 'Bent line',
    ...more,
    ...(run === undefined ? {} : { departure: hashOf(run + 1) }),
  },
});

export const dayAt = (n: number): string => new Date(Date.UTC(2026, 0, 1 + n)).toISOString().slice(0, 10);
