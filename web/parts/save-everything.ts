/** All that the reader has here, handed over as one file. */
import { paper } from '../state/session.ts';
import { writeEverything } from './everything.ts';
import { saveJson } from './save.ts';
import { ownVehicles } from './shed.ts';

export const saveEverything = (): void =>
  saveJson(writeEverything({ outing: paper.value, vehicles: ownVehicles() }), fileName());

const fileName = (): string =>
  `${String(paper.value['name'] ?? 'outing')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .toLowerCase()}.json`;
