/** My papers: outings side by side, everything in and out as one file, the code of another phone, the examples. */
import '../../look/rooms.css';
import './mine.css';
import { useEffect } from 'preact/hooks';
import { several } from '../../../words/several.ts';
import { begin, overtaken, tell } from '../../parts/door.ts';
import { saveEverything } from '../../parts/save-everything.ts';
import { openShed, ownVehicles } from '../../parts/shed.ts';
import { openBeside } from '../../parts/shelf.ts';
import { demo, demoNames } from '../../state/demos.ts';
import { change } from '../../state/session.ts';
import { OpenAny } from './open-any.tsx';
import { Shelf } from './shelf.tsx';

export function Room() {
  useEffect(() => void openShed(), []);
  const own = ownVehicles().length;
  return (
    <>
      <h1>My papers</h1>
      <Shelf />
      <OpenAny />
      <section>
        <h2>Everything as one file</h2>
        <p>
          The outing with its line, train, rules and riders
          {own > 0 ? `, and your own ${several(own, 'vehicle')} in the shed` : ''}. The same contents give the
          same file, byte for byte.
        </p>
        <p class="row">
          <button type="button" class="main" onClick={saveEverything}>
            Save everything as one file
          </button>
        </p>
      </section>
      <section>
        <h2>Records</h2>
        <p>
          What was done, by whom and when: departures, arrivals, certificates, notes. Nothing in it can be
          changed unseen.
        </p>
        <p class="row">
          <a class="button" href="#due">
            What is due
          </a>
          <a class="button" href="#inspect">
            Inspect
          </a>
          <a class="button" href="#incident">
            Incidents
          </a>
          <a class="button" href="#records">
            Records
          </a>
        </p>
      </section>
      <section>
        <h2>Examples, all invented</h2>
        <p class="row">
          {demoNames.map((d) => (
            <button
              type="button"
              key={d.file}
              onClick={() => {
                const mine = begin();
                void demo(d.file).then(async (json) => {
                  if (overtaken(mine)) return;
                  await openBeside(json, () => change(json));
                  tell(`Opened ${d.title}.`);
                });
              }}
            >
              {d.title}
            </button>
          ))}
        </p>
      </section>
    </>
  );
}
