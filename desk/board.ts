/** The riders' board and what is read aloud before leaving: in the host's words, else in those of the example. */
import { exampleBriefing } from '../data/briefing.ts';
import type { HostRules } from '../engine/outing/types.ts';
import { age } from '../words/findings/teller.ts';
import { say, type Voice } from '../words/voice.ts';

export interface Board {
  readonly title: string;
  /** One to a line, as they hang on the board. */
  readonly lines: readonly string[];
  /** Weather and night, from the host's rules. */
  readonly sky: readonly string[];
  readonly aloud: Aloud;
  readonly source: string;
  /** The host has no words of its own for part of it. */
  readonly example: boolean;
}

export interface Aloud {
  readonly text: string;
  readonly words: number;
  /** At a normal pace, s. */
  readonly seconds: number;
}

/** Read so that all understand: 75 to 80 words take half a minute. */
const WORDS_PER_MINUTE = 155;

export function readAloud(text: string): Aloud {
  const words = text.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
  return { text, words, seconds: Math.ceil((words / WORDS_PER_MINUTE) * 60) };
}

type Json = Readonly<Record<string, unknown>>;
interface Told {
  readonly board?: readonly string[];
  readonly aloud?: string;
  readonly infants?: string;
  readonly dropped?: string;
  readonly source?: string;
}

/** @param paper an outing's with all parts in it @param host its rules as they were read */
export function ridersBoard(paper: Json, host: HostRules, voice: Pick<Voice, 'system'>): Board {
  const own = ((paper['host'] as Json | undefined)?.['briefing'] ?? {}) as Told;
  const { board, dropped, infants, aloud, source } = { ...exampleBriefing, ...own };
  const whole = own.board !== undefined && own.aloud !== undefined;
  return {
    title: host.name,
    lines: [
      ...board,
      // Who wrote the whole board said there what is to be said of these.
      ...(own.board && own.dropped === undefined ? [] : [dropped]),
      ...youngest(own, host, infants),
    ],
    sky: sky(host, voice),
    aloud: readAloud(aloud),
    source: whole ? source : own.source ? `${own.source}; ${exampleBriefing.source}` : source,
    example: !whole,
  };
}

/** The host's words of the very young; else its rule, in words; else that one asks. */
function youngest(own: Told, { youngestRider: rule }: HostRules, infants: string): string[] {
  if (own.infants !== undefined) return [own.infants];
  if (rule && rule.value > 0) return [`Children less than ${age(rule.value)} do not ride.`];
  return own.board ? [] : [infants];
}

function sky(
  { lightningStops, mostWind, mostHeat, runsAtNight }: HostRules,
  voice: Pick<Voice, 'system'>,
): string[] {
  const limit = (kind: 'speed' | 'temperature', si: number): string => say(voice, { kind, si }, 'down');
  return [
    ...(lightningStops?.value ? ['Thunder or lightning: nothing runs. Go where the crew shows you.'] : []),
    ...(mostWind ? [`Gusts of more than ${limit('speed', mostWind.value)}: nothing runs.`] : []),
    ...(mostHeat ? [`More than ${limit('temperature', mostHeat.value)} in the shade: nothing runs.`] : []),
    ...(runsAtNight && !runsAtNight.value ? ['After dark nothing runs.'] : []),
  ];
}

export const tellAloud = ({ words, seconds }: Aloud): string =>
  `${words} words, ${seconds <= 31 ? 'half a minute' : `${seconds} seconds: longer than half a minute`} at a normal pace.`;
