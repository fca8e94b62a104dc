/** The other way round: state the stop that is wanted, read which cylinders and levers do it. */
import { useState } from 'preact/hooks';
import { designTables, readDesign, type WrittenDesign } from '../../../desk/brake-design.ts';
import { designFor } from '../../../desk/brakes.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { blockMaterials } from '../../../engine/things/vehicle/types.ts';
import type { WordTable } from '../../../words/table.ts';
import type { Voice } from '../../../words/voice.ts';
import { Table } from '../../parts/word-table.tsx';

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
}

const fields: readonly (readonly [keyof WrittenDesign, string])[] = [
  ['distance', 'stop in'],
  ['speed', 'from'],
  ['grade', 'on a grade of (falls negative)'],
  ['spring', 'return spring'],
  ['efficiency', 'efficiency of the rigging'],
  ['cylinders', 'cylinders per car'],
  ['deadTime', 'until the blocks touch'],
  ['buildUp', 'from there to full'],
  ['reaction', "driver's reaction, counted in the distance"],
];

const imperial: WrittenDesign = {
  distance: '60 ft',
  speed: '7 mph',
  grade: '-3 %',
  vacuum: '18 inHg',
  spring: '6 lbf',
  block: 'cast-iron',
  efficiency: '0.8',
  cylinders: '1',
  deadTime: '0.5 s',
  buildUp: '1.5 s',
  reaction: '0 s',
  engine: true,
};
const metric: WrittenDesign = {
  ...imperial,
  distance: '18 m',
  speed: '11 km/h',
  vacuum: '60 kPa',
  spring: '25 N',
};

export function BrakeDesigner({ outing, voice }: Props) {
  const [written, setWritten] = useState(voice.system === 'imperial' ? imperial : metric);
  const [told, setTold] = useState<{
    readonly tables: readonly WordTable[];
    readonly faults: readonly string[];
  }>({
    tables: [],
    faults: [],
  });
  const set = (changes: Partial<WrittenDesign>): void => setWritten({ ...written, ...changes });
  const air = written.pressure !== undefined;
  const work = (event: Event): void => {
    event.preventDefault();
    const read = readDesign(written, outing.conditions.reaction);
    if (!read.ok) setTold({ tables: [], faults: read.problems.map((p) => p.message) });
    else {
      const result = designFor(outing, read.request);
      setTold({ tables: designTables(result, read.request, false, voice), faults: [] });
    }
  };
  return (
    <form class="brake-designer" onSubmit={work}>
      <h2>Design a brake for the cars of this train</h2>
      {fields.map(([field, words]) => (
        <label key={field}>
          {words}
          <input
            value={String(written[field] ?? '')}
            onInput={(e) => set({ [field]: e.currentTarget.value })}
          />
        </label>
      ))}
      <label>
        <select
          aria-label="air or vacuum"
          value={air ? 'air' : 'vacuum'}
          onChange={(e) =>
            set(
              e.currentTarget.value === 'air'
                ? { pressure: '45 psi', vacuum: undefined }
                : { pressure: undefined, vacuum: '18 inHg' },
            )
          }
        >
          <option value="air">pressure in the cylinders</option>
          <option value="vacuum">vacuum in the cylinders</option>
        </select>
        <input
          aria-label={air ? 'pressure' : 'vacuum'}
          value={written.pressure ?? written.vacuum ?? ''}
          onInput={(e) => set(air ? { pressure: e.currentTarget.value } : { vacuum: e.currentTarget.value })}
        />
      </label>
      <label>
        blocks of
        <select value={written.block} onChange={(e) => set({ block: e.currentTarget.value })}>
          {blockMaterials.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </label>
      <label>
        <input
          type="checkbox"
          checked={written.engine}
          onChange={(e) => set({ engine: e.currentTarget.checked })}
        />{' '}
        engine brakes too
      </label>
      <button type="submit">Find cylinders and levers</button>
      <div aria-live="polite">
        {told.faults.map((fault) => (
          <p key={fault} role="alert">
            {fault}
          </p>
        ))}
        {told.tables.map((table) => (
          <Table key={table.title} table={table} />
        ))}
      </div>
    </form>
  );
}
