/** The shed: equipment in a row, dragged or tapped into the train; vehicle files come in here. */
import { useComputed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { LoadedVehicle } from '../../../engine/things/train/loaded.ts';
import { loadTrain } from '../../../engine/things/train/loaded.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { type FileProblem, readVehicle, tellProblem, writeFile } from '../../../papers/index.ts';
import { carSide, heightOf } from '../../../views/car-views.ts';
import { say } from '../../../words/voice.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { FilePick } from '../../parts/file-pick.tsx';
import { saveJson } from '../../parts/save.ts';
import { discard, importVehicles, type ShedVehicle, shed } from '../../parts/shed.ts';
import { voice } from '../../state/session.ts';
import { type Lifted, lifted, put, train } from './state.ts';
import { carryVehicle } from './yard.tsx';

interface Stabled extends ShedVehicle {
  readonly read: Vehicle;
}

export function ShedRow() {
  const wrong = useSignal<readonly FileProblem[]>([]);
  const stabled = useSignal<readonly Stabled[]>([]);
  const shedNow = shed.value;
  useEffect(() => {
    let stale = false;
    void stable(shedNow).then((found) => {
      if (!stale) stabled.value = found;
    });
    return () => {
      stale = true;
    };
  }, [shedNow]);
  const gauge = useComputed(() => train.value?.vehicles[0]?.vehicle.gauge ?? 0);
  return (
    <section class="shed" aria-label="The shed">
      <h2>The shed</h2>
      <p>Drag a vehicle up into the train, or take it up and tap where it goes.</p>
      <ul class="shed-row">
        {stabled.value.map((s) => (
          <Tile key={writeFile(s.vehicle)} stabled={s} fits={Math.abs(s.read.gauge - gauge.value) <= 0.001} />
        ))}
      </ul>
      <p class="row">
        <FilePick
          label="Bring in vehicle files"
          accept=".json,application/json"
          multiple
          take={async (files) => {
            wrong.value = await importVehicles(files);
          }}
        />
      </p>
      {wrong.value.length > 0 && (
        <div class="notice" role="alert">
          <p>Not a vehicle file that can be read; the shed is as it was for these:</p>
          <ul>
            {wrong.value.map((p) => (
              <li key={tellProblem(p)}>{tellProblem(p)}</li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}

/** Vehicles that can be read; one whose paper is being mended is not shown. */
async function stable(vehicles: readonly ShedVehicle[]): Promise<readonly Stabled[]> {
  const read = await Promise.all(
    vehicles.map(async (v) => {
      const made = await readVehicle({ path: 'vehicle', content: JSON.stringify(v.vehicle) });
      return made.ok ? [{ ...v, read: made.value }] : [];
    }),
  );
  return read.flat();
}

/** The vehicle by itself, nobody aboard. */
const alone = (vehicle: Vehicle): LoadedVehicle =>
  loadTrain({ name: '', vehicles: [vehicle], pipeBrokenAfter: [], chainsFastened: true }, []).vehicles[0];

const TILE = { width: 150, most: 60 };

function Tile({ stabled, fits }: { readonly stabled: Stabled; readonly fits: boolean }) {
  const { read, vehicle, from } = stabled;
  const v = voice.value;
  const loaded = alone(read);
  const scale = Math.min(TILE.most, TILE.width / read.length);
  const what: Lifted = { from: 'shed', vehicle, label: read.name };
  const held = lifted.value?.from === 'shed' && lifted.value.vehicle === vehicle;
  const last = train.value?.vehicles.length ?? 0;
  return (
    <li class="tile">
      <button
        type="button"
        class="grip drawn"
        disabled={!fits}
        aria-pressed={held}
        aria-label={`Take up ${read.name}`}
        onClick={() => {
          lifted.value = held ? null : what;
          document.querySelector('[data-yard]')?.scrollIntoView({ block: 'center' });
        }}
        onPointerDown={(e) => fits && carryVehicle(e, what)}
      >
        <Drawing scene={carSide(loaded, { scale, top: heightOf(loaded) })} />
      </button>
      <strong>{read.name}</strong>
      <small>
        {v && say(v, { si: read.length, kind: 'length' })},{' '}
        {v && say(v, { si: read.tare.value, kind: 'mass' })},{' '}
        {read.seats.length === 1 ? '1 seat' : `${read.seats.length} seats`}; {from}
      </small>
      {fits ? (
        <button type="button" aria-label={`Add ${read.name} at the rear`} onClick={() => put(what, last)}>
          Add at rear
        </button>
      ) : (
        <small>of {v && say(v, { si: read.gauge, kind: 'length' })} gauge: not for this train</small>
      )}
      <span class="row">
        <button
          type="button"
          class="quiet"
          aria-label={`Save ${read.name} as a file`}
          onClick={() =>
            saveJson(writeFile(vehicle), `${read.name.replace(/[^\w-]+/g, '-').toLowerCase()}.json`)
          }
        >
          Save
        </button>
        {from === 'your own' && (
          <button
            type="button"
            class="quiet"
            aria-label={`Take ${read.name} out of the shed`}
            onClick={() => void discard(vehicle)}
          >
            Scrap
          </button>
        )}
      </span>
    </li>
  );
}
