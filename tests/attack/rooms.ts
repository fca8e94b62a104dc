/** What the rooms beside the answer make of an outing: every table and every finding can be told. */
import { ridersBoard } from '../../desk/board.ts';
import { lookAtClear } from '../../desk/clear.ts';
import { crewSheet } from '../../desk/crew.ts';
import { lookAtFit } from '../../desk/fit.ts';
import { nameless } from '../../desk/leave/nameless.ts';
import { lookAtTracksOf } from '../../desk/siding.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Finding } from '../../engine/questions/finding.ts';
import { boardDocument } from '../../views/board-paper.ts';
import { curvesTable, sidingsTable, structuresTable } from '../../views/tables/clear.ts';
import {
  crestsTable,
  humpsTable,
  pitchTable,
  sectionsTable,
  sheetTable,
  verticalTable,
  wearTable,
  wheelsTable,
} from '../../views/tables/fit.ts';
import { passingTable, roadsTable, turnoutsTable } from '../../views/tables/siding.ts';
import { tellFinding } from '../../words/finding.ts';
import type { WordTable } from '../../words/table.ts';
import type { Voice } from '../../words/voice.ts';

const odd = /undefined|NaN|Infinity|\[object/g;

/** Letters before and behind it that are told. */
const AROUND = 200;

/** What no reader should meet, and nobody wrote into it. @param from what it was made of */
export function poor(lines: readonly string[], from: string): string | undefined {
  for (const line of lines)
    for (const { 0: word, index } of line.matchAll(odd))
      if (!from.includes(word)) return line.slice(Math.max(0, index - AROUND), index + AROUND);
  return undefined;
}

const cells = ({ title, head, rows, note = '' }: WordTable): string[] => [
  title,
  ...head,
  ...rows.flat(),
  note,
];

function tables(outing: Outing, voice: Voice): string[] {
  const sidings = lookAtTracksOf(outing);
  const clear = lookAtClear(outing);
  const fit = lookAtFit(outing);
  const findings: readonly Finding[] = [...sidings.findings, ...clear.findings, ...fit.findings];
  return [
    ...sidings.standing.flatMap((train) => [
      roadsTable(sidings, train, voice),
      passingTable(sidings, train, voice),
    ]),
    turnoutsTable(sidings, voice),
    structuresTable(clear, voice),
    curvesTable(clear, voice),
    sidingsTable(clear, voice),
    ...[wheelsTable, wearTable, crestsTable, pitchTable, humpsTable, verticalTable].map((table) =>
      table(fit, voice),
    ),
    sectionsTable(fit.sections, voice),
    sheetTable(outing.host.name, fit.standards, voice),
  ]
    .flatMap(cells)
    .concat(findings.flatMap((finding) => Object.values(tellFinding(finding, voice)).map(String)));
}

/** @param paper what the outing was read from, with all parts in it */
export function roomsOf(outing: Outing, paper: Readonly<Record<string, unknown>>): string | undefined {
  const voice: Voice = { outing, system: 'imperial', wording: 'us' };
  const { findings, ...sheet } = crewSheet(paper, outing, voice);
  const board = ridersBoard(paper, outing.host, voice);
  boardDocument(board, 'a4', () => true);
  nameless(paper);
  const crew = findings.flatMap((finding) => Object.values(tellFinding(finding, voice)).map(String));
  const words = [...tables(outing, voice), ...crew, JSON.stringify(sheet), JSON.stringify(board)];
  return poor(words, JSON.stringify(paper));
}
