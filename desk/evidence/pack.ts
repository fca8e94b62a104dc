/**
 * An evidence pack: the answer to an outing, the sheets of its vehicles, what was measured, and what was recorded of a span,
 * with the chain of hashes and how anybody checks it. For an insurer, an inspector or a host.
 */
import { nameOfLine } from '../../engine/outing/moves.ts';
import { fileForm } from '../../papers/fields.ts';
import type { Kind } from '../../papers/record/fields.ts';
import { recordForm } from '../../papers/record/forms.ts';
import type { Standing } from '../../records/amended.ts';
import { canonical } from '../../records/canonical.ts';
import { dueOn } from '../../records/due.ts';
import { storeFile } from '../../records/file.ts';
import { derailed } from '../../records/incidents.ts';
import { openDefects } from '../../records/inspections.ts';
import { type Photo, photosNamed } from '../../records/photos.ts';
import { dayOf, type Entry } from '../../records/record.ts';
import { service, trips } from '../../records/service.ts';
import type { Named } from '../../records/store.ts';
import { shownTime } from '../../records/time.ts';
import type { Verified } from '../../records/verify.ts';
import { tellInvented } from '../../words/invented-limit.ts';
import { tellDue } from '../../words/records/due.ts';
import { packWords, verifyLines, verifyWords } from '../../words/records/evidence.ts';
import { offTheRails } from '../../words/records/incident.ts';
import { authorName, kindWords, shortHash } from '../../words/records/record.ts';
import { tellFault, tellFork, tellWhole } from '../../words/records/verified.ts';
import type { Answered, Speech } from '../leave/answered.ts';
import type { Json } from '../leave/nameless.ts';
import { serviceHead, tellService } from '../leave/tell.ts';
import { answerSection } from './answer.ts';
import { type Block, heading, list, type Section, strong, tableOf, text } from './blocks.ts';
import { fieldRows } from './fields.ts';
import { kindPages } from './kinds.ts';
import { type Packed, packed, type Wanted } from './pick.ts';
import { pictures } from './pictures.ts';

/** An outing of which the pack is to tell. */
export interface OutingInPack {
  readonly answered: Answered;
  /** With all papers inside. */
  readonly paper: Json;
  readonly invented: string;
}

export interface Asked {
  readonly looked: Verified;
  /** Those that may be told. */
  readonly names: readonly Named[];
  readonly photos?: readonly Photo[];
  readonly wanted: Wanted;
  readonly speech: Speech;
  readonly outing?: OutingInPack | undefined;
  /** When and by what it is made. */
  readonly made: { readonly at: string; readonly program: string };
}

export interface Pack {
  readonly title: string;
  readonly made: Asked['made'];
  /** Under the title: of what, of when, whether all is as it was written. */
  readonly cover: readonly Block[];
  readonly sections: readonly Section[];
  /** The records of the pack, as a file that can be checked. */
  readonly records: string;
  readonly count: number;
  /** What is amiss in the whole store. */
  readonly faults: number;
}

export async function evidencePack(asked: Asked): Promise<Pack> {
  const { looked, names, speech, outing, made } = asked;
  const wanted = spanned(asked);
  const all = packed(looked.entries, wanted, speech.wording, names);
  const rows = all.picked.flatMap(({ first, amendments }) => [first, ...amendments]);
  return {
    title: packWords.title(wanted.of),
    made,
    cover: cover(asked, wanted, rows),
    sections: [
      ...(outing ? [answerSection(outing.answered, speech, outing.invented)] : []),
      ...sheets(all, outing),
      ...inOrder(all, speech),
      ...recorded(all),
      ...(await pictures(asked.photos ?? [], rows)),
      chain(rows, all),
    ],
    records: await storeFile({ entries: rows }, [], photosOf(asked, rows)),
    count: rows.length,
    faults: looked.faults.length,
  };
}

/** Those that these records name. */
function photosOf({ photos = [] }: Asked, rows: readonly Entry[]): readonly Photo[] {
  const named = photosNamed(rows);
  return photos.filter(({ hash }) => named.has(hash));
}

/** Of what an outing runs with, where nobody says otherwise. */
function spanned({ wanted, outing }: Asked): Wanted {
  if (wanted.of !== undefined || !outing) return wanted;
  const { train } = outing.answered.outing;
  return { ...wanted, of: [...train.vehicles.map(({ name }) => name), nameOfLine(outing.answered.outing)] };
}

