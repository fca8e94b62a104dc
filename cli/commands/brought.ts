/** Papers that a person brings to `heedway new`: a line, an outing of the host's, a survey; the host's rules. */
import { extname } from 'node:path';
import type { Brought } from '../../desk/new/make.ts';
import { readHost, readLine } from '../../papers/index.ts';
import { UsageFault } from '../command.ts';
import { bundleFile, jsonIn, refusal } from '../open.ts';
import { surveyedLine } from './survey.ts';

type Json = Record<string, unknown>;

async function jsonOf(path: string): Promise<Json> {
  const json = await jsonIn(path);
  if (typeof json === 'object' && json !== null && !Array.isArray(json)) return json as Json;
  throw new UsageFault(`${path}: found no paper; expected a line, an outing, or a survey (CSV, GPX)`);
}

/** The line of a line file, an outing or a survey; an outing brings its host's rules too. */
export async function broughtLine(path: string, gauge = '7-1/4 in'): Promise<Brought> {
  if (['.csv', '.gpx'].includes(extname(path).toLowerCase())) {
    const { line } = await surveyedLine(path, { name: 'Surveyed line', gauge });
    return { line: line as unknown as Json };
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
