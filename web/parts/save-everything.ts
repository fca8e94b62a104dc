/** All that the reader has here, handed over as one file. */
import { fileOf } from '../../desk/asked.ts';
import { fileName } from '../../desk/file-name.ts';
import { asked, paper } from '../state/session.ts';
import { allDrafts } from './drafts.ts';
import { writeEverything } from './everything.ts';
import { saveJson } from './save.ts';
import { ownVehicles } from './shed.ts';

/** A paper that cannot be read is handed over as it stands, so that nothing is lost. */
export function saveEverything(): void {
  const outing = asked.value ? fileOf(asked.value) : paper.value;
  const { name, date } = paper.value;
  saveJson(
    writeEverything({ outing, vehicles: ownVehicles(), drafts: allDrafts() }),
    fileName(String(name ?? ''), typeof date === 'string' ? date : undefined, '.json'),
  );
}