function cover({ looked, names, made }: Asked, { from, to, of }: Wanted, rows: readonly Entry[]): Block[] {
  const known = { entries: looked.entries, names };
  const days = rows.map(({ body }) => dayOf(body)).sort();
  return [
    text(packWords.span(from ?? days[0], to ?? days.at(-1))),
    ...(of === undefined ? [] : [text(packWords.of(of))]),
    text(packWords.count(rows.length, looked.entries.length)),
    heading('Whether it is as it was written'),
    ...tellWhole(looked, looked.faults.length).map(looked.faults.length === 0 ? text : strong),
    ...list(looked.faults.map((fault) => tellFault(fault, known))),
    ...list(looked.forks.map((fork) => tellFork(fork, known))),
    text(packWords.made(made)),
  ];
}

// ---- vehicles and measurements

interface Sheet {
  readonly paper: Json;
  readonly since: string;
}

/** Of the outing; else of what left, each as it stood first. */
function sheetsIn({ picked, wanted }: Packed, outing: OutingInPack | undefined): Sheet[] {
  const papers = outing
    ? [{ paper: outing.paper, since: '' }]
    : picked
        .filter(({ first }) => first.body.kind === 'departure')
        .map(({ first, content }) => ({ paper: content['paper'] as Json, since: dayOf(first.body) }));
  const found = new Map<string, Sheet>();
  for (const { paper, since } of papers) {
    const members = (paper['train'] as Json | undefined)?.['vehicles'];
    for (const member of Array.isArray(members) ? (members as readonly (Json | null)[]) : []) {
      const vehicle = member?.['vehicle'];
      if (typeof vehicle !== 'object' || vehicle === null) continue;
      const key = canonical({ ...vehicle, tests: [] });
      if (!found.has(key)) found.set(key, { paper: vehicle as Json, since });
    }
  }
  return [...found.values()].filter(({ paper }) => ofWanted(`${paper['name']}`, wanted));
}

/** "Light car 2" is one of "Light car". */
const ofWanted = (name: string, { of }: Wanted): boolean =>
  of === undefined ||
  of.some((one) => one === name || (one.startsWith(`${name} `) && /^\d+$/.test(one.slice(name.length + 1))));

const nameOf = ({ name }: Json): string => (typeof name === 'string' ? name : packWords.noName);

function sheets(all: Packed, outing: OutingInPack | undefined): Section[] {
  const found = sheetsIn(all, outing);
  const fields = (json: Json, kind: 'vehicle' | 'test', apart: readonly string[] = []): Block => ({
    is: 'fields',
    rows: fieldRows(json, fileForm(kind), all.reading, apart),
  });
  const tests = [...found.map(({ paper }) => paper), ...(outing ? [outing.paper] : [])].flatMap((paper) =>
    ((paper['tests'] ?? []) as readonly Json[]).map((test) => ({ of: nameOf(paper), test })),
  );
  return [
    ...(found.length === 0
      ? []
      : [
          {
            title: packWords.sheets,
            blocks: found.flatMap(({ paper, since }) => [
              heading(`${nameOf(paper)}${since === '' ? '' : `, as it left on ${since}`}`),
              fields(paper, 'vehicle', ['tests', 'name']),
            ]),
          },
        ]),
    {
      title: packWords.measured,
      blocks:
        tests.length === 0
          ? [text(packWords.noTests)]
          : tests.flatMap(({ of, test }) => [
              heading(`${of}: ${nameOf(test)}`),
              fields(test, 'test', ['name']),
            ]),
    },
  ];
}

// ---- what stands

