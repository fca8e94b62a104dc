/** The train stood anywhere on its line: dragged along, its bodies follow the track. */
import { useMemo, useState } from 'preact/hooks';
import type { Clear } from '../../../desk/clear.ts';
import { standings } from '../../../desk/stood.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { stoodPlot } from '../../../views/fit/stood-plot.ts';
import { stoodTable } from '../../../views/tables/clear.ts';
import { chainage, type Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Table } from '../../parts/word-table.tsx';

interface Props {
  readonly outing: Outing;
  readonly clear: Clear;
  readonly voice: Voice;
  /** px */
  readonly width: number;
}

export function StoodTrain({ outing, clear, voice, width }: Props) {
  const line = useMemo(() => standings(outing, clear), [outing, clear]);
  const [picked, setPicked] = useState<number>();
  const at = Math.min(line.to, Math.max(line.from, picked ?? tightest(clear, line)));
  const stood = useMemo(() => line.stand(at), [line, at]);
  const scene = useMemo(
    () => stoodPlot(stood, clear, voice, Math.min(760, width)),
    [stood, clear, voice, width],
  );
  return (
    <>
      <h2>Stand it on the line</h2>
      <div class="choices">
        <label class="along">
          Front of the train at {chainage(voice, at)}
          <input
            type="range"
            min={line.from}
            max={line.to}
            step={0.1}
            value={at}
            aria-valuetext={chainage(voice, at)}
            onInput={(e) => setPicked(Number(e.currentTarget.value))}
          />
        </label>
      </div>
      <figure class="plot drawn">
        <Drawing scene={scene} />
      </figure>
      <Table table={stoodTable(stood, voice)} />
    </>
  );
}

/** Where least is left beside it; else in the sharpest curve. */
function tightest({ nearest, curves, at, trainLength }: Clear, { to }: { readonly to: number }): number {
  const rooms = nearest.flatMap(({ body, side }) => (body && side !== 'over' ? [body.high] : []));
  const least = rooms.reduce<(typeof rooms)[number] | undefined>(
    (a, b) => (a && a.left <= b.left ? a : b),
    undefined,
  );
  if (least) return at(least.at + trainLength / 2);
  const sharpest = curves.reduce<(typeof curves)[number] | undefined>(
    (a, b) => (a && a.radius <= b.radius ? a : b),
    undefined,
  );
  return sharpest ? at((sharpest.from + sharpest.to + trainLength) / 2) : to;
}
