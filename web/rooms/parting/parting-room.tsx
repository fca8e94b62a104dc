/**
 * If it parts: the map of every gap and place; one parting chosen on it by tap or by the fields below and
 * played in time; the same in words and as a table; the flag behind a stopped train.
 */
import '../../look/rooms.css';
import './parting.css';
import { useMemo, useRef, useState } from 'preact/hooks';
import { lookAtFailures } from '../../../desk/failures.ts';
import { flagTable, lookAtFlag } from '../../../desk/flag.ts';
import { openPartings, type PartingLook, type Partings, worstGap } from '../../../desk/parting.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { failureTable } from '../../../views/tables/failures.ts';
import { gapName, partingTable } from '../../../views/tables/parting.ts';
import { chainage, type Voice } from '../../../words/voice.ts';
import { Inks } from '../../parts/inks.tsx';
import { Said } from '../../parts/said.tsx';
import { Tick } from '../../parts/tick.tsx';
import { Table } from '../../parts/word-table.tsx';
import { PartingMap } from './parting-map.tsx';
import { Player } from './player.tsx';

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
}

export type Chosen = { readonly gap: number; readonly at: number };

export function PartingRoom({ outing, voice }: Props) {
  const [standing, setStanding] = useState(false);
  const partings = useMemo(() => openPartings(outing), [outing]);
  const look = useMemo(() => partings.look(standing ? { speed: 0 } : {}), [partings, standing]);
  if (look.gaps.length > 0) return <Parted {...{ outing, voice, partings, look, standing, setStanding }} />;
  return (
    <section class="parting-room">
      <h1>If it parts</h1>
      <Said findings={look.findings} voice={voice} behind={[]} />
    </section>
  );
}

interface PartedProps extends Props {
  readonly partings: Partings;
  readonly look: PartingLook;
  readonly standing: boolean;
  readonly setStanding: (on: boolean) => void;
}

function Parted({ outing, voice, partings, look, standing, setStanding }: PartedProps) {
  const [unchained, setUnchained] = useState(true);
  const [picked, setPicked] = useState<Chosen | null>(null);
  const chosen = picked && picked.gap < look.gaps.length ? picked : worstOf(look);
  const play = useMemo(
    () =>
      partings.play({
        ...chosen,
        ...(standing ? { speed: 0 } : {}),
        ...(unchained ? { chained: false } : {}),
      }),
    [partings, chosen.gap, chosen.at, standing, unchained],
  );
  const box = useRef<HTMLDivElement>(null);
  return (
    <section class="parting-room" ref={box}>
      <Inks />
      <h1>If it parts</h1>
      <Said findings={look.findings} voice={voice} behind={[]} />
      <div class="choices">
        <label>
          Parted
          <select
            value={chosen.gap}
            onChange={(e) => setPicked({ gap: Number(e.currentTarget.value), at: chosen.at })}
          >
            {look.gaps.map(({ gap }) => (
              <option key={gap} value={gap}>
                {gapName(voice, gap)}
              </option>
            ))}
          </select>
        </label>
        <label>
          Head of the train at {chainage(voice, chosen.at)}
          <input
            type="range"
            min={0}
            max={outing.line.length}
            step={1}
            value={chosen.at}
            aria-valuetext={chainage(voice, chosen.at)}
            onInput={(e) => setPicked({ gap: chosen.gap, at: Number(e.currentTarget.value) })}
          />
        </label>
        <Tick on={standing} set={setStanding}>
          while it stands
        </Tick>
        <Tick on={unchained} set={setUnchained}>
          as if no chain were hung
        </Tick>
        <button type="button" onClick={() => setPicked(worstOf(look))}>
          Worst case
        </button>
      </div>
      <PartingMap outing={outing} look={look} voice={voice} play={play} onPick={setPicked} />
      <Player play={play} gap={look.gaps[chosen.gap]} voice={voice} />
      <Table table={partingTable(look, voice)} />
      <Failures outing={outing} voice={voice} />
      <Flag outing={outing} voice={voice} />
      <p>
        A model rolls true; a train meets leaves, wind and people. Chain every gap, scotch what stands on a
        grade, and follow the host's rules.
      </p>
    </section>
  );
}

/** The worst place of the worst gap, loose ones first. */
function worstOf({ gaps }: PartingLook): Chosen {
  const loose = gaps.filter((g) => !g.chainHolds);
  const among = loose.length > 0 ? loose : gaps;
  const worst = worstGap(among);
  return { gap: worst.gap, at: worst.worst.at };
}

/** Single failures, reckoned when they are opened. */
function Failures({ outing, voice }: Props) {
  const [open, setOpen] = useState(false);
  const look = useMemo(
    () => (open ? lookAtFailures(outing, Math.max(1, outing.line.length / 2000)) : undefined),
    [outing, open],
  );
  return (
    <details onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>If one thing fails: hose, supply, driver, a cock left shut</summary>
      {look && (
        <>
          <Said findings={look.findings} voice={voice} behind={[]} />
          <Table table={failureTable(look, voice)} />
        </>
      )}
    </details>
  );
}

/** The flag, reckoned when it is opened. */
function Flag({ outing, voice }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>How far behind a stopped train the flag must stand</summary>
      {open && (
        <Table
          table={flagTable(lookAtFlag(outing, undefined, Math.max(10, outing.line.length / 40)), voice)}
        />
      )}
    </details>
  );
}
