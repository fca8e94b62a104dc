/** A table of words with its caption and note. */
import type { WordTable } from '../../words/table.ts';

/** Letters of a figure with its unit: kept on one line; what is longer has room for a few words. */
const SHORT = 12;

export function Table({ table: { title, head, rows, note } }: { readonly table: WordTable }) {
  return (
    <section class="scroll" tabIndex={0} aria-label={title}>
      <table>
        <caption>{title}</caption>
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
