/** Which cylinder and lever? Filled in so that it works from the first. */
import { useState } from 'preact/hooks';
import type { WrittenDesign } from '../../../desk/brake-design.ts';
import { usualWork } from '../../../desk/builder/cylinder.ts';
import { blockMaterials } from '../../../engine/things/vehicle/types.ts';
import type { BuilderProps } from './builder-room.tsx';
import { Answer, useBuilt } from './reckoned.tsx';

type Text = Exclude<keyof WrittenDesign, 'engine' | 'block'>;

const main: readonly (readonly [Text, string])[] = [
  ['distance', 'Stop in'],
  ['speed', 'from'],
  ['grade', 'on (falls are negative)'],
];
const more: readonly (readonly [Text, string])[] = [
  ['cylinders', 'cylinders to a car'],
  ['spring', 'return spring'],
  ['efficiency', 'efficiency of the rigging'],
  ['deadTime', 'until the blocks touch'],
  ['buildUp', 'from there to full'],
  ['reaction', "driver's reaction (empty: as in the outing)"],
];

export function Cylinder({ outing, voice, of }: BuilderProps) {
  const { system, wording } = voice;
  const speech = { system, wording };
  const usual = useBuilt(JSON.stringify([of, system]), { build: { kind: 'usual' }, outing, speech }, 0);
  // What was changed of those fields, and of no others.
  const [changed, setChanged] = useState<{ readonly of: object; readonly by: Partial<WrittenDesign> }>();
  const first = usual?.usual;
  const changes = changed && changed.of === first ? changed.by : {};
  const written = first && { ...first, ...changes };
  const reply = useBuilt(
    JSON.stringify([of, wording, written]),
    written && { build: { kind: 'cylinder', written }, outing, speech },
  );
  if (usual?.fault !== undefined) return <p class="wrong">{usual.fault}</p>;
  if (!first || !written) return <p class="hero-line">Reckoning …</p>;
  const set = (by: Partial<WrittenDesign>): void => setChanged({ of: first, by: { ...changes, ...by } });
  const field = ([name, words]: readonly [Text, string]) => (
    <label key={name}>
      {words}
      <input value={written[name] ?? ''} onInput={(e) => set({ [name]: e.currentTarget.value })} />
    </label>
  );
  const air = written.pressure !== undefined;
  return (
    <>
      <div class="asked">
        {main.map(field)}
        <label>
          worked by
          <select
            value={air ? 'air' : 'vacuum'}
            onChange={(e) => set(usualWork(system, e.currentTarget.value === 'vacuum'))}
          >
            <option value="air">air</option>
            <option value="vacuum">vacuum</option>
          </select>
        </label>
        {field(air ? ['pressure', 'pressure in it'] : ['vacuum', 'vacuum in it'])}
        <details>
          <summary>More: springs, blocks, times</summary>
          <div class="asked">
            {more.map(field)}
            <label>
              blocks of
              <select value={written.block} onChange={(e) => set({ block: e.currentTarget.value })}>
                {blockMaterials.map((name) => (
                  <option key={name}>{name}</option>
                ))}
              </select>
            </label>
            <label class="tick">
              <input
                type="checkbox"
                checked={written.engine}
                onChange={(e) => set({ engine: e.currentTarget.checked })}
              />
              engine brakes too
            </label>
          </div>
        </details>
      </div>
      <Answer reply={reply} />
    </>
  );
}
