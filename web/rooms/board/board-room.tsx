/** The riders' board on the screen and, by the browser's own printing or as a PDF, on A4 or letter; and what is read aloud. */
import '../../look/rooms.css';
import './board.css';
import { useSignal } from '@preact/signals';
import { ridersBoard, tellAloud } from '../../../desk/board.ts';
import { fileName } from '../../../desk/file-name.ts';
import { type BoardPaper, boardDocument, boardPaperNames, footOf } from '../../../views/board-paper.ts';
import { save } from '../../parts/save.ts';
import { TrainDoors } from '../../parts/train-doors.tsx';
import { outing, paper, speech } from '../../state/session.ts';

const papers: readonly BoardPaper[] = ['letter', 'a4'];

export function Room() {
  const said = useSignal('');
  const now = outing.value;
  if (!now) return <h1>Riders’ board</h1>;
  const board = ridersBoard(paper.value, now.host, speech.value);
  const makePdf = async (size: BoardPaper): Promise<void> => {
    said.value = 'Making the PDF …';
    try {
      const { cardPdf } = await import('../card/card-pdf.ts');
      const name = fileName(board.title, undefined, 'board.pdf');
      save(await cardPdf((has) => boardDocument(board, size, has)), name);
      said.value = `Saved as ${name}.`;
    } catch {
      said.value = 'The PDF could not be made here: print the board instead.';
    }
  };
  return (
    <>
      <TrainDoors />
      <p class="row no-print">
        <button type="button" class="main" onClick={() => print()}>
          Print
        </button>
        {papers.map((size) => (
          <button key={size} type="button" onClick={() => void makePdf(size)}>
            Save as PDF, {boardPaperNames[size]}
          </button>
        ))}
        <span role="status">{said.value}</span>
      </p>
      <article class="board">
        <h1>{board.title}</h1>
        <p class="before">Before you ride</p>
        <ul>
          {board.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
          {board.sky.map((line) => (
            <li key={line}>
              <strong>{line}</strong>
            </li>
          ))}
        </ul>
        <p>
          <small>{footOf(board)}</small>
        </p>
      </article>
      <section class="aloud" aria-label="Read aloud">
        <h2>Read aloud before leaving</h2>
        <p class="no-print">{tellAloud(board.aloud)}</p>
        <p class="big">{board.aloud.text}</p>
      </section>
      {board.example && (
        <p class="no-print">
          The host’s own words stand in its rules, under <a href="#line">Line</a>:{' '}
          <em>what riders are told</em>.
        </p>
      )}
    </>
  );
}
