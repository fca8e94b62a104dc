/** Making the pack: all that it takes is loaded when it is asked for. */
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { evidencePack, type Pack } from '../../../desk/evidence/pack.ts';
import type { Wanted } from '../../../desk/evidence/pick.ts';
import { tellInvented } from '../../../desk/invented.ts';
import { answered } from '../../../desk/leave/answered.ts';
import { asWritten } from '../../../desk/leave/depart.ts';
import { nameless } from '../../../desk/leave/nameless.ts';
import type { PackPaper } from '../../../views/evidence/document.ts';
import type { PackAsk, PackReply } from '../../pack-worker.ts';
import { clock, openRecords, photosHere } from '../../state/records.ts';
import { speech, told } from '../../state/session.ts';

export interface PackAsked {
  readonly wanted: Wanted;
  readonly names: boolean;
  /** With the answer, sheets and measurements of the outing on the screen. */
  readonly outing: boolean;
  readonly paper: PackPaper;
}

export interface MadePack {
  readonly pack: Pack;
  readonly pdf: Blob;
}

/** @param say hears what is being done, and waits until that can be read */
export async function makePack(
  { wanted, names, outing, paper }: PackAsked,
  say: (words: string) => Promise<void>,
): Promise<MadePack> {
  await say('Looking at every record …');
  const looked = await openRecords('whole');
  if (!looked) throw new Error('records cannot be had here');
  const asked = outing ? told.value?.asked : undefined;
  if (asked) await say('Answering …');
  // A pack that shows a rejected car must not answer as if nobody had looked.
  const day = asked?.outing.date ?? clock.now().slice(0, 10);
  const written = asked && withShown(asWritten(asked), recorded(looked.entries, looked.names, day));
  const made = written && (await answered(nameless(written), speech.value));
  if (made && 'problems' in made) throw new Error(made.problems[0].message);
  const pack = await evidencePack({
    looked,
    names: names ? looked.names : [],
    photos: await photosHere(looked.entries),
    wanted,
    speech: speech.value,
    outing: made && { answered: made, paper: written, invented: tellInvented(written) },
    made: { at: clock.now(), program: clock.program },
  });
  await say(`Laying out ${pack.count} records …`);
  return { pack, pdf: await printed({ pack, paper }, (words) => void say(words)) };
}

/** Beside the page: two hundred pages take a while. */
function printed(ask: PackAsk, say: (words: string) => void): Promise<Blob> {
  const worker = new Worker(new URL('../../pack-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Blob>((done, failed) => {
    worker.addEventListener('message', ({ data }: MessageEvent<PackReply>) => {
      if ('share' in data) say(`Printing, ${Math.floor(100 * data.share)} % …`);
      else if ('pdf' in data) done(data.pdf);
      else failed(new Error(data.fault));
    });
    worker.addEventListener('error', () => failed(new Error('the printing stopped')));
    worker.postMessage(ask);
  }).finally(() => worker.terminate());
}
