/** A survey whose header names no unit: nobody mends a file on a phone, but whoever walked the line knows. */
import type { Lengths } from '../../papers/import/types.ts';

interface Props {
  readonly file: string;
  readonly take: (unit: Lengths) => void;
}

export const FeetOrMetres = ({ file, take }: Props) => (
  <section class="trying" aria-label="Feet or metres?">
    <p>The header of {file} does not say: feet or metres?</p>
    <p class="row">
      {(['ft', 'm'] as const).map((unit) => (
        <button key={unit} type="button" onClick={() => take(unit)}>
          {unit === 'ft' ? 'Feet' : 'Metres'}
        </button>
      ))}
    </p>
  </section>
);
