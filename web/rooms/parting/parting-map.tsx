/** The map on the screen: tap a band to part the train there; both halves move on the profile below. */
import { useMemo, useRef, useState } from 'preact/hooks';
import type { PartingLook, PartingPlay } from '../../../desk/parting.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import {
  type PartingStage,
  partingAt,
  partingMoment,
  partingScene,
  partingStage,
} from '../../../views/parting.ts';
import type { Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { now } from './clock.ts';
import type { Chosen } from './parting-room.tsx';

interface Props {
  readonly outing: Outing;
  readonly look: PartingLook;
  readonly voice: Voice;
  readonly play: PartingPlay;
  readonly onPick: (chosen: Chosen) => void;
}

export function PartingMap({ outing, look, voice, play, onPick }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 800).value;
  const [near, setNear] = useState(false);
  const window = near ? around(outing, play) : { from: 0, to: outing.line.length };
  const gaps = look.gaps.length;
  const stage = useMemo(
    () => partingStage(outing, gaps, { width, ...window, textSize: width < 600 ? 12 : 13 }),
    [outing, gaps, width, window.from, window.to],
  );
  const scene = useMemo(() => partingScene(stage, look, voice), [stage, look, voice]);
  const pick = (event: MouseEvent): void => {
    const rect = (event.currentTarget as Element).getBoundingClientRect();
    const { gap, at } = partingAt(stage, event.clientX - rect.left, event.clientY - rect.top);
    onPick({ gap: gap >= 0 ? gap : play.gap, at });
  };
  return (
    <figure class="drawn parting-map" ref={box}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the fields above choose the same by keys */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a tap is one more way to the fields above */}
      <div class="map" onClick={pick}>
        <Drawing scene={scene} />
        <svg class="over" viewBox={`0 0 ${width} ${stage.height}`} aria-hidden="true">
          <Halves stage={stage} play={play} />
        </svg>
      </div>
      <figcaption>
        The higher the band, the worse. Tap it to part the train there.{' '}
        <button type="button" aria-pressed={near} onClick={() => setNear(!near)}>
          {near ? 'Whole line' : 'Closer'}
        </button>
      </figcaption>
    </figure>
  );
}

interface HalvesProps {
  readonly stage: PartingStage;
  readonly play: PartingPlay;
}

function Halves({ stage, play }: HalvesProps) {
  const time = Math.min(now.value, play.duration);
  return <Drawing scene={partingMoment(stage, { play, time })} />;
}

/** What both halves pass over, and a little more; the whole line where that crosses a loop's origin. */
function around({ line }: Outing, { head, tail }: PartingPlay): { from: number; to: number } {
  const ends = [...head.front, ...tail.front];
  const room = 15 + head.length + tail.length;
  const from = Math.min(...ends) - room;
  const to = Math.max(...ends) + room;
  return from < 0 || to > line.length
    ? { from: Math.max(0, from), to: Math.min(line.length, Math.max(to, 60)) }
    : { from, to };
}
