/**
 * The one way in for whatever a person has: an outing, everything, a line, a train, rules, a vehicle, a survey, the PDF
 * or a photograph of a card, a code, a link. It says what it found. An outing is opened beside what was open, which goes
 * on the shelf; what would take the place of a part of the open outing asks first.
 */
import { signal } from '@preact/signals';
import { carried } from '../../desk/carried.ts';
import { looksLikeCode, outingIn, partOf } from '../../desk/outing-code.ts';
import { type FileProblem, readHost, readLine, readTrain, readVehicle } from '../../papers/index.ts';
import { readJson } from '../../papers/json.ts';
import { decodeText } from '../../papers/text.ts';
import { several } from '../../words/several.ts';
import { change, edit, elsewhere, type Json, openTried, paper } from '../state/session.ts';
import { takeDrafts } from './drafts.ts';
import { readEverything } from './everything.ts';
import { takeIn } from './shed.ts';
import { aboutPaper, openBeside } from './shelf.ts';

/** What was found and would take the place of something. */
export interface Offer {
  readonly found: string;
  readonly would: string;
  readonly take: () => void | Promise<void>;
}

export const said = signal('');
export const troubles = signal<readonly FileProblem[]>([]);
export const offers = signal<readonly Offer[]>([]);
/** A survey that is to be looked at. */
export const survey = signal<File | null>(null);

/** Counts what was asked to be opened: a slow one that was overtaken opens no more. */
let asked = 0;
export const begin = (): number => {
  tell('');
  return ++asked;
};
export const overtaken = (mine: number): boolean => mine !== asked;

export function tell(text: string, problems: readonly FileProblem[] = []): void {
  said.value = text;
  troubles.value = problems;
  offers.value = [];
}

const none = async (): Promise<undefined> => undefined;

/** One after another; of several outings the first stays open, the others lie on the shelf. */
export async function openFiles(files: readonly File[]): Promise<void> {
  for (const file of [...files].reverse()) await openFile(file);
}

async function openFile(file: File): Promise<void> {
  const mine = begin();
  if (/\.(csv|gpx|txt)$/i.test(file.name) && !looksLikeCode(await file.slice(0, 9000).text())) {
    survey.value = file;
    return tell(`${file.name}: a survey of a line. Look at it below; nothing changes until you take it.`);
  }
  if (file.type.startsWith('image/') || /\.(jpe?g|png|webp|gif|heic|avif)$/i.test(file.name))
    return openPhoto(file);
  if (file.size > MOST)
    return tell(`${file.name}: found ${Math.round(file.size / 1e6)} MB; expected at most 30 MB.`);
  const content = new Uint8Array(await file.arrayBuffer());
  if (overtaken(mine)) return;
  const inside = await carried(content);
  if (overtaken(mine)) return;
  if (!inside) return openContent(content, file.name, mine);
  if ('fault' in inside) return tell(`${file.name}: ${inside.fault}`);
  for (const one of [...inside].reverse()) await openContent(one, file.name, mine);
}

const MOST = 30 * 1024 * 1024;

/** Codes of one outing that were read so far. */
let parts: readonly string[] = [];

/** A code or a link; of an outing in several codes one after another, in any order. */
export async function openText(text: string, from = 'code'): Promise<boolean> {
  const mine = begin();
  const of = partOf(text)?.of;
  if (of === undefined) parts = [];
  else {
    const others = parts.filter(
      (part) => partOf(part)?.of === of && partOf(part)?.part !== partOf(text)?.part,
    );
    parts = [...others, text.trimEnd()];
  }
  const found = await outingIn(of === undefined ? text : parts.join('\n'));
  if (overtaken(mine)) return false;
  if ('fault' in found) {
    // Those of another outing are let go: the last one that was read begins anew.
    if (of !== undefined && parts.length >= of) parts = [text.trimEnd()];
    tell(found.fault);
    return false;
  }
  parts = [];
  await openContent(found, from, mine);
  return troubles.value.length === 0;
}

