/** A table of words with its caption and note. */
import type { WordTable } from '../../words/table.ts';

/** Letters of a figure with its unit: kept on one line; what is longer has room for a few words. */
const SHORT = 12;

export function Table({ table: { title, head, rows, note } }: { readonly table: WordTable }) {
  // Heads over nothing say nothing.
  if (rows.length === 0)
    return (
      <section aria-label={title}>
        <p>
          <strong>{title}</strong>
        </p>
        {note && <p>{note}</p>}
      </section>
    );
  return (
    <section class="scroll" tabIndex={0} aria-label={title}>
      <table>
        <caption>
          <span>{title}</span>
        </caption>
        <thead>
          <tr>
            {head.map((words) =>
              words === '' ? (
                <td key="corner" />
              ) : (
                <th key={words} scope="col">
                  {words}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, ...cells], i) => (
            <tr key={i}>
              <th scope="row">{name}</th>
              {cells.map((cell, j) => (
                <td key={j} class={cell.length <= SHORT ? 'short' : 'long'}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {note && <p>{note}</p>}
    </section>
  );
}
