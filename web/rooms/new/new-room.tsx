/** One's own train and line in four steps: the word grows on top, each step asks what is known. */
import './new.css';
import { useEffect } from 'preact/hooks';
import { type Question, questions } from '../../../desk/new/questions.ts';
import { lackOf, tellMissing } from '../../../desk/new/say.ts';
import { tellSeated } from '../../../desk/new/seats.ts';
import { sentence } from '../../../desk/sentence.ts';
import { tellVerdict } from '../../../words/verdict.ts';
import { freeName, openOwn, openShelf } from '../../parts/shelf.ts';
import { type Json, settings, speech } from '../../state/session.ts';
import { Ask } from './ask.tsx';
import { BringLine } from './bring-line.tsx';
import {
  askedNow,
  brought,
  clear,
  fromDevice,
  growing,
  growth,
  live,
  refused,
  replies,
  step,
  stepAfter,
  told,
} from './draft.ts';

export function Room() {
  useEffect(() => {
    void openShelf();
    void fromDevice();
    return live();
  }, []);
  return (
    <div class="own">
      <Grown />
      <Steps />
      <Step key={step.value} question={step.value} />
      <Onward />
    </div>
  );
}

/** As many as leave room for the question. */
const SHOWN = 2;
const shapes = { go: '●', limits: '▲', hold: '■', unknown: '?' } as const;

/** The word as far as it has grown, and what it still wants. */
function Grown() {
  const { verdict, busy } = growing.value;
  const now = told.value;
  const { missing } = growth.value;
  const word = tellVerdict(verdict);
  const wanting = tellMissing(growth.value);
  return (
    <section class={`grown ${verdict}`} aria-label="The word so far">
      <p class="word" role="status">
        <span aria-hidden="true">{shapes[verdict]}</span> {busy ? 'reckoning …' : word}
        {verdict === 'unknown' && !busy ? ' yet' : ''}
      </p>
      {wanting !== '' && <p>{wanting}</p>}
      {wanting === '' && now && <p>{sentence(now.answer, { ...speech.value, outing: now.asked.outing })}</p>}
      {missing.length > 0 && (
        <p class="wants">
          Measure:{' '}
          {missing.slice(0, SHOWN).map((key) => {
            const lack = lackOf(key, settings.value.wording);
            return (
              <button key={key} type="button" onClick={() => goTo(lack.question, key)}>
                {lack.named}
              </button>
            );
          })}
          {missing.length > SHOWN && ` and ${missing.length - SHOWN} more`}
        </p>
      )}
      {refused.value.length > 0 && (
        <ul role="alert">
          {refused.value.map((p) => (
            <li key={p.message}>{p.message}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** To a field, wherever it is asked. */
function goTo(question: Question, key: string): void {
  step.value = question;
  requestAnimationFrame(() => {
    const field = document.getElementById(`new-${key}`);
    field?.scrollIntoView({ block: 'center' });
    field?.focus();
  });
}

function Steps() {
  return (
    <nav class="steps" aria-label="Four questions">
      {questions.map(({ id, title }) => (
        <button
          key={id}
          type="button"
          aria-current={step.value === id ? 'step' : undefined}
          onClick={() => {
            step.value = id;
          }}
        >
          {title}
        </button>
      ))}
    </nav>
  );
}

const asks: Readonly<Record<Question, string>> = {
  engine: 'What pulls?',
  cars: 'What does it pull?',
  people: 'Who rides?',
  line: 'On which line?',
};

function Step({ question }: { readonly question: Question }) {
  const keys = askedNow.value.map((key) => ({ key, ask: lackOf(key, settings.value.wording) }));
  const front = keys.filter(({ ask }) => ask.front);
  const more = keys.filter(({ ask }) => !ask.front);
  return (
    <section>
      <h1>{asks[question]}</h1>
      {question === 'people' && <Seats />}
      {question === 'line' && <BringLine />}
      {front.map(({ key, ask }) => (
        <Ask key={key} name={key} lack={ask} />
      ))}
      {question === 'line' && !brought.value.line && growth.value.paper && (
        <p>
          Where grade and curves lie is not known: they are laid out for the worst, and distances are those of
          the layout.
        </p>
      )}
      {more.length > 0 && (
        <details class="more">
          <summary>If you know more</summary>
          {more.map(({ key, ask }) => (
            <Ask key={key} name={key} lack={ask} />
          ))}
        </details>
      )}
    </section>
  );
}

/** More people than seats: with how many there are of each, and what to do. */
function Seats() {
  const said = tellSeated(growth.value.seated);
  return (
    <p class="seats" role="status">
      {said !== '' && (
        <>
          <strong>{said}</strong>{' '}
          <button type="button" onClick={() => goTo('cars', 'cars.count')}>
            To the cars
          </button>
        </>
      )}
    </p>
  );
}

/** The next question, or, after the last, the paper. */
function Onward() {
  const next = questions.find(({ id }) => id === stepAfter());
  const { paper } = growth.value;
  const take = async (made: Json): Promise<void> => {
    await openOwn({ ...made, name: freeName(String(made['name'])) });
    clear();
    location.hash = 'answer';
  };
  return (
    <div class="onward">
      {next ? (
        <button
          type="button"
          class="main"
          onClick={() => {
            step.value = next.id;
            scrollTo({ top: 0 });
          }}
        >
          {next.title}
        </button>
      ) : (
        <button
          type="button"
          class="main"
          disabled={!paper || refused.value.length > 0}
          onClick={() => paper && void take(paper)}
        >
          Keep it and look at the whole answer
        </button>
      )}
      <button type="button" onClick={clear} disabled={!begun()}>
        Begin again
      </button>
    </div>
  );
}

const begun = (): boolean =>
  Object.values(replies.value).some((text) => text !== '') || Object.keys(brought.value).length > 0;
