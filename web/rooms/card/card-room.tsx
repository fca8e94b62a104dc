/** The running card on the screen and, by the browser's own printing, on one side of A5 or half-letter. */
import { useComputed, useSignal } from '@preact/signals';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { useEffect } from 'preact/hooks';
import { renderSVG } from 'uqr';
import { runningCard } from '../../../desk/card.ts';
import { MOST_QR_LETTERS, toCode } from '../../../desk/outing-code.ts';
import { cardDocument, paperNames } from '../../../views/card-paper.ts';
import { drawStrip } from '../../../views/strip/draw.ts';
import { sceneToSvg } from '../../../views/strip/scene.ts';
import { stillHead, stripModel } from '../../../views/strip/svg.ts';
import { stripWords } from '../../../views/strip/words.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { save } from '../../parts/save.ts';
import { answer, paper, tried, voice } from '../../state/session.ts';

export async function deflate(text: string): Promise<Uint8Array> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

export function Room() {
  const code = useSignal('');
  useEffect(() => {
    void deflate(JSON.stringify(paper.value)).then((bytes) => {
      code.value = toCode(bytes);
    });
  }, [paper.value]);
  const making = useSignal(false);
  const said = useSignal('');
  const makePdf = async (document: TDocumentDefinitions): Promise<void> => {
    making.value = true;
    said.value = 'Making the PDF …';
    try {
      const { cardPdf } = await import('./card-pdf.ts');
      save(await cardPdf(document), 'running-card.pdf');
      said.value = 'Saved as running-card.pdf';
    } catch {
      said.value = 'The PDF could not be made here: print the card instead.';
    }
    making.value = false;
  };
  const square = useComputed(() =>
    code.value !== '' && code.value.length <= MOST_QR_LETTERS
      ? `data:image/svg+xml,${encodeURIComponent(renderSVG(code.value, { ecc: 'L', border: 2, pixelSize: 2 }))}`
      : '',
  );
  const [now, v] = [answer.value, voice.value];
  if (!now || !v || !tried.value) return null;
  const card = runningCard(tried.value, now, v);
  const model = stripModel(tried.value, now, v);
  const strip = drawStrip(
    model,
    { width: 860, height: 290, from: 0, to: v.outing.line.length, textSize: 13 },
    stripWords(v),
    { head: stillHead(tried.value, model.train?.length ?? 0), speed: 0 },
  );
  return (
    <>
      <p class="row no-print">
        <button type="button" class="main" onClick={() => print()}>
          Print
        </button>
        {(['half-letter', 'a5'] as const).map((paper) => (
          <button
            key={paper}
            type="button"
            disabled={making.value}
            onClick={() =>
              void makePdf(
                cardDocument(card, sceneToSvg(strip), square.value === '' ? undefined : code.value, paper),
              )
            }
          >
            Save as PDF, {paperNames[paper]}
          </button>
        ))}
        <span role="status">{said.value}</span>
      </p>
      <article class="card">
        <div class="card-head">
          <div>
            <h1>{card.verdict.toUpperCase()}</h1>
            <p class="big">{card.title}</p>
            <p>
              {card.train} · {card.line}
            </p>
            <p class="big">
              {card.day} · rail {card.rail}
            </p>
          </div>
          <div class="right">
            <p>gap to keep</p>
            <p class="huge">{card.gap}</p>
            <p>{card.cars.map((c) => `${c.way} ${c.count}`).join(' · ')}</p>
            <p>
              <small>cars, this rail</small>
            </p>
          </div>
        </div>
        <p>{card.sentence}</p>
        <ul>
          {card.heeds.map((text) => (
            <li key={text}>
              <strong>{text}</strong>
            </li>
          ))}
          {card.moreHeeds > 0 && <li>and {card.moreHeeds} more: see the full answer</li>}
        </ul>
        <div class="strip still">
          <Drawing scene={strip} />
        </div>
        <div class="card-columns">
          <div>
            <table>
              <thead>
                <tr>
                  <th>from – to</th>
                  <th>at most</th>
                  <th>because of</th>
                </tr>
              </thead>
              <tbody>
                {card.speeds.map((s) => (
                  <tr key={s.where}>
                    <td>{s.where}</td>
                    <td>
                      <strong>{s.speed}</strong>
                    </td>
                    <td>{s.why}</td>
                  </tr>
                ))}
              </tbody>
            </table>
            <p>
              <small>Assumed: {card.assumptions}.</small>
            </p>
            <p>
              <small>
                <strong>{card.cautions}</strong>
              </small>
            </p>
          </div>
          <div>
            <h2>Braking points</h2>
            {card.braking.length === 0 ? (
              <p>none booked</p>
            ) : (
              card.braking.map((text) => <p key={text}>{text}</p>)
            )}
            {square.value !== '' ? (
              <img class="square" src={square.value} alt="Code that carries this outing to another phone" />
            ) : (
              <p>
                <small>This outing is too large for a code: pass on its file.</small>
              </p>
            )}
          </div>
        </div>
        <div class="card-seats">
          <h2>Seats, front first</h2>
          <dl>
            {card.seating.map(({ vehicle, seats }) => (
              <div key={vehicle}>
                <dt>{vehicle}</dt>
                <dd>{seats}</dd>
              </div>
            ))}
          </dl>
        </div>
      </article>
    </>
  );
}
