/** Wheels on the track, couplers over crests, bodies beside what stands there: what is left of each. */
import '../../look/rooms.css';
import { useMemo, useRef } from 'preact/hooks';
import { lookAtClear } from '../../../desk/clear.ts';
import { lookAtFit } from '../../../desk/fit.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { clearPlot } from '../../../views/clear-plot.ts';
import { sectionPlot } from '../../../views/fit/section-plot.ts';
import { templatesPlot } from '../../../views/fit/template.ts';
import { wheelPlot } from '../../../views/fit/wheel-plot.ts';
import { curvesTable, platformsTables, sidingsTable, structuresTable } from '../../../views/tables/clear.ts';
import {
  crestsTable,
  humpsTable,
  pitchTable,
  sectionsTable,
  sheetTable,
  verticalTable,
  wearTable,
  wheelsTable,
} from '../../../views/tables/fit.ts';
import type { Voice } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Inks } from '../../parts/inks.tsx';
import { Said } from '../../parts/said.tsx';
import { useWidth } from '../../parts/use-width.ts';
import { Table } from '../../parts/word-table.tsx';
import { FitPlan } from './fit-plan.tsx';
import { TemplateButtons, WorksheetButton } from './papers.tsx';
import { StoodTrain } from './stood.tsx';
import { Tracks } from './tracks.tsx';

/** Drawn on the screen: the thinnest flanges. */
const MOST_WHEELS = 6;

interface Props {
  readonly outing: Outing;
  readonly voice: Voice;
}

export function FitRoom({ outing, voice }: Props) {
  const fit = useMemo(() => lookAtFit(outing), [outing]);
  const clear = useMemo(() => lookAtClear(outing), [outing]);
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 760).value;
  const scene = useMemo(() => clearPlot(clear, voice, Math.min(760, width)), [clear, voice, width]);
  const profile = useMemo(() => sectionPlot(fit.sections, voice, Math.min(760, width)), [fit, voice, width]);
  const sections = useMemo(
    () => templatesPlot(clear, outing.line.gauge, voice, Math.min(760, width)),
    [clear, outing, voice, width],
  );
  const wheelsDrawn = useMemo(
    () => wheelPlot(outing.train.vehicles, outing.host.standards, voice, Math.min(760, width), MOST_WHEELS),
    [outing, voice, width],
  );
  return (
    <section ref={box}>
      <Inks />
      <h1>Does it fit?</h1>
      <h2>Beside and over the track</h2>
      <Said findings={clear.findings} voice={voice} />
      <Table table={structuresTable(clear, voice)} />
      {scene && (
        <figure class="plot drawn">
          <Drawing scene={scene} />
        </figure>
      )}
      <StoodTrain outing={outing} clear={clear} voice={voice} width={width} />
      {platformsTables(clear, voice).map((table) => (
        <Table key={table.title} table={table} />
      ))}
      <Table table={curvesTable(clear, voice)} />
      {sections && (
        <>
          <figure class="plot drawn">
            <Drawing scene={sections} />
          </figure>
          <TemplateButtons clear={clear} outing={outing} voice={voice} />
        </>
      )}
      {clear.sidings.length > 0 && <Table table={sidingsTable(clear, voice)} />}
      <Tracks outing={outing} voice={voice} width={width} />
      <FitPlan outing={outing} clear={clear} voice={voice} width={width} />
      <h2>Wheels and couplers</h2>
      <WorksheetButton clear={clear} outing={outing} voice={voice} />
      <Said findings={fit.findings} voice={voice} />
      <Table table={wheelsTable(fit, voice)} />
      {fit.wear.length > 0 && <Table table={wearTable(fit, voice)} />}
      {wheelsDrawn && (
        <figure class="plot drawn">
          <Drawing scene={wheelsDrawn} />
        </figure>
      )}
      {fit.sections.length > 0 && <Table table={sectionsTable(fit.sections, voice)} />}
      {profile && (
        <figure class="plot drawn">
          <Drawing scene={profile} />
        </figure>
      )}
      <Table table={sheetTable(outing.host.name, fit.standards, voice)} />
      {fit.gaps.length > 0 && <Table table={crestsTable(fit, voice)} />}
      {fit.pitches.length > 0 && <Table table={pitchTable(fit, voice)} />}
      <h2>Over crests and sags</h2>
      <Table table={humpsTable(fit, voice)} />
      <Table table={verticalTable(fit, voice)} />
    </section>
  );
}
