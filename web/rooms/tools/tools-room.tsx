/** What can be looked at closely, each by the question that it answers. */
import '../../look/rooms.css';
import './tools.css';
import { place } from '../../doors.ts';
import { FindBox } from '../../parts/find.tsx';

const builds: readonly { readonly part: string; readonly asks: string; readonly tells: string }[] = [
  {
    part: 'cylinder',
    asks: 'Which cylinder and lever?',
    tells: 'Stock bores for the cars of this outing, each proved by stopping again.',
  },
  {
    part: 'seat',
    asks: 'How high may the seat be?',
    tells: 'With people who lean, on this line at its speed, and what sets it.',
  },
  { part: 'chain', asks: 'Which chain?', tells: 'Size and grade at each gap, and what to buy.' },
];

const tools: readonly { readonly id: string; readonly title: string; readonly asks: readonly string[] }[] = [
  {
    id: 'brakes',
    title: 'Brakes',
    asks: ['How hard does each vehicle brake, and which slides first?', 'What is in reserve, what is lost?'],
  },
  {
    id: 'balance',
    title: 'Balance',
    asks: ['Does a car stay up when somebody leans?', 'What would ballast or a lower seat do?'],
  },
  {
    id: 'couplers',
    title: 'Couplers',
    asks: ['How hard do they pull and push?', 'How far do they swing, and which chain holds?'],
  },
  {
    id: 'fit',
    title: 'Does it fit?',
    asks: [
      'Does it clear what stands beside the line, and what must be left clear?',
      'Do wheels and couplers suit this line?',
    ],
  },
  {
    id: 'parting',
    title: 'If it parts',
    asks: ['Does the tail stop by itself, and where does it roll to?', 'How far back must a flag stand?'],
  },
  {
    id: 'sums',
    title: 'Sums',
    asks: ['One formula with your own figures', 'Gap, grade, stop, curve, chain, cylinder and others'],
  },
];

export const Room = () => (
  <>
    <h1>Tools</h1>
    <FindBox called={place.value.part === 'find'} />
    <h2>To measure</h2>
    <ul class="tool-list">
      <li>
        <a href="#measure">
          <strong>What should I measure, and how?</strong>
          <span>
            Tests with a stopwatch, a spring balance, a tape or scales; what each does to the answer.
          </span>
        </a>
      </li>
    </ul>
    <h2>To build</h2>
    <ul class="tool-list">
      {builds.map(({ part, asks, tells }) => (
        <li key={part}>
          <a href={`#builder/${part}`}>
            <strong>{asks}</strong>
            <span>{tells}</span>
          </a>
        </li>
      ))}
    </ul>
    <h2>To look closely</h2>
    <ul class="tool-list">
      {tools.map(({ id, title, asks }) => (
        <li key={id}>
          <a href={`#${id}`}>
            <strong>{title}</strong>
            {asks.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </a>
        </li>
      ))}
    </ul>
  </>
);