function inOrder(all: Packed, speech: Speech): Section[] {
  const { entries, picked, reading, wanted } = all;
  const day = wanted.to ?? dayOf(picked.at(-1)?.first.body ?? { said: '' });
  const inPack = new Set(picked.map(({ first }) => first.row.hash));
  const due = dueOn(entries, day).filter(({ from }) => inPack.has(from.first.row.hash));
  const upTo = entries.filter(({ body }) => dayOf(body) <= day);
  const open = openDefects(upTo).filter(({ inspection }) => inPack.has(inspection.first.row.hash));
  const off = derailed(upTo)
    .filter(({ incident }) => inPack.has(incident.from.first.row.hash))
    .map((one) => ({ of: one.of, since: one.since, what: offTheRails(one), rejects: true }));
  const ran = trips(picked.flatMap(({ first, amendments }) => [first, ...amendments]));
  return [
    {
      title: packWords.stands(day),
      blocks: [
        tableOf(
          ['of', 'what', 'state', 'until', 'by'],
          due.map((item) => tellDue(item, reading.names)).map((d) => [d.of, d.what, d.state, d.until, d.by]),
          'No certificate is recorded.',
        ),
        heading('Amiss and not mended'),
        tableOf(
          ['of', 'what', 'since', ''],
          [...off, ...open.map((one) => ({ ...one, what: `${one.what}${tellInvented(one.invented)}` }))].map(
            ({ of, what, since, rejects }) => [of, what, since, rejects ? 'REJECTED' : 'to be mended'],
          ),
          'Nothing.',
        ),
        heading('Service'),
        tableOf(
          serviceHead,
          service(ran).map((one) => tellService(one, speech)),
          'Nothing left in this span.',
        ),
      ],
    },
  ];
}

// ---- what was recorded

/** @param pages of kinds; one without is printed field by field */
export function recorded(all: Packed, pages: typeof kindPages = kindPages): Section[] {
  const byKind = new Map<Kind, Standing[]>();
  for (const one of all.picked) {
    const list = byKind.get(one.first.body.kind) ?? [];
    list.push(one);
    byKind.set(one.first.body.kind, list);
  }
  const described = Object.keys(pages) as Kind[];
  const others = [...byKind.keys()].filter((kind) => !described.includes(kind)).sort();
  return [...described, ...others].flatMap((kind) => {
    const those = byKind.get(kind);
    if (!those) return [];
    const page = pages[kind];
    return [
      page
        ? { title: page.title, blocks: [...page.blocks(those, all), ...saidAnew(those)] }
        : { title: titleOf(kind), blocks: those.flatMap((one) => fieldsOf(one, kind, all)) },
    ];
  });
}

const titleOf = (kind: Kind): string => {
  const words: string = kindWords[kind] ?? kind;
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

/** A kind without a page: all that it says, field by field. */
const fieldsOf = ({ first, content, amendments }: Standing, kind: Kind, { reading }: Packed): Block[] => [
  heading(
    `${shownTime(first.body.said)} (${shortHash(first.row.hash)})${amendments.length > 0 ? ', said anew' : ''}`,
  ),
  { is: 'fields', rows: fieldRows(content, recordForm(kind), reading) },
];

const saidAnew = (all: readonly Standing[]): Block[] => {
  const anew = all.filter(({ amendments }) => amendments.length > 0);
  return anew.length === 0
    ? []
    : [
        heading('Said anew'),
        ...list(
          anew.map(
            ({ first, amendments }) =>
              `${shortHash(first.row.hash)}: ${amendments.map(({ row, body }) => `${shownTime(body.said)} by ${shortHash(row.hash)}`).join(', ')}. What stands above was said last; the first is in the file too.`,
          ),
        ),
      ];
};

// ---- the chain

function chain(rows: readonly Entry[], { entries, reading }: Packed): Section {
  const authors = [...new Set(rows.map(({ body }) => body.author))];
  const who = new Map(authors.map((author) => [author, authorName(entries, reading.names, author)]));
  return {
    title: packWords.chain,
    blocks: [
      ...verifyWords.map(text),
      { is: 'typed', lines: verifyLines },
      heading('Authors and their public keys'),
      tableOf(
        ['who', 'key'],
        authors.map((author) => [who.get(author) ?? '', author]),
        'None.',
      ),
      heading('Records, by author and number'),
      tableOf(
        ['author', 'number', 'kind', 'said', 'SHA-256'],
        [...rows]
          .sort(
            (a, b) =>
              authors.indexOf(a.body.author) - authors.indexOf(b.body.author) ||
              a.body.number - b.body.number,
          )
          .map(({ body, row }) => [
            who.get(body.author) ?? '',
            `${body.number}`,
            kindWords[body.kind] ?? body.kind,
            shownTime(body.said),
            row.hash,
          ]),
        'None.',
      ),
    ],
  };
}
