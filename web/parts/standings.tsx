/** What is told of an outing in one line, of several below each other: word, speed, cars, gap. */
import { type Standing, standingHead } from '../../desk/figures.ts';

interface Rows {
  /** What each is called, what is told of it yet, and its class. */
  readonly rows: readonly (readonly [name: string, at: Standing | null | undefined, of?: string])[];
  /** Figures that are other than these are marked. */
  readonly besides?: Standing;
  /** Stands where nothing is told yet. */
  readonly waiting?: string;
}

export function Standings({ rows, besides, waiting = '' }: Rows) {
  return (
    <table>
      <thead>
        <tr>
          <td />
          {standingHead.map((words) => (
            <th key={words} scope="col">
              {words}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, at, of]) => (
          <tr key={name} class={of}>
            <th scope="row">{name}</th>
            <td class={`word ${at?.verdict ?? ''}`}>{at?.word ?? waiting}</td>
            {(['speed', 'cars', 'gap'] as const).map((key) => (
              <td
                key={key}
                class={besides && at?.[key] !== undefined && at[key] !== besides[key] ? 'other' : ''}
              >
                {at?.[key] ?? waiting}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
