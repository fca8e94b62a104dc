/** Which chain? Nothing is asked: the train and the line say all. */
import { askChain } from '../../../desk/builder/chain.ts';
import type { BuilderProps } from './builder-room.tsx';
import { Answer, useReckoned } from './reckoned.tsx';

export function WhichChain({ outing, voice, of }: BuilderProps) {
  const made = useReckoned(JSON.stringify([of, voice.system, voice.wording]), () => askChain(outing, voice));
  return (
    <>
      <Answer made={made} />
      <p>
        To try a chain on one gap: <a href="#couplers">Couplers</a>.
      </p>
    </>
  );
}
