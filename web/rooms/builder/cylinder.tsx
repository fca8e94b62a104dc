/** Which cylinder and lever? Filled in so that it works from the first. */
import { useEffect, useState } from 'preact/hooks';
import { readDesign, type WrittenDesign } from '../../../desk/brake-design.ts';
import { askCylinder, usualDesign, usualWork } from '../../../desk/builder/cylinder.ts';
import { blockMaterials } from '../../../engine/things/vehicle/types.ts';
import type { BuilderProps } from './builder-room.tsx';
import { Answer, type Reckoned, useReckoned } from './reckoned.tsx';

type Text = Exclude<keyof WrittenDesign, 'engine' | 'block'>;

const first: readonly (readonly [Text, string])[] = [
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
  const [written, setWritten] = useState<WrittenDesign>();
  const { system } = voice;
  useEffect(() => {
    setWritten(undefined);
    const timer = setTimeout(() => setWritten(usualDesign(outing, system)), 30);
    return () => clearTimeout(timer);
  }, [system, of]);
  const made = useReckoned(JSON.stringify([of, voice.wording, written]), (): Reckoned => {
    if (!written) return [];
    const { reaction, ...rest } = written;
    const asked = reaction === undefined || reaction.trim() === '' ? rest : written;
    const read = readDesign(asked, outing.conditions.reaction);
    if (!read.ok) return read.problems.map((p) => p.message);
    return askCylinder(outing, read.request, voice, { vacuum: written.vacuum !== undefined });
  });
  if (!written) return <p class="hero-line">Reckoning …</p>;
  const set = (changes: Partial<WrittenDesign>): void => setWritten({ ...written, ...changes });
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
        {first.map(field)}
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
      <Answer made={made} />
    </>
  );
}
