/** The accuracy page: topic, source, grade, number of figures, worst error, where. */
import { measure, truthSources } from './truth.ts';

const head = `# Accuracy

Made by \`npm run accuracy\` from the outside figures under \`tests/truth/sums\`; a test keeps it up to date.
Grade A: read in the primary text. B: read in a secondary page. C: from memory. D: exact law or own arithmetic.
"Used" is the share of what the source's print allows (half the last digit, unless its SOURCE.md says why not).

| topic | source | grade | figures | worst error | used | where |
|---|---|---|---|---|---|---|
`;

export function accuracyPage(): string {
  const rows = truthSources().map(({ topic, source, grade, cases }) => {
    const measured = cases.map((truth) => ({ truth, ...measure(truth) }));
    const worst = measured.reduce((a, b) =>
      b.used > a.used || (b.used === a.used && b.error > a.error) ? b : a,
    );
    const error = `${worst.error.toPrecision(2)} ${worst.truth.unit}`.trim();
    return {
      topic,
      text: `| ${topic} | ${source} | ${grade} | ${cases.length} | ${error} | ${(worst.used * 100).toFixed(0)} % | ${worst.truth.sum} = ${worst.truth.expected} |`,
    };
  });
  rows.sort((a, b) => (a.topic < b.topic ? -1 : a.topic > b.topic ? 1 : 0));
  return head + rows.map((r) => r.text).join('\n') + independent;
}

const independent = `

## Against independent code

| what | against | cases | error | test |
|---|---|---|---|---|
| a stop | \`odex\` on a plain vehicle-by-vehicle right-hand side | 500 random trains and lines | median below 2e-4, 99 % below 1e-3, worst below 3e-3 of the distance | tests/numerics/stop |
| a coast | \`odex\` in distance | 500 | below 1e-3 of the speed | tests/numerics/stop |
| a climb | \`ode-rk4\` in distance | 500 | below 1e-3 of the speed | tests/numerics/stop |
| cars tipping in a curve | \`cannon-es\`, a rigid-body engine | 60 random cars | within 2 % of the speed | tests/numerics/balance-rigid-body |
| halves of a parted train, where they rest | \`ode-rk4\` on a plain right-hand side | 320 | within 5 cm | tests/numerics/parting |
| a tail on an even grade: speed, way, time | closed form | 7 | within 1e-4 | tests/truth/parting/closed-forms |
| a tail rolling on a plane | \`cannon-es\`, a rigid-body engine | 5 | within 2 % | tests/truth/parting/rigid-body |
| peak forces in a row of vehicles | \`odex\` at 1e-9 on a plain right-hand side | 209 random rows | within 0.7 % of the greatest, bands within 0.3 % | tests/numerics/coupling |
| two vehicles that take up their slack | \`cannon-es\`, a rigid-body engine | 10 | within 0.5 % | tests/truth/coupling/rigid-body |
| filling and emptying of brakes | see docs/brakes | | | tests/truth/brakes, tests/numerics |
`;
