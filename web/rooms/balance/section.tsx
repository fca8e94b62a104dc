/** The section to scale: choose who leans and where the vehicle is, or drag the shoulders. */

import { useMemo, useRef, useState } from 'preact/hooks';
import { type BalanceView, type SectionAsk, sectionOf, underAt, worstNode } from '../../../desk/balance.ts';
import { MPH } from '../../../engine/base/constants.ts';
import { leanAt, sectionScene } from '../../../views/section.ts';
import type { WordTable } from '../../../words/table.ts';
import { chainage, say, type Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { Table } from '../../parts/word-table.tsx';

interface Props {
  readonly view: BalanceView;
  /** Its place in the list of what balance knows. */
  readonly found: number;
  readonly voice: Voice;
}

type Who = 'one' | 'two' | 'all';

/** Leans may be tried this far, m. */
const FARTHEST = 0.4;
const FASTEST = 12 * MPH;

export function SectionView({ view, found, voice }: Props) {
  const { context, data } = view;
  const known = data.vehicles[found];
  const loaded = context.loaded.vehicles[known.index];
  const worst = worstNode(view, found);
  const [who, setWho] = useState<Who>('one');
  const [lean, setLean] = useState(0);
  const [node, setNode] = useState(worst);
  const [own, setOwn] = useState<number | null>(null);
  const speed = own ?? data.permitted[node];
  const centre = context.outing.assumed.riderCentre.value;
  const ask: SectionAsk = useMemo(
    () => ({
      index: known.index,
      speed,
      under: underAt(view, found, node),
      lean: leaning(loaded.riders, who, lean),
    }),
    [known.index, speed, node, who, lean, data],
  );
  const section = sectionOf(context, ask);
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 520).value;
  const frame = { width, height: Math.min(520, Math.max(360, width * 0.8)), textSize: width < 420 ? 12 : 14 };
  if (!section) return null;
  const drag = (event: PointerEvent): void => {
    const rect = (event.currentTarget as Element).getBoundingClientRect();
    const to = leanAt(loaded, frame, centre, event.clientX - rect.left);
    setLean(Math.max(-FARTHEST, Math.min(FARTHEST, Math.round(to * 200) / 200)));
  };
  const length = (si: number): string => say(voice, { si, kind: 'length' });
  const side = lean === 0 ? 'upright' : `${length(Math.abs(lean))} to the ${lean > 0 ? 'left' : 'right'}`;
  const said = `${section.state}, ${Math.max(0, Math.floor(section.share * 100))} % of the lightest wheel's load left`;
  return (
    <div class="section-view">
      <figure class="drawn" ref={box}>
        <div
          class="section-drawing"
          onPointerDown={(e) => {
            (e.currentTarget as Element).setPointerCapture(e.pointerId);
            drag(e);
          }}
          onPointerMove={(e) => {
            if (e.buttons > 0) drag(e);
          }}
        >
          <Drawing
            scene={sectionScene(loaded, section, ask, context.line.contactWidth, centre, frame, voice)}
          />
        </div>
        <figcaption aria-live="polite">{said}</figcaption>
      </figure>
      <div class="section-choices">
        <label>
          Who leans
          <select value={who} onChange={(e) => setWho(e.currentTarget.value as Who)}>
            <option value="one">the heaviest rider</option>
            <option value="two">the two heaviest</option>
            <option value="all">all riders</option>
          </select>
        </label>
        <label>
          Lean of the centre of gravity: {side}
          <input
            type="range"
            min={-FARTHEST}
            max={FARTHEST}
            step={0.005}
            value={-lean}
            aria-label="Lean, left to right"
            aria-valuetext={side}
            onInput={(e) => setLean(-Number(e.currentTarget.value))}
          />
        </label>
        <label>
          Head of the train at {chainage(voice, view.at(data.grid[node]))},{' '}
          {curve(ask.under.curvature, voice)}
          <input
            type="range"
            min={0}
            max={data.grid.length - 1}
            step={1}
            value={node}
            aria-label="Place on the line"
            aria-valuetext={chainage(voice, view.at(data.grid[node]))}
            onInput={(e) => {
              setNode(Number(e.currentTarget.value));
              setOwn(null);
            }}
          />
        </label>
        <label>
          Speed {say(voice, { si: speed, kind: 'speed' })}
          <input
            type="range"
            min={0}
            max={FASTEST}
            step={0.05}
            value={speed}
            aria-label="Speed"
            aria-valuetext={say(voice, { si: speed, kind: 'speed' })}
            onInput={(e) => setOwn(Number(e.currentTarget.value))}
          />
        </label>
        <p class="section-buttons">
          <button type="button" onClick={() => setLean(0)}>
            Upright
          </button>
          <button type="button" onClick={() => setOwn(0)}>
            Standing
          </button>
          <button
            type="button"
            onClick={() => {
              setNode(worst);
              setOwn(null);
            }}
          >
            Worst place
          </button>
        </p>
        <Table table={wheelTable(section.axles, voice)} />
      </div>
    </div>
  );
}

/** Shift of each who leans, by rider id. */
function leaning(
  riders: BalanceView['context']['loaded']['vehicles'][number]['riders'],
  who: Who,
  lean: number,
): Record<string, number> {
  const heavy = [...riders].sort((a, b) => b.rider.mass.value - a.rider.mass.value);
  const number = who === 'one' ? 1 : who === 'two' ? 2 : heavy.length;
  return Object.fromEntries(heavy.slice(0, number).map(({ rider }) => [rider.id, lean]));
}

const curve = (curvature: number, voice: Voice): string =>
  Math.abs(curvature) < 1e-6
    ? 'straight'
    : `radius ${say(voice, { si: 1 / Math.abs(curvature), kind: 'length' }, 'down')} to the ${curvature > 0 ? 'left' : 'right'}`;

function wheelTable(axles: NonNullable<ReturnType<typeof sectionOf>>['axles'], voice: Voice): WordTable {
  const load = (si: number): string => (si <= 0 ? 'lifted' : say(voice, { si, kind: 'force' }, 'up'));
  return {
    title: 'Wheel loads now',
    head: ['axle, front first', 'left', 'right'],
    rows: axles.map((a, i) => [`${i + 1}`, load(a.left), load(a.right)]),
  };
}
