/** Our canonical text is the published one, letter by letter. */
import { expect, it } from 'vitest';
import { canonical } from '../../../../records/canonical.ts';
import { printedIn } from '../../../support/measured.ts';

const printed = printedIn(import.meta.url, 'B');
const memory = printedIn(import.meta.url, 'C');

/** Letters in which two texts differ. */
const differing = (a: string, b: string): number =>
  Array.from({ length: Math.max(a.length, b.length) }, (_, i) => i).filter((i) => a[i] !== b[i]).length;

const files = {
  weird: [
    String.raw`{"\u20ac": "Euro Sign", "1": "One", "\u0080": "Control\u007f", "\ud83d\ude02": "Smiley",
      "\u00f6": "Latin Small Letter O With Diaeresis", "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "</script>": "Browser Challenge"}`,
    '{"1":"One","</script>":"Browser Challenge","\u0080":"Control\u007f","ö":"Latin Small Letter O With Diaeresis","€":"Euro Sign","😂":"Smiley","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
  ],
  values: [
    String.raw`{"numbers": [1E30, 4.50, 333333333.33333329, 2e-3, 0.000000000000000000000000001],
      "escaping": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}`,
    String.raw`{"escaping":"€$\u000f\nA'B\"\\\\\"/","literals":[null,true,false],"numbers":[1e+30,4.5,333333333.3333333,0.002,1e-27]}`,
  ],
  structures: [
    '{"1": {"f": {"f": "hi","F": 5} ,"\\n": 56.0}, "10": { }, "": "empty", "a": { }, "111": [ { } ], "A": { }}',
    '{"":"empty","1":{"\\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{}],"A":{},"a":{}}',
  ],
} as const;

it.each(Object.entries(files))('%s', (name, [given, expected]) => {
  const ours = canonical(JSON.parse(given));
  expect(ours).toBe(expected);
  printed.figure(`letters that differ in ${name}`, differing(ours, expected), 0, 0, 'letters');
});

/** IEEE 754 double by its bits, and as it is written. */
const numbers: readonly (readonly [bits: string, text: string])[] = [
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555555', '333333333.3333333'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
];

it('numbers of the appendix', () => {
  const wrong = numbers.filter(([bits, text]) => {
    const view = new DataView(new ArrayBuffer(8));
    view.setBigUint64(0, BigInt(`0x${bits}`));
    return canonical(view.getFloat64(0)) !== text;
  });
  expect(wrong).toEqual([]);
  memory.figure('numbers that differ', wrong.length, 0, 0, 'numbers');
});

it('what JSON cannot hold is refused', () => {
  for (const none of [
    Number.NaN,
    Number.POSITIVE_INFINITY,
    undefined,
    '\ud800',
    { a: undefined },
    ['\udc00x'],
  ])
    expect(() => canonical(none)).toThrow(RangeError);
});
