/** The running card on the screen and, by the browser's own printing or as a PDF, on A5 or half-letter. */
import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { renderSVG } from 'uqr';
import { fileOf, type Told } from '../../../desk/asked.ts';
import { type Card, cardFile, cardMark, runningCard, TRIED } from '../../../desk/card.ts';
import { type Handed, handed, handedWords } from '../../../desk/outing-code.ts';
import { writeFile } from '../../../papers/index.ts';
import { cardDrawings } from '../../../views/card-made.ts';
import {
  type CardOnPaper,
  cardDocument,
  FROM_ABOVE,
  type Paper,
  paperNames,
} from '../../../views/card-paper.ts';
import { cardPlan, cardStrip } from '../../../views/card-strip.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { StripInks } from '../../parts/inks.tsx';
import { later } from '../../parts/later.tsx';
import { noWord } from '../../parts/no-word.ts';
import { save, saveJson } from '../../parts/save.ts';
import { looked, silence } from '../../state/at-hand.ts';
import { type Json, speech, told } from '../../state/session.ts';
import { version } from '../../state/version.ts';

export function Room() {
  const now = told.value;
  return now && looked.value ? <OneCard told={now} /> : <NoCard />;
}

/** On the screen and on paper alike: there is nothing that anybody could run by. */
function NoCard() {
  return (
    <>
      <p class="row no-print">
        <button type="button" class="main" disabled>
          Print
        </button>
        {papers.map((paper) => (
          <button key={paper} type="button" disabled>
            Save as PDF, {paperNames[paper]}
          </button>
        ))}
      </p>
      <section class="no-card">
        <h1>No running card</h1>
        {told.value ? (
          <p>The records of this device are being asked.</p>
        ) : (
          <>
            <p>{noWord()}</p>
            <p>There is no answer to the outing as it stands now, and so nothing to run by.</p>
          </>
        )}
      </section>
    </>
  );
}

const papers: readonly Paper[] = ['half-letter', 'a5'];

/** The codes of that outing and no other; null while they are made, a moment after the card is there. */
function useHanded({ asked }: Told): Handed | undefined | null {
  const made = useSignal<{ readonly file: string; readonly handed: Handed | undefined } | null>(null);
  const file = useMemo(() => JSON.stringify(fileOf(asked)), [asked]);
  useEffect(() => {
    const soon = setTimeout(() => {
      made.value = { file, handed: handed(JSON.parse(file)) };
    }, 50);
    return () => clearTimeout(soon);
  }, [file]);
  return made.value?.file === file ? made.value.handed : null;
}

function OneCard({ told: now }: { readonly told: Told }) {
  const passed = useHanded(now);
  const card = useMemo(
    () => runningCard(now, speech.value, version, silence.value),
    [now, speech.value, silence.value],
  );
  const strip = useMemo(() => cardStrip(now, speech.value), [now, speech.value]);
  const plan = useMemo(() => cardPlan(now, speech.value), [now, speech.value]);
  const making = useSignal(false);
  const said = useSignal('');
  const chosen = useSignal<readonly Json[]>([]);
  const makePdf = async (paper: Paper): Promise<void> => {
    making.value = true;
    const others = chosen.value;
    const name = cardFile(now, others.length > 0 ? 'cards.pdf' : 'card.pdf');
    const cards: CardOnPaper[] = [{ card, ...cardDrawings(strip, plan), handed: passed ?? undefined }];
    try {
      for (const other of others) {
        said.value = `Asking for ${String(other['name'])} …`;
        const { dayCard } = await import('./day-cards.ts');
        cards.push(await dayCard(other, speech.value));
      }
    } catch (fault) {
      said.value = `${fault instanceof Error ? fault.message : String(fault)}: no PDF was made.`;
      making.value = false;
      return;
    }
    said.value = 'Making the PDF …';
    try {
      const { cardPdf } = await import('./card-pdf.ts');
      const pdf = await cardPdf((has) => cardDocument(cards, paper, has));
      if (told.value?.asked.id === now.asked.id) {
        save(pdf, name);
        said.value = `Saved as ${name}${cards.length > 1 ? `, ${cards.length} cards` : ''}`;
      } else said.value = 'The outing has changed meanwhile: nothing was saved.';
    } catch {
      said.value = 'The PDF could not be made here: print the card instead.';
    }
    making.value = false;
  };
  return (
    <>
      <p class="row no-print">
        <button type="button" class="main" onClick={() => print()}>
          Print
        </button>
        {papers.map((paper) => (
          <button
            key={paper}
            type="button"
            disabled={making.value || passed === null}
            onClick={() => void makePdf(paper)}
          >
            Save as PDF, {paperNames[paper]}
          </button>
        ))}
        <button
          type="button"
          onClick={() => saveJson(writeFile(fileOf(now.asked)), cardFile(now, 'card.json'))}
        >
          Save the card's file
        </button>
        <Share told={now} passed={passed} said={said} />
        <a class="button" href="#leave">
          Leave
        </a>
        <span role="status">{said.value}</span>
      </p>
      <DayTrains chosen={chosen} />
      <style>{sideMarks(card)}</style>
      <article class="card">
        <CardHead card={card} />
        {card.records !== '' && (
          <p class="card-tried">
            <strong>{card.records}</strong>
          </p>
        )}
        {card.sentence !== '' && <p>{card.sentence}</p>}
        {card.tried.length > 0 && (
          <section class="card-tried" aria-label="Tried">
            <p>
              <strong>{TRIED}</strong>
            </p>
            <ul>
              {card.tried.map((change) => (
                <li key={change}>{change}</li>
              ))}
            </ul>
          </section>
        )}
        <ul class="heeds">
          {card.heeds.map(({ number, text }) => (
            <li key={number}>
              <span class="number">{number}</span> <strong>{text}</strong>
            </li>
          ))}
        </ul>
        <StripInks />
        <div class="strip still" tabIndex={0} role="region" aria-label="Strip of the line">
          <Drawing scene={strip} />
        </div>
        <div class="card-columns">
          <CardSpeeds card={card} />
          <div>
            <h2>Braking points</h2>
            {card.braking.length === 0 ? (
              <p>none booked</p>
            ) : (
              card.braking.map((text) => <p key={text}>{text}</p>)
            )}
            {passed?.codes.map((code, i) => (
              <Square
                key={code}
                code={code}
                which={passed.codes.length > 1 ? `${i + 1} of ${passed.codes.length}` : ''}
              />
            ))}
            {passed !== null && (
              <p>
                <small>{handedWords(passed)}</small>
              </p>
            )}
          </div>
        </div>
        <div class={plan ? 'card-last' : ''}>
          <CardSeats card={card} />
          {plan && (
            <section class="card-plan">
              <h2>{FROM_ABOVE}</h2>
              <div class="strip still" tabIndex={0} role="region" aria-label={FROM_ABOVE}>
                <Drawing scene={plan} />
              </div>
            </section>
          )}
        </div>
      </article>
    </>
  );
}

