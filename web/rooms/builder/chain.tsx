/** Which chain? Nothing is asked: the train and the line say all. */
import type { BuilderProps } from './builder-room.tsx';
import { Answer, useBuilt } from './reckoned.tsx';

export function WhichChain({ outing, voice, of }: BuilderProps) {
  const { system, wording } = voice;
  const reply = useBuilt(JSON.stringify([of, system, wording]), {
    build: { kind: 'chain' },
    outing,
    speech: { system, wording },
  });
  return (
    <>
      <Answer reply={reply} />
      <p>
        To try a chain on one gap: <a href="#couplers">Couplers</a>.
      </p>
    </>
  );
}
