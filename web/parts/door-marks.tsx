/** Small drawings beside words; never instead of them. */
import type { Door } from '../doors.ts';

const drawn = {
  fill: 'none',
  stroke: 'currentColor',
  'stroke-width': 2,
  'stroke-linejoin': 'round',
} as const;

const doorMarks: Readonly<Record<Door, preact.JSX.Element>> = {
  // A board that says whether.
  answer: (
    <>
      <path d="M12 13v9" />
      <path d="M5 2h14l2 5.5-2 5.5H5L3 7.5z" />
      <path d="m8.5 7.5 2.5 2.5 4.5-5" />
    </>
  ),
  train: (
    <>
      <path d="M1 15h10v-3H1zM14 15h9V9h-9z" />
      <path d="M11 14h3M17 9V5" />
      <path d="M4 9.5a1.6 1.6 0 1 0 0-.1M8 9.5a1.6 1.6 0 1 0 0-.1" stroke-width="1.6" />
      <path d="M3.5 18.5a1.5 1.5 0 1 0 3 0 1.5 1.5 0 1 0-3 0M16 18.5a1.5 1.5 0 1 0 3 0 1.5 1.5 0 1 0-3 0" />
    </>
  ),
  line: (
    <>
      <path d="M1 18h4l6-9h4l5 7h3" />
      <path d="M1 22h22" stroke-dasharray="2 2.5" />
    </>
  ),
  tools: (
    <>
      <path d="M3 20.5 11.5 12" stroke-width="3" />
      <path d="M20.5 6.5a5 5 0 0 1-7 6 5 5 0 0 1-1-6.500 5 5 0 0 1 5-2.500l-2.500 3 2 2z" />
    </>
  ),
  mine: (
    <>
      <path d="M5 2h10l4 4v16H5z" />
      <path d="M15 2v4h4M8.500 11h7M8.500 15h7" />
    </>
  ),
};

export const DoorMark = ({ of }: { readonly of: Door }) => (
  <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true" {...drawn}>
    {doorMarks[of]}
  </svg>
);

const marks = {
  undo: 'M9 4 4 9l5 5M4 9h10a6 6 0 0 1 0 12H9',
  redo: 'm15 4 5 5-5 5M20 9H10a6 6 0 0 0 0 12h5',
  // Three slides, each set otherwise.
  settings: 'M3 6h8m4 0h6M3 12h3m4 0h11M3 18h10m4 0h4M11 4v4M6 10v4M13 16v4',
} as const;

export const Mark = ({ of }: { readonly of: keyof typeof marks }) => (
  <svg width="22" height="22" viewBox="0 0 24 24" aria-hidden="true" {...drawn}>
    <path d={marks[of]} />
  </svg>
);
