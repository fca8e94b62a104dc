/** Couplers and chains: bands of pull and push in a scenario, and what every chain must bear. */
import { MPH } from '../../../engine/base/constants.ts';
import { couplerLoadTables, couplerTable, notRepeatable } from '../../../views/tables/couplers.ts';
import '../../look/rooms.css';
import './couplers.css';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { chainTable, lookAtChains } from '../../../desk/chains.ts';
import { lookAtCouplerLoads, lookAtCouplers } from '../../../desk/couplers.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import {
  type CouplerScenario,
  couplerScenarios,
  type GapBand,
} from '../../../engine/questions/couplers/ensemble.ts';
import { couplerPlot, couplerPlotWords } from '../../../views/coupler-plot.ts';
import { couplerScenarioWords } from '../../../words/findings/couplers.ts';
import { chainage, say, type Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Inks } from '../../parts/inks.tsx';
import { Said } from '../../parts/said.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { Table } from '../../parts/word-table.tsx';
import { Chain } from './chain.tsx';

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
}

const FASTEST = 10 * MPH;

export function CouplersRoom({ outing, voice }: Props) {
  const chains = useMemo(() => lookAtChains(outing), [outing]);
  const loads = useMemo(() => lookAtCouplerLoads(outing), [outing]);
  return (
    <section class="couplers-room">
      <Inks />
      <h1>Couplers and chains</h1>
      <Runs outing={outing} voice={voice} />
      <Said findings={loads.findings} voice={voice} behind={['source']} />
      {couplerLoadTables(loads, voice).map((table) => (
        <Table key={table.title} table={table} />
      ))}
      <h2>Chains</h2>
      <Said findings={chains.findings} voice={voice} behind={['source']} />
      <Table table={chainTable(chains, voice)} />
      <Chain chains={chains} voice={voice} />
    </section>
  );
}

/** Some tenths of a second of reckoning: after the choice is on the screen. */
function Runs({ outing, voice }: Props) {
  const [scenario, setScenario] = useState<CouplerScenario>('engine-brake');
  const [speed, setSpeed] = useState(5 * MPH);
  const [at, setAt] = useState(0);
  const [bands, setBands] = useState<readonly GapBand[] | null>(null);
  useEffect(() => {
    setBands(null);
    const timer = setTimeout(() => setBands(lookAtCouplers(outing, { scenario, at, speed })), 200);
    return () => clearTimeout(timer);
  }, [outing, scenario, at, speed]);
  const words = couplerPlotWords(scenario, voice);
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 760).value;
  const scene = bands && couplerPlot(bands, words, Math.min(760, width));
  return (
    <div ref={box}>
      <div class="choices">
        <label>
          What happens
          <select value={scenario} onChange={(e) => setScenario(e.currentTarget.value as CouplerScenario)}>
            {couplerScenarios.map((s) => (
              <option key={s} value={s}>
                {couplerScenarioWords[s]}
              </option>
            ))}
          </select>
        </label>
        <label>
          Head of the train at {chainage(voice, at)}
          <input
            type="range"
            min={0}
            max={outing.line.length}
            step={1}
            value={at}
            aria-label="Place on the line"
            aria-valuetext={chainage(voice, at)}
            onInput={(e) => setAt(Number(e.currentTarget.value))}
          />
        </label>
        <label>
          Speed {scenario === 'start' ? 'from rest' : say(voice, { si: speed, kind: 'speed' })}
          <input
            type="range"
            min={0.5 * MPH}
            max={FASTEST}
            step={0.25 * MPH}
            value={speed}
            disabled={scenario === 'start'}
            aria-label="Speed"
            aria-valuetext={say(voice, { si: speed, kind: 'speed' })}
            onInput={(e) => setSpeed(Number(e.currentTarget.value))}
          />
        </label>
      </div>
      <div aria-live="polite">
        {scene && bands ? (
          <>
            <figure class="plot drawn scroll" tabIndex={0} aria-label={words.title}>
              <Drawing scene={scene} />
            </figure>
            <Table table={couplerTable(bands, voice)} />
            <p>{notRepeatable}</p>
          </>
        ) : (
          <p>Running the train 64 times …</p>
        )}
      </div>
    </div>
  );
}
