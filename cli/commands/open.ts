/** heedway open: what a file is, whatever it is, and which command goes on with it. */
import { extname } from 'node:path';
import { tellInvented } from '../../desk/invented.ts';
import { readHost, readLine, readTrain, readVehicle } from '../../papers/index.ts';
import { type Command, common } from '../command.ts';
import { fromDisk, isCode, jsonIn, openFile, refusal, THE_CODE } from '../open.ts';
import { openAsked } from '../open-asked.ts';
import { surveyedLine } from './survey.ts';

export const openCommand: Command = {
  name: 'open',
  declare: (program, run) => {
    const command = common(program.command('open <file>'));
    command
      .description('Say what a file is: outing, part of one, survey, card (PDF), code or link.')
      .action((path: string, options) => run(() => open(path), options));
  },
};

async function open(path: string) {
  const found = await foundIn(path);
  return {
    text: `${isCode(path) ? THE_CODE : path}: ${found.what}\n${found.next}`,
    json: { file: path, ...found },
    exit: 0,
  };
}

interface Found {
  readonly kind: string;
  readonly what: string;
  /** What to do with it. */
  readonly next: string;
}

const parts = {
  line: { word: 'a line', read: readLine },
  train: { word: 'a train', read: readTrain },
  host: { word: "a host's rules", read: readHost },
  vehicle: { word: 'a vehicle', read: readVehicle },
} as const;
const NEXT = 'Name it in an outing as {"file": "…"}, or open it in the workbench.';

async function foundIn(path: string): Promise<Found> {
  if (['.csv', '.gpx'].includes(extname(path).toLowerCase())) {
    const { notes } = await surveyedLine(path, { name: 'Surveyed line', gauge: '7-1/4 in' });
    return {
      kind: 'survey',
      what: `a survey of a line. ${notes.join(' ')}`,
      next: `heedway survey ${path} makes a line file of it.`,
    };
  }
  const json = (await jsonIn(path)) as { readonly heedway?: unknown; readonly name?: unknown } | undefined;
  const kind = String(json?.heedway);
  if (kind in parts) {
    const { word, read } = parts[kind as keyof typeof parts];
    const { entry, load } = fromDisk(await openFile(path));
    const got = await (read as typeof readTrain)(entry, load);
    if (!got.ok) throw refusal(got.problems);
    return { kind, what: `${word}, ${String(json?.name)}.`, next: NEXT };
  }
  const { outing, paper, trials } = await openAsked(path);
  const invented = tellInvented(paper);
  const tried = trials.length > 0 ? ', with what is tried on it' : '';
  return {
    kind: 'outing',
    what: `the outing ${outing.name}${tried}: ${outing.train.name} on ${outing.line.name}${invented === '' ? '' : ` (${invented})`}.`,
    next: `heedway check ${isCode(path) ? 'with it' : path} tells whether it may leave.`,
  };
}
