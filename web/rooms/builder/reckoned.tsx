/** A builder's answer: reckoned beside the page once what is written rests for a moment. */
import { useEffect, useState } from 'preact/hooks';
import type { BuildAsk, BuildReply, Reckoned } from '../../building.ts';
import { aside } from '../../parts/aside.ts';
import { Table } from '../../parts/word-table.tsx';

const REST = 250;
const NOT_HERE = 'It could not be reckoned here: open the page anew, or ask the command line.';

/**
 * @param key of all that it hangs on: when this changes it is reckoned anew
 * @param ask undefined: there is nothing to ask yet
 */
export function useBuilt(key: string, ask: BuildAsk | undefined, rest = REST): BuildReply | undefined {
  const [told, setTold] = useState<{ readonly key: string; readonly reply: BuildReply }>();
  useEffect(() => {
    if (!ask) return undefined;
    let stop = (): void => {};
    const hear = (reply: BuildReply): void => setTold({ key, reply });
    const timer = setTimeout(() => {
      stop = aside<BuildReply>(ask, hear, () => hear({ fault: NOT_HERE, last: true }));
    }, rest);
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [key, ask === undefined]);
  return told?.key === key ? told.reply : undefined;
}

export function Answer({ reply }: { readonly reply: BuildReply | undefined }) {
  const made: Reckoned | undefined = reply?.fault === undefined ? reply?.made : [reply.fault];
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
