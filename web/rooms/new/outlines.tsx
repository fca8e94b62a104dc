/** Outlines of engines, drawn by us: which kind is meant is seen before it is read. */
import type { JSX } from 'preact';

const wheels = (...at: readonly (readonly [number, number])[]): JSX.Element[] =>
  at.map(([x, r]) => <circle key={x} cx={x} cy={34 - r} r={r} />);

const shapes: Readonly<Record<string, JSX.Element>> = {
  steam: (
    <>
      <path d="M8 8h14v9h26V7h5v10h5q4 0 4 4v5H8z" />
      {wheels([20, 7], [36, 7], [52, 7])}
    </>
  ),
  battery: (
    <>
      <path d="M6 12h34V6h22v20H6z" />
      <path d="M24 12l-6 8h5l-3 6 9-9h-5l3-5z" fill="var(--sheet)" />
      {wheels([16, 4], [26, 4], [46, 4], [56, 4])}
    </>
  ),
  petrol: (
    <>
      <path d="M6 8h30v6h26v12H6zM50 8h4v6h-4z" />
      {wheels([16, 4], [26, 4], [46, 4], [56, 4])}
    </>
  ),
};

export const engineOutline = (kind: string): JSX.Element => (
  <svg viewBox="0 0 68 36" aria-hidden="true" fill="currentColor">
    {shapes[kind]}
  </svg>
);
