/** Loops and sidings: where this train stands clear, and which of two trains fits which road. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { lookAtTracksOf } from '../../../desk/siding.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { roadsPlot } from '../../../views/fit/roads-plot.ts';
import { passingTable, roadsTable, turnoutsTable, waysTables } from '../../../views/tables/siding.ts';
import type { Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { openShelf, others } from '../../parts/shelf.ts';
import { Table } from '../../parts/word-table.tsx';

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
  /** px */
  readonly width: number;
}

export function Tracks({ outing, voice, width }: Props) {
  const [name, setName] = useState('');
  const other = useOther(name);
  const sidings = useMemo(() => lookAtTracksOf(outing, other), [outing, other]);
  const scene = useMemo(
    () => roadsPlot(sidings, sidings.standing[0], voice, Math.min(760, width)),
    [sidings, voice, width],
  );
  if (sidings.joints.length === 0) return null;
  return (
    <>
      <h2>Loops and sidings</h2>
      <OtherTrain name={name} onPick={setName} />
      {sidings.standing.map((train) => (
        <div key={`${train.train} ${train.passes}`}>
          <Table table={roadsTable(sidings, train, voice)} />
          {train.look.roads.length > 0 && <Table table={passingTable(sidings, train, voice)} />}
        </div>
      ))}
      {waysTables(sidings).map((table) => (
        <Table key={table.title} table={table} />
      ))}
      {scene && (
        <figure class="plot drawn">
          <Drawing scene={scene} />
        </figure>
      )}
      <Table table={turnoutsTable(sidings, voice)} />
    </>
  );
}

interface OtherProps {
  readonly name: string;
  readonly onPick: (name: string) => void;
}

/** The train that passes meanwhile: another like this, or one of those on the shelf. */
function OtherTrain({ name, onPick }: OtherProps) {
  useEffect(() => void openShelf(), []);
  const names = others().map((json) => String(json['name']));
  if (names.length === 0) return null;
  return (
    <p class="row">
      <label>
        Another train passes:{' '}
        <select value={name} onChange={(e) => onPick(e.currentTarget.value)}>
          <option value="">one like this</option>
          {names.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}

/** Of its line and host nothing is taken. undefined: none is picked, or it cannot be read. */
function useOther(name: string): Outing | undefined {
  const [other, setOther] = useState<{ readonly name: string; readonly outing: Outing }>();
  const json = name === '' ? undefined : others().find((o) => String(o['name']) === name);
  useEffect(() => {
    if (!json) return;
    let wanted = true;
    void readOuting({ path: name, content: JSON.stringify(json) }, async () => undefined).then((read) => {
      if (wanted && read.ok) setOther({ name, outing: read.value });
    });
    return () => {
      wanted = false;
    };
  }, [json, name]);
  return other?.name === name ? other.outing : undefined;
}