/** A link that the page was opened with. */
export async function openLink(link: string): Promise<void> {
  if (await openText(link, 'the outing of the link')) {
    elsewhere.value = `Opened from a link: ${aboutPaper(paper.value)}. What was open lies in Papers.`;
    return;
  }
  elsewhere.value = `The link could not be opened: ${said.value || troubles.value[0]?.message || 'it is broken'}`;
}

async function openPhoto(photo: File): Promise<void> {
  tell('Looking for the code …');
  const mine = asked;
  try {
    const { codeIn } = await import('./code-photo.ts');
    const read = await codeIn(photo);
    if (overtaken(mine)) return;
    if (read === undefined)
      return tell(
        'No code was found in the picture: take it straight on, sharp, the code filling most of it.',
      );
    await openText(read);
  } catch {
    tell(`${photo.name} cannot be read as a picture.`);
  }
}

async function openContent(content: Uint8Array, name: string, mine: number): Promise<void> {
  const json = jsonOf(content);
  const kind = json?.['heedway'];
  if (json && typeof kind === 'string' && kind in partsOf) return offerPart(json, kind as PartKind, name);
  const read = await readEverything(content, name);
  if (overtaken(mine)) return;
  if (!read.ok) return tell('', read.problems);
  const { outing, vehicles, drafts, tried } = read.value;
  await takeIn(vehicles);
  if (drafts) takeDrafts(drafts);
  if (tried)
    await openBeside(tried.paper as Json, () => openTried(tried.paper as Json, tried.outing, tried.trials));
  else await openBeside(outing, () => change(outing));
  const what = `${aboutPaper(paper.value)}. What was open before lies on the shelf.`;
  tell(
    vehicles.length > 0
      ? `Opened ${name}, with ${several(vehicles.length, 'vehicle')} for the shed. ${what}`
      : `Opened ${name}${tried ? ', with what is tried on it' : ''}. ${what}`,
  );
}

function jsonOf(content: Uint8Array): Json | undefined {
  const decoded = decodeText(content);
  const value = decoded.ok ? readJson(decoded.text).value : undefined;
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Json) : undefined;
}

type PartKind = 'line' | 'train' | 'host' | 'vehicle';

const partsOf: Readonly<
  Record<
    PartKind,
    {
      readonly word: string;
      readonly read: typeof readLine | typeof readTrain | typeof readHost | typeof readVehicle;
    }
  >
> = {
  line: { word: 'a line', read: readLine },
  train: { word: 'a train', read: readTrain },
  host: { word: "a host's rules", read: readHost },
  vehicle: { word: 'a vehicle', read: readVehicle },
};

/** Part of an outing: asks before it takes the place of the one that is open. */
async function offerPart(json: Json, kind: PartKind, name: string): Promise<void> {
  const mine = asked;
  const { word, read } = partsOf[kind];
  const got = await (read as typeof readTrain)({ path: name, content: JSON.stringify(json) }, none);
  if (overtaken(mine)) return;
  if (!got.ok) return tell('', got.problems);
  const title = String(json['name']);
  tell('');
  const open = String(paper.value['name']);
  const done = (text: string) => (): void => tell(text);
  offers.value = [
    kind === 'vehicle'
      ? {
          found: `${name} is ${word}: ${title}.`,
          would: 'Put it into the shed',
          take: async () => {
            await takeIn([json]);
            done(`${title} stands in the shed, to be put into a train.`)();
          },
        }
      : {
          found: `${name} is ${word}: ${title}. Taking it puts away the ${kind === 'host' ? 'rules' : kind} of ${open}; Undo brings them back.`,
          would: `Take ${title} into ${open}`,
          take: () => {
            edit([kind], json);
            done(`${open} now has ${title}. Undo brings back what was there before.`)();
          },
        },
  ];
}
