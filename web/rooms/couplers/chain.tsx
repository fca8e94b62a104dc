/** A chain tried on one gap: grade and size by the catalogue, fitted with one tap and undone with one. */

import { useState } from 'preact/hooks';
import type { ChainsView } from '../../../desk/chains.ts';
import type { Change } from '../../../engine/outing/change.ts';
import { chainCatalogue, chainDesignFactor } from '../../../engine/things/chain/formulas.ts';
import { say, type Voice } from '../../../words/voice.ts';
import { trials, tryOut, undoTrial } from '../../state/session.ts';

interface Props {
  readonly chains: ChainsView;
  readonly voice: Voice;
}

export function Chain({ chains, voice }: Props) {
  const [gap, setGap] = useState(0);
  const [picked, setPicked] = useState(0);
  const row = chains.rows[Math.min(gap, chains.rows.length - 1)];
  const chain = chainCatalogue[picked];
  const force = (si: number, toward: 'up' | 'down'): string => say(voice, { si, kind: 'force' }, toward);
  const breaking = chain.workingLoad * chainDesignFactor(chain.grade);
  const steady = row.steady <= chain.workingLoad;
  const must = row.mustBreakAt[chain.grade];
  const change: Change = { kind: 'chain-size', gap: row.gap, grade: chain.grade, size: chain.size };
  return (
    <section class="chain-tried">
      <h2>Try another chain</h2>
      <div class="choices">
        <label>
          Gap
          <select value={row.gap} onChange={(e) => setGap(Number(e.currentTarget.value))}>
            {chains.rows.map((r) => (
              <option key={r.gap} value={r.gap}>
                behind {voice.outing.train.vehicles[r.gap].name}
              </option>
            ))}
          </select>
        </label>
        <label>
          Chain
          <select value={picked} onChange={(e) => setPicked(Number(e.currentTarget.value))}>
            {chainCatalogue.map((c, i) => (
              <option key={`${c.grade} ${c.size}`} value={i}>
                grade {c.grade}, {say(voice, { si: c.size, kind: 'length' })}
              </option>
            ))}
          </select>
        </label>
      </div>
      <div aria-live="polite">
        <ul>
          <li>
            Works with {force(chain.workingLoad, 'down')}; the tail on the steepest grade asks for{' '}
            {force(row.steady, 'up')}: {steady ? 'enough' : 'too little'}.
          </li>
          <li>
            Breaks at {force(breaking, 'down')} at the least; to catch the tail with{' '}
            {say(voice, { si: row.slack, kind: 'length' }, 'up')} of slack it must break at{' '}
            {force(must, 'up')} or more:{' '}
            {must <= breaking ? 'enough.' : 'too little: hang it with less slack, or a larger one.'}
          </li>
        </ul>
      </div>
      <button type="button" onClick={() => void tryOut(change)}>
        Try it in the answer
      </button>{' '}
      {trials.value.length > 0 && (
        <button type="button" onClick={undoTrial}>
          Undo the trial
        </button>
      )}
    </section>
  );
}
