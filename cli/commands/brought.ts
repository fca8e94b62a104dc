/** Papers that a person brings to `heedway new`: a line, an outing of the host's, a survey; the host's rules. */
import { basename, extname } from 'node:path';
import type { Brought } from '../../desk/new/make.ts';
import { outingIn } from '../../desk/outing-code.ts';
import { surveyFound } from '../../desk/survey-found.ts';
import { readHost, readLine, readOuting } from '../../papers/index.ts';
import type { System } from '../../units/index.ts';
import { UsageFault } from '../command.ts';
import { bundleFile, isCode, jsonIn, refusal } from '../open.ts';
import { choicesOf, surveyedLine, tellAdvice } from './survey.ts';

type Json = Record<string, unknown>;

async function jsonOf(path: string): Promise<Json> {
  const json = await jsonIn(path);
  if (typeof json === 'object' && json !== null && !Array.isArray(json)) return json as Json;
  throw new UsageFault(`${path}: found no paper; expected a line, an outing, or a survey (CSV, GPX)`);
}

/** The outing of a running card's code, or of a link that somebody shared. */
async function inCode(code: string): Promise<Brought> {
  const found = await outingIn(code);
  if ('fault' in found) throw new UsageFault(`--line: ${found.fault}`);
  const json = JSON.parse(new TextDecoder().decode(found)) as Json;
  const outing = json['heedway'] === 'tried' ? (json['outing'] as Json) : json;
  const content = JSON.stringify(outing);
  const read = await readOuting({ path: 'the code', content }, async () => undefined);
  if (!read.ok) throw refusal(read.problems);
  return { line: outing['line'] as Json, host: outing['host'] as Json };
}

/** What a survey does not hold, and in what is told what it does. */
interface OfSurvey {
  readonly gauge: string | undefined;
  readonly lengths?: string;
  readonly shape?: string;
  readonly bends?: string;
  readonly units: System;
}

/** The line of a line file, an outing, a code or a survey; an outing brings its host's rules too. */
export async function broughtLine(path: string, { gauge, units, ...flags }: OfSurvey): Promise<Brought> {
  if (isCode(path)) return inCode(path);
  if (['.csv', '.gpx'].includes(extname(path).toLowerCase())) {
    if (gauge === undefined)
      throw new UsageFault('--gauge: found none; expected the gauge, which a survey does not hold');
    const name = basename(path, extname(path));
    const { line, read, notes, advice } = await surveyedLine(path, { name, gauge, ...choicesOf(flags) });
    const found = surveyFound(read, { system: units });
    return { line: line as unknown as Json, notes: [found, ...notes, ...tellAdvice(advice)] };
  }
  const json = await jsonOf(path);
  if (json['heedway'] === 'outing') {
    const bundle = await bundleFile(path);
    if (!bundle.ok) throw refusal(bundle.problems);
    return { line: bundle.value['line'] as Json, host: bundle.value['host'] as Json };
  }
  const read = await readLine({ path, content: JSON.stringify(json) });
  if (!read.ok) throw refusal(read.problems);
  return { line: json };
}

export async function broughtHost(path: string): Promise<Json> {
  const json = await jsonOf(path);
  const read = await readHost({ path, content: JSON.stringify(json) });
  if (!read.ok) throw refusal(read.problems);
  return json;
}
