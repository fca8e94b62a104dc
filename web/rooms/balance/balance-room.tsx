/**
 * Balance: one vehicle's section with people who lean, standing or in a curve; its wheel loads; what would
 * help it; seating found for the whole train; the tilt test and the block test.
 */
import '../../look/rooms.css';
import './balance.css';
import { useMemo, useState } from 'preact/hooks';
import { lookAtBalance } from '../../../desk/balance.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { balanceTables, twistTable } from '../../../views/tables/balance.ts';
import type { Voice } from '../../../words/voice.ts';
import { Inks } from '../../parts/inks.tsx';
import { Said } from '../../parts/said.tsx';
import { SeatThem } from '../../parts/seat-them.tsx';
import { Table } from '../../parts/word-table.tsx';
import { BlockForm, TiltForm } from './measuring.tsx';
import { SectionView } from './section.tsx';
import { WhatHelps } from './what-helps.tsx';

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
}

export function BalanceRoom({ outing, voice }: Props) {
  const view = useMemo(() => lookAtBalance(outing), [outing]);
  const thinnest = useMemo(
    () =>
      view.data.vehicles.reduce<number | undefined>((worst, v, i) => {
        const least = worst === undefined ? Infinity : view.data.vehicles[worst].running.share;
        return v.running.share < least ? i : worst;
      }, undefined),
    [view],
  );
  const [picked, setPicked] = useState<string | null>(null);
  const { vehicles } = view.data;
  const found = vehicles.findIndex((v) => v.vehicle === picked);
  const at = found >= 0 ? found : (thinnest ?? -1);
  const index = vehicles[at]?.index;
  return (
    <section class="balance-room">
      <Inks />
      <h1>Balance</h1>
      <p>
        Leaning and children are behaviour: these are margins, not promises. The host's rules on who may ride
        where come first.
      </p>
      <Said findings={view.findings} voice={voice} />
      {view.data.unbounded.length > 0 && (
        <p>
          Cannot tell for {view.data.unbounded.map((i) => outing.train.vehicles[i].name).join(', ')}: measure
          how high the centre of gravity lies, for example by the tilt test below.
        </p>
      )}
      {index !== undefined && (
        <>
          <label class="which">
            Vehicle
            <select
              aria-label="Vehicle"
              value={vehicles[at].vehicle}
              onChange={(e) => setPicked(e.currentTarget.value)}
            >
              {vehicles.map((v) => (
                <option key={v.vehicle} value={v.vehicle}>
                  {outing.train.vehicles[v.index].name}: {Math.floor(v.running.share * 100)} % of wheel load
                  left at the thinnest
                </option>
              ))}
            </select>
          </label>
          <SectionView key={vehicles[at].vehicle} view={view} found={at} voice={voice} />
          <WhatHelps view={view} index={index} voice={voice} />
        </>
      )}
      <SeatThem voice={voice} />
      {balanceTables(view, voice).map((table) => (
        <Table key={table.title} table={table} />
      ))}
      <Table table={twistTable(view, voice)} />
      <div class="measuring">
        <TiltForm view={view} voice={voice} />
        <BlockForm view={view} voice={voice} />
      </div>
    </section>
  );
}
