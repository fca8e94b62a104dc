/** A builder's answer: reckoned once what is written rests for a moment, so that typing and the screen do not wait. */
import { useEffect, useState } from 'preact/hooks';
import type { Task } from '../../../desk/builder/task.ts';
import { Table } from '../../parts/word-table.tsx';

/** What was made of it, or what cannot be read. */
export type Reckoned = Task | readonly string[];

const REST = 250;

/** @param key of all that it hangs on: when this changes it is reckoned anew */
export function useReckoned(key: string, reckon: () => Reckoned): Reckoned | undefined {
  const [made, setMade] = useState<{ readonly key: string; readonly value: Reckoned }>();
  useEffect(() => {
    const timer = setTimeout(() => setMade({ key, value: reckon() }), REST);
    return () => clearTimeout(timer);
  }, [key]);
  return made?.key === key ? made.value : undefined;
}

export function Answer({ made }: { readonly made: Reckoned | undefined }) {
  const task = made && 'said' in made ? made : undefined;
  const faults = made && !('said' in made) ? made : [];
  const [first, ...rest] = task?.said ?? [];
  return (
    <>
      <div class="built" role="status">
        {!made && <p class="hero-line">Reckoning …</p>}
        {faults.map((fault) => (
          <p class="wrong" key={fault}>
            {fault}
          </p>
        ))}
        {first && <p class="hero-line">{first}</p>}
        {rest.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      {task?.tables.map((table) => (
        <Table key={table.title} table={table} />
      ))}
    </>
  );
}
