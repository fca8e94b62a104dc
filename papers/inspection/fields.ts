/**
 * A list of what is looked at before a vehicle, a line or a club's gear is used: the host's own, or one of the examples
 * that come along, which nobody is held to.
 */
import * as z from 'zod/mini';
import { type Kind, kinds } from '../../engine/base/quantity.ts';
import { groundKinds } from '../../engine/things/in-date.ts';
import { choice, group, may, must, remark, rows, text, yes } from '../describe.ts';
import { drawings } from './drawings.ts';

const id = () => z.string().check(z.regex(/^[a-z0-9-]{1,60}$/, 'small letters, digits and hyphens'));
const figureText = () => z.string().check(z.minLength(1), z.maxLength(40));

const band = group({
  from: may(figureText(), 'from', 'Least figure of the band, with its unit.'),
  to: may(figureText(), 'to', 'Greatest figure of the band, with its unit.'),
});

const measured = group({
  kind: must(choice(...(Object.keys(kinds) as [Kind, ...Kind[]])), 'kind', 'What kind of figure it is.'),
  right: must(band, 'right', 'Within these it is right.'),
  limit: may(band, 'limit', 'Within these it may be used, and is to be mended; beyond them it is rejected.'),
});

const item = group({
  id: must(id(), 'id', 'A short name that stays the same.'),
  ask: must(text(400), 'ask', 'What is looked at, and how it is when it is right.'),
  how: may(remark(), 'how', 'How it is looked at or measured.'),
  drawing: may(choice(...drawings), 'drawing', 'A drawing of that, of those that come along.'),
  by: may(text(), 'by', 'Who may judge it.'),
  measured: may(measured, 'measured', 'Where it is judged by a figure.'),
});

export const whens = ['before-use', 'daily', 'periodic', 'after-repair', 'after-derailment'] as const;

export const listSchema = group({
  heedway: must(z.literal('inspection-list'), 'kind of paper', 'What this is.'),
  version: must(z.literal(1), 'version', 'Version of the format.'),
  name: must(text(), 'name', 'What the list is called.'),
  example: may(yes(), 'example', 'Made from published duties as an example: the host’s own list wins.'),
  when: must(choice(...whens), 'when', 'When it is gone through.'),
  of: must(text(), 'of', 'What it is for.'),
  ground: may(
    choice(...groundKinds),
    'on the ground',
    'What it is for, where that is neither vehicle nor line: first aid and fire, or storage and steaming bay.',
  ),
  source: must(text(1000), 'source', 'Where its items come from.'),
  items: must(rows(item, 1, 200), 'items', 'In the order in which one walks round.'),
});

export type InspectionList = z.output<typeof listSchema>;
export type InspectionItem = InspectionList['items'][number];
