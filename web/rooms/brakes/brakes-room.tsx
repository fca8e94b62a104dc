/**
 * Brakes: how they come on along the train, what slides first, what is in reserve, what is lost without hose
 * or engine; and the design the other way round. Give it an outing and a voice.
 */
import '../../look/rooms.css';
import './brakes.css';
import { useMemo, useRef, useState } from 'preact/hooks';
import { type BrakeLook, lookAtBrakes } from '../../../desk/brakes.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { brakePlot } from '../../../views/brake-plot.ts';
import { brakeTables, brakeTime, standingWords } from '../../../views/tables/brakes.ts';
import { brakeKindWords } from '../../../words/findings/brakes.ts';
import type { Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Inks } from '../../parts/inks.tsx';
import { Said } from '../../parts/said.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { Table } from '../../parts/word-table.tsx';

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
}

export function BrakesRoom({ outing, voice }: Props) {
  const look = useMemo(() => lookAtBrakes(outing), [outing]);
  return (
    <section class="brakes-room">
      <Inks />
      <h1>Brakes</h1>
      <ComingOn look={look} voice={voice} />
      <Said findings={look.findings} voice={voice} />
      {brakeTables(look, voice).map((table) => (
        <Table key={table.title} table={table} />
      ))}
      {standingWords(look, voice).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p>
        To find a cylinder and lever: <a href="#builder/cylinder">Which cylinder and lever?</a>
      </p>
    </section>
  );
}

type Action = 'apply' | 'release';

/** The plot along the train, applied or released. */
function ComingOn({ look, voice }: { readonly look: BrakeLook; readonly voice: Voice }) {
  const [action, setAction] = useState<Action>('apply');
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 760).value;
  const fills = look.data[action].filter((f) => f.gears.some((g) => Number.isFinite(g.full)));
  if (look.data.apply.every((f) => f.gears.length === 0)) {
    return (
      <p>No brake of this train has its hoses, chokes and volumes described, so how it fills is not drawn.</p>
    );
  }
  const choice = (value: Action, words: string) => (
    <label>
      <input type="radio" name="brake-action" checked={action === value} onChange={() => setAction(value)} />{' '}
      {words}
    </label>
  );
  return (
    <div ref={box}>
      <fieldset>
        <legend>Driver's action</legend>
        {choice('apply', 'apply fully')}
        {choice('release', 'release')}
      </fieldset>
      {fills.map((fill) => {
        const title = `${brakeKindWords(fill.kind)}: how it ${action === 'apply' ? 'comes on' : 'comes off'} along the train`;
        const names = {
          title,
          vehicle: (i: number) => voice.outing.train.vehicles[i].name,
          time: (t: number) => brakeTime(voice, t),
        };
        const scene = brakePlot(fill, names, Math.min(760, width));
        return (
          <figure class="plot drawn" key={fill.kind}>
            <Drawing scene={scene} />
          </figure>
        );
      })}
    </div>
  );
}
