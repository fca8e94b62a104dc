/** The figure that a finding asks for, as a field in its place: filled in, the answer moves on. */
import '../../look/rooms.css';
import { askPlace } from '../../../desk/ask-place.ts';
import { testAsked } from '../../../desk/measured/which.ts';
import { pullOf } from '../../../desk/new/vehicles.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { FieldPath } from '../../../papers/problem.ts';
import { type FieldAt, fieldAt, fieldHelp, fieldLabel, tellMeasure } from '../../../words/field.ts';
import { Figure } from '../../parts/form/figure.tsx';
import { valueAt } from '../../parts/form/path.ts';
import { Choice, Yes } from '../../parts/form/plain.tsx';
import { usePaperSlot } from '../../parts/form/slot.tsx';
import { paperOf } from '../../parts/to-field.ts';
import { edit, paper, settings } from '../../state/session.ts';

interface Props {
  readonly finding: Finding;
}

/** What to measure, in words, and where it is written down. */
export function FillIn({ finding }: Props) {
  const { measure } = finding;
  if (measure === undefined) return null;
  return (
    <>
      {tellMeasure(measure, settings.value.wording)}
      {testAsked(measure) && (
        <>
          {' '}
          <a href={`#measure/${testAsked(measure)}`}>How, with a form</a>
        </>
      )}
      <Place finding={finding} measure={measure} />
    </>
  );
}

function Place({ finding: { where }, measure }: Props & { readonly measure: string }) {
  const place = askPlace(paper.value, measure, where);
  const field = fieldAt(measure);
  if (!place || !field) return null;
  if (measure === 'vehicle.traction') return <Pull place={place} />;
  if (['figure', 'yes', 'choice'].includes(field.is.form)) return <OneField place={place} field={field} />;
  return <a href={paperOf(String(place[0] ?? ''))}>Write it down in its paper</a>;
}

function OneField({ place, field }: { readonly place: FieldPath; readonly field: FieldAt }) {
  const { units, wording } = settings.value;
  const label = fieldLabel(field.about, wording);
  const slot = usePaperSlot(place, {
    label,
    labelled: true,
    json: valueAt(paper.value, place),
    optional: true,
  });
  return (
    <div class="field fill-in">
      <label for={slot.id}>{label}</label>
      {field.is.form === 'figure' ? (
        <Figure slot={slot} kind={field.is.kind} spread={field.is.spread} />
      ) : field.is.form === 'choice' ? (
        <Choice slot={slot} values={field.is.values} />
      ) : (
        <Yes slot={slot} />
      )}
      <small>{fieldHelp(field.about, field.is, units, wording)}</small>
    </div>
  );
}

/** A pull by spring balance stands for all that an engine's traction can say. */
function Pull({ place }: { readonly place: FieldPath }) {
  const kept = valueAt(paper.value, [...place, 'curve', 0, 'force']);
  return (
    <div class="field fill-in">
      <label for="fill-pull">How hard it pulls</label>
      <Figure
        slot={{
          id: 'fill-pull',
          label: 'How hard it pulls',
          labelled: true,
          json: kept,
          optional: true,
          set: (value) =>
            edit(place, value === undefined ? undefined : pullOf(String(value), settings.value.units)),
        }}
        kind="force"
        spread={false}
      />
      <small>
        Hook a spring balance between it and a post, open up gently until the wheels slip or it gives no more,
        and read. It is taken to be kept up to a walk.
      </small>
    </div>
  );
}