/** A link to copy, and the phone's own way of passing on, with the card's file where it takes files. */
function Share({
  told: now,
  passed,
  said,
}: {
  readonly told: Told;
  readonly passed: Handed | undefined | null;
  readonly said: Signal<string>;
}) {
  const link = passed ? `${location.href.split('#')[0]}#${passed.fragment}` : undefined;
  const copy = async (): Promise<void> => {
    if (link === undefined) return;
    try {
      await navigator.clipboard.writeText(link);
      said.value = 'The link is copied: it opens this outing on any device, and nothing is sent to a server.';
    } catch {
      said.value = 'The link could not be copied here: share the file or the code.';
    }
  };
  const share = async (): Promise<void> => {
    const name = cardFile(now, 'card.json');
    const file = new File([writeFile(fileOf(now.asked))], name, { type: 'application/json' });
    const what = { title: now.asked.outing.name, ...(link === undefined ? {} : { url: link }) };
    const whole = { ...what, files: [file] };
    try {
      await navigator.share(navigator.canShare?.(whole) ? whole : what);
    } catch (fault) {
      if (!(fault instanceof DOMException && fault.name === 'AbortError'))
        said.value = 'It could not be shared here: copy the link, or save the file.';
    }
  };
  return (
    <>
      <button type="button" disabled={link === undefined} onClick={() => void copy()}>
        Copy link
      </button>
      {'share' in navigator && (
        <button type="button" disabled={passed === null} onClick={() => void share()}>
          Share
        </button>
      )}
    </>
  );
}

/** Each side of the printed card says whose it is and how many there are. */
function sideMarks(card: Card): string {
  const whose = cardMark({ ...card, title: card.title.slice(0, 60) });
  // By their numbers, letters cannot end the text that they stand in.
  const quoted = Array.from(whose, (letter) => `\\${letter.codePointAt(0)?.toString(16)} `).join('');
  return `@page card { @bottom-left { content: "${quoted}"; font: 700 7pt sans-serif; white-space: nowrap } @bottom-right { content: counter(page) " of " counter(pages); font: 7pt sans-serif } }`;
}

function CardHead({ card }: { readonly card: Card }) {
  return (
    <div class="card-head">
      <div>
        <h1>{card.verdict.toUpperCase()}</h1>
        {card.notToRun !== '' && <p class="big">{card.notToRun}</p>}
        <p class="big">{card.title}</p>
        {card.invented !== '' && (
          <p>
            <strong>({card.invented})</strong>
          </p>
        )}
        <p>
          {card.train} · {card.line}
        </p>
        <p class="big">
          {card.day} · rail {card.rail} · {card.light}
        </p>
      </div>
      <div class="right">
        <p>gap to keep</p>
        <p class="huge">{card.gap}</p>
        <p>{card.cars.join(' · ')}</p>
        <p>
          <small>cars, this rail</small>
        </p>
      </div>
    </div>
  );
}

function CardSpeeds({ card }: { readonly card: Card }) {
  return (
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
                {s.posts !== '' && <small> {s.posts}</small>}
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
      <p>
        <small>{card.made}</small>
      </p>
    </div>
  );
}

function Square({ code, which }: { readonly code: string; readonly which: string }) {
  const drawn = useMemo(
    () => `data:image/svg+xml,${encodeURIComponent(renderSVG(code, { ecc: 'L', border: 2, pixelSize: 2 }))}`,
    [code],
  );
  const alt = `Code that carries this outing to another phone${which === '' ? '' : `, ${which}`}`;
  return <img class="square" src={drawn} alt={alt} />;
}

function CardSeats({ card }: { readonly card: Card }) {
  return (
    <div class="card-seats">
      <h2>Seats, front first</h2>
      <dl>
        {card.seating.map(({ vehicle, seats }, i) => (
          <div key={i}>
            <dt>{vehicle}</dt>
            <dd>{seats.map((s) => s.name || '–').join(' · ')}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

/** Most days there is one train. */
const DayTrains = later<{ readonly chosen: Signal<readonly Json[]> }>(
  async () => (await import('./day-trains.tsx')).DayTrains,
);
