/** All that can be sought: rooms, tasks, sums, findings, fields, words of the house; each with where it is. */
import { balanceFindings } from '../../engine/questions/balance/findings.ts';
import { brakeGearFindings, brakePartFindings } from '../../engine/questions/brakes/findings.ts';
import { chainFindings } from '../../engine/questions/chains/findings.ts';
import { clearanceFindings } from '../../engine/questions/clearance/findings.ts';
import { couplerFindings } from '../../engine/questions/couplers/findings.ts';
import { crestFindings } from '../../engine/questions/crests/findings.ts';
import { crewFindings } from '../../engine/questions/crew/findings.ts';
import { failureFindings } from '../../engine/questions/failures/findings.ts';
import { findingCodes } from '../../engine/questions/findings.ts';
import { flagFindings } from '../../engine/questions/flag/findings.ts';
import { humpFindings } from '../../engine/questions/humps/findings.ts';
import { partFindings } from '../../engine/questions/part/findings.ts';
import { pitchFindings } from '../../engine/questions/pitch/findings.ts';
import { standardFindings } from '../../engine/questions/standards/findings.ts';
import { surveyFindings } from '../../engine/questions/survey/findings.ts';
import { swingFindings } from '../../engine/questions/swing/findings.ts';
import { wheelFindings } from '../../engine/questions/wheels/findings.ts';
import { type FieldForm, fileForm, type NamedField } from '../../papers/fields.ts';
import type { FileKind } from '../../papers/schema/index.ts';
import { glossary } from '../../words/glossary.ts';
import { sumWords } from '../../words/sums.ts';
import { inWording, type Wording } from '../../words/voice.ts';
import { tasks } from './tasks.ts';

export type EntryKind = 'task' | 'sum' | 'finding' | 'field' | 'word';

export interface Entry {
  readonly id: string;
  readonly kind: EntryKind;
  /** What it is called, or the question that it answers. */
  readonly title: string;
  readonly tells: string;
  /** Further words by which it is sought. */
  readonly also: string;
  /** Address in the workbench. */
  readonly room: string;
  /** The same on the command line. */
  readonly command: string;
}

export const entriesIn = (wording: Wording): readonly Entry[] => [
  ...tasks,
  ...sumEntries(),
  ...findingEntries(),
  ...fieldEntries(wording),
  ...wordEntries(),
];

const sentence = (text: string): string => text[0].toUpperCase() + text.slice(1);

const sumEntries = (): Entry[] =>
  Object.entries(sumWords).map(([id, { title, asks }]) => ({
    id: `sum ${id}`,
    kind: 'sum',
    title: asks,
    tells: `Sum: ${title}.`,
    also: id.replace(/-/g, ' '),
    room: `#sums/${id}`,
    command: `heedway sum ${id}`,
  }));

const roomOfFindings: readonly (readonly [object, string, string])[] = [
  [balanceFindings, '#balance', 'heedway balance <outing>'],
  [brakeGearFindings, '#brakes', 'heedway brakes <outing>'],
  [brakePartFindings, '#brakes', 'heedway brakes <outing>'],
  [chainFindings, '#couplers', 'heedway chains <outing>'],
  [couplerFindings, '#couplers', 'heedway couplers <outing>'],
  [swingFindings, '#couplers', 'heedway couplers <outing>'],
  [crestFindings, '#fit', 'heedway fit <outing>'],
  [pitchFindings, '#fit', 'heedway fit <outing>'],
  [humpFindings, '#fit', 'heedway fit <outing>'],
  [wheelFindings, '#fit', 'heedway fit <outing>'],
  [clearanceFindings, '#fit', 'heedway clear <outing>'],
  [standardFindings, '#fit', 'heedway fit <outing>'],
  [partFindings, '#parting', 'heedway parting <outing>'],
  [flagFindings, '#parting', 'heedway flag <outing>'],
  [failureFindings, '#answer', 'heedway failures <outing>'],
  [crewFindings, '#crew', 'heedway crew <outing>'],
  [surveyFindings, '#line', 'heedway survey <file>'],
];

const findingEntries = (): Entry[] =>
  findingCodes.map((code) => {
    const [, room, command] = roomOfFindings.find(([of]) => code in of) ?? [
      '',
      '#answer',
      'heedway check <outing>',
    ];
    const words = code.replace(/-/g, ' ');
    return {
      id: `finding ${code}`,
      kind: 'finding',
      title: sentence(words),
      tells: 'What the answer may find.',
      also: '',
      room,
      command,
    };
  });

const papers: readonly (readonly [FileKind, string, string])[] = [
  ['vehicle', 'of a vehicle', '#train'],
  ['train', 'of the train', '#train'],
  ['line', 'of the line', '#line'],
  ['host', "of the host's rules", '#line'],
  ['outing', 'of the outing', '#train/people'],
];

/** Of fields called alike in one paper the first. */
function fieldEntries(wording: Wording): Entry[] {
  return papers.flatMap(([paper, of, room]) => {
    const seen = new Set<string>();
    return fieldsIn(fileForm(paper), '').flatMap(({ path, about, is }): Entry[] => {
      // A part that is a file of its own has its own fields.
      if (is.form === 'part' || about.help === '' || seen.has(about.label)) return [];
      seen.add(about.label);
      return [
        {
          id: `field ${paper}.${path}`,
          kind: 'field',
          title: `${sentence(inWording(about.label, wording))}, ${of}`,
          tells: sentence(inWording(about.help, wording)),
          also: path.replace(/[.A-Z]/g, (c) => (c === '.' ? ' ' : ` ${c.toLowerCase()}`)),
          room,
          command: `"${path}" in the file ${of}`,
        },
      ];
    });
  });
}

type FieldIn = Pick<NamedField, 'about' | 'is'> & { readonly path: string };

function fieldsIn(form: FieldForm, at: string): FieldIn[] {
  if (form.form === 'list') return fieldsIn(form.entry, at);
  if (form.form === 'oneOf') return form.groups.flatMap(({ is }) => fieldsIn(is, at));
  if (form.form !== 'group') return [];
  return form.fields.flatMap(({ key, about, is }) => {
    const path = at === '' ? key : `${at}.${key}`;
    return [{ path, about, is }, ...fieldsIn(is, path)];
  });
}

const wordEntries = (): Entry[] =>
  glossary.map(({ word, meaning, elsewhere }) => ({
    id: `word ${word}`,
    kind: 'word',
    title: sentence(word),
    tells: `${sentence(meaning)}.`,
    also: elsewhere,
    room: '',
    command: '',
  }));
