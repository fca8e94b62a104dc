/** How fast, where: the zones that are driven, where to brake, and what keeps a driver without a speedometer to them. */
import '../look/run.css';
import type { Told } from '../../desk/asked.ts';
import { actLines, type DrivenRow, drivenRows, tellZone } from '../../desk/driven.ts';
import { lightLines } from '../../desk/light-wheels.ts';
import { notToRun } from '../../words/verdict.ts';
import { speech } from '../state/session.ts';

export function Driving({ told: { asked, answer } }: { readonly told: Told }) {
  const v = { ...speech.value, outing: asked.outing };
  const rows = drivenRows(answer, v);
  if (rows.length === 0) return null;
  const acts = actLines(answer, v);
  const stays = notToRun(answer.verdict);
  const light = lightLines(answer.wheels, v);
  return (
    <section class="speeds driving">
      <h2>How fast, where</h2>
      {stays !== '' && (
        <p>
          <strong>{stays}</strong>
        </p>
      )}
      <ol class="zones">
        {rows.map((row) => (
          <Zone key={row.zone.from} row={row} />
        ))}
      </ol>
      <h3>Where to brake</h3>
      {acts.length === 0 ? (
        <p>No booked stop and no slower zone.</p>
      ) : (
        <ul>
          {acts.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {light && (
        <>
          <h3>{light.title}</h3>
          <ul>
            {light.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Zone({ row }: { readonly row: DrivenRow }) {
  const { zone, from, to, speed, why } = row;
  return (
    <li>
      <strong>{speed}</strong>
      <span>
        {from} – {to} <small>{why}</small>
        {zone.kind === 'run' && <small>{tellZone(row)}</small>}
      </span>
    </li>
  );
}
