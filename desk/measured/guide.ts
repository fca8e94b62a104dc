/** The tests that can be made, and how each is made, in words. */
import { type About, type TestKind, tests } from '../../engine/calibrate/tests/index.ts';
import { type FieldForm, fileForm, type GroupForm } from '../../papers/fields.ts';
import { fieldHelp, fieldLabel } from '../../words/field.ts';
import {
  guides,
  movingSafety,
  needWords,
  type Picture,
  standingSafety,
} from '../../words/measured/guides.ts';
import { resultName, testNames } from '../../words/measured/tests.ts';
import { inWording, type Voice, type Wording } from '../../words/voice.ts';

export const testKinds = Object.keys(tests) as TestKind[];

export interface ListedTest extends Pick<About, 'with' | 'minutes' | 'moves'> {
  readonly kind: TestKind;
  readonly name: string;
  /** What for. */
  readonly what: string;
  /** With what: "one vehicle". */
  readonly needs: string;
  readonly gives: readonly string[];
}

export interface Guide extends ListedTest {
  readonly safety: readonly string[];
  readonly tools: readonly string[];
  readonly steps: readonly string[];
  readonly readings: readonly { readonly name: string; readonly help: string }[];
  readonly picture: Picture;
}

export function listed(kind: TestKind, wording: Wording): ListedTest {
  const { with: made, gives, minutes, moves } = tests[kind];
  return {
    kind,
    name: inWording(testNames[kind], wording),
    what: inWording(guides[kind].what, wording),
    needs: needWords[made],
    with: made,
    minutes,
    moves,
    gives: gives.map((key) => inWording(resultName(key), wording)),
  };
}

/** The readings of a test as its paper has them. */
export function readingsForm(kind: TestKind): GroupForm {
  const field = fileForm('test').fields.find(({ key }) => key === 'test');
  const form = field?.is.form === 'oneOf' ? field.is.groups.find(({ tag }) => tag === kind)?.is : undefined;
  if (form?.form !== 'group') throw new RangeError(`no readings of a ${kind}`);
  return form;
}

export function guideOf(kind: TestKind, { system, wording }: Omit<Voice, 'outing'>): Guide {
  const { needs, steps, mind, picture } = guides[kind];
  const said = (lines: readonly string[]): string[] => lines.map((line) => inWording(line, wording));
  const about = listed(kind, wording);
  return {
    ...about,
    safety: said([
      ...(about.moves ? movingSafety : about.with === 'vehicle' ? standingSafety : []),
      ...(mind === undefined ? [] : [mind]),
    ]),
    tools: said(needs),
    steps: said(steps),
    readings: columnsOf(readingsForm(kind)).map(({ about: field, is }) => ({
      name: fieldLabel(field, wording),
      help: fieldHelp(field, is, system, wording),
    })),
    picture,
  };
}

/** Fields and columns, lists of groups opened. */
function columnsOf(form: FieldForm): GroupForm['fields'] {
  if (form.form === 'list') return columnsOf(form.entry);
  if (form.form !== 'group') return [];
  return form.fields.flatMap((field) => {
    const inner = columnsOf(field.is);
    return inner.length > 0 ? inner : [field];
  });
}
