/** A sheet for each vehicle to measure by: a box for every reading, what is known printed small in it, and where to put the calliper. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import type { Letters } from '../../desk/font-letters.ts';
import { printable, printableSvg } from '../../desk/printable.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import type { Wheelset } from '../../engine/things/wheel/types.ts';
import { calliper, tape } from '../../words/calliper.ts';
import { say as sayIn, type Voice } from '../../words/voice.ts';
import { measuredHow, measuredNames } from '../../words/worksheet.ts';
import { cardFace, fontsOf } from '../card-paper.ts';
import { sceneToSvg } from '../strip/scene.ts';
import { calliperPicture, calliperPictures } from './calliper-pictures.ts';

const pages = { a4: { width: 595.28, height: 841.89 }, letter: { width: 612, height: 792 } } as const;
export type WorksheetPage = keyof typeof pages;
const EDGE = 34;
const BOX = 18;
const READINGS = 4;
const SPARE = 3;

export interface WorksheetAsk {
  readonly vehicles: readonly Vehicle[];
  readonly page: WorksheetPage;
  readonly voice: Voice;
}

/** Vehicles that are alike in all but their id have a sheet each: each is measured. */
export function worksheetDocument(
  { vehicles, page, voice }: WorksheetAsk,
  has: Letters,
): TDocumentDefinitions {
  const say = (text: string): string => printable(text, has);
  const width = pages[page].width - 2 * EDGE;
  return {
    pageSize: { ...pages[page] },
    pageMargins: [EDGE, EDGE, EDGE, EDGE],
    info: { title: 'Worksheets', creator: 'Heedway' },
    defaultStyle: { font: cardFace.name, fontSize: 8.5 },
    footer: (at: number, of: number): Content => ({
      text: `Write every figure with its unit. What is known is printed small: write beside it. A dash: nothing to measure there. ${at} of ${of}`,
      fontSize: 7.5,
      alignment: 'center',
      margin: [0, 6, 0, 0],
    }),
    content: [
      ...vehicles.flatMap((v, i): Content[] => [
        { text: say(v.name), fontSize: 16, bold: true, ...(i > 0 ? { pageBreak: 'before' as const } : {}) },
        line(['measured by', 'on', 'instrument']),
        ...sheetOf(v, voice).map((t) => table(t, say)),
      ]),
      // Once for them all.
      { text: 'Where to put the calliper', fontSize: 16, bold: true, pageBreak: 'before' },
      pictured(width, say, has),
    ],
  };
}

interface Boxes {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Its first boxes are written into too. */
  readonly open?: true;
}

const known = (si: number | undefined, voice: Voice): string =>
  si === undefined ? '' : calliper(si, voice, 'nearest');

const taped = (si: number | undefined, voice: Voice): string =>
  si === undefined ? '' : tape(si, voice, 'nearest');

/** Nothing to fill in. */
const NONE = '—';

/** Every box of one vehicle; what is known of it stands in its box. */
export function sheetOf(vehicle: Vehicle, voice: Voice): Boxes[] {
  const axles = vehicle.groups.reduce((sum, g) => sum + g.axles, 0);
  const wheelsets: readonly (Wheelset | undefined)[] = Array.from(
    { length: Math.max(axles, vehicle.wheelsets?.length ?? 0) },
    (_, i) => vehicle.wheelsets?.[i],
  );
  const named = (w: Wheelset | undefined, i: number): string => w?.name ?? `axle ${i + 1}`;
  const say = (si: number | undefined): string => known(si, voice);
  const rule = (si: number | undefined): string => taped(si, voice);
  const angle = (si: number | undefined): string =>
    si === undefined ? '' : sayIn(voice, { si, kind: 'angle' }, 'down');
  return [
    {
      title: 'Back to back, four places round; diameters on the tread',
      head: [
        'axle',
        ...Array.from({ length: READINGS }, (_, k) => `reading ${k + 1}`),
        'left wheel',
        'right wheel',
      ],
      rows: wheelsets.map((w, i) => [
        named(w, i),
        ...Array.from({ length: READINGS }, (_, k) => say(w?.backToBack?.[k])),
        say(w?.diameters?.[0]),
        say(w?.diameters?.[1]),
      ]),
    },
    {
      title: 'Flanges and treads',
      head: ['axle', 'flange, left', 'flange, right', 'flange height', 'hollow', 'taper', 'width'],
      rows: wheelsets.map((w, i) => [
        named(w, i),
        say(w?.flangeThickness?.low),
        say(w?.flangeThickness?.high),
        say(w?.flangeHeight),
        say(w?.hollow),
        angle(w?.taper),
        say(w?.width),
      ]),
    },
    {
      title: 'Couplers',
      head: [
        'end',
        'height, empty',
        'height, all seats taken',
        'face',
        'shank',
        'swing aside',
        'turns up and down',
      ],
      rows: (['front', 'rear'] as const).map((end) => {
        const { height, face, shank, sidePlay, swing, pitch } = vehicle[end];
        const aside = sidePlay === undefined ? angle(swing?.low) : rule(sidePlay);
        return [end, rule(height), '', rule(face), rule(shank), aside, angle(pitch?.low)];
      }),
    },
    {
      title: 'Low parts, from the front end and above the rail, empty',
      head: ['part', 'from the front', 'height'],
      rows: [
        ...(vehicle.lowParts ?? []).map((p) => [p.name, rule(p.at), rule(p.height)]),
        ...Array.from({ length: Math.max(1, SPARE - (vehicle.lowParts?.length ?? 0)) }, () => ['', '', '']),
      ],
      open: true,
    },
    {
      title: 'Outline, people seated, as it changes from below to above',
      head: ['height', 'left', 'right', 'height', 'left', 'right'],
      rows: Array.from({ length: SPARE + 1 }, () => ['', '', '', '', '', '']),
      open: true,
    },
    ...longGroups(vehicle, rule),
    {
      title: 'The whole body, people seated; what riders step on, empty',
      head: ['what', 'width', 'height', 'underside'],
      rows: [
        [
          'body',
          rule(vehicle.envelope?.width),
          rule(vehicle.envelope?.height),
          rule(vehicle.envelope?.underside),
        ],
        ...(vehicle.seats.some((seat) => !seat.driver)
          ? [['what riders step on', rule(vehicle.step?.width), rule(vehicle.step?.height), NONE]]
          : []),
      ],
    },
  ];
}

/** None of a vehicle whose groups have two axles or one: there no middle axle binds or hangs. */
const longGroups = ({ groups }: Vehicle, rule: (si: number | undefined) => string): Boxes[] => {
  const long = groups.filter((g) => g.axles > 2);
  return long.length === 0
    ? []
    : [
        {
          title:
            'Groups of three axles or more: how far a middle axle moves in the frame, jacked up and let hang',
          head: ['axle group', 'up', 'down', 'to either side'],
          rows: long.map((g) => [g.name, rule(g.travel), rule(g.travel), rule(g.middlePlay)]),
        },
      ];
};

const line = (words: readonly string[]): Content => ({
  columns: words.map((text) => ({ text: `${text} ______________________` })),
  margin: [0, 4, 0, 4],
});

const table = ({ title, head, rows, open }: Boxes, say: (text: string) => string): Content => ({
  stack: [
    { text: say(title), bold: true, margin: [0, 6, 0, 1] },
    {
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: [open ? '*' : 'auto', ...head.slice(1).map(() => '*')],
        heights: (row: number) => (row === 0 ? 9 : BOX),
        body: [
          head.map((text) => ({ text: say(text) })),
          ...rows.map((row) => row.map((text, i) => ({ text: say(text), fontSize: i === 0 ? 8.5 : 6.5 }))),
        ],
      },
    },
  ],
  unbreakable: true,
});

/** Two beside each other, each with how it is read. */
function pictured(width: number, say: (text: string) => string, has: Letters): Content {
  const half = (width - 12) / 2;
  const cells = calliperPictures.map(
    (of): Content => ({
      stack: [
        { text: say(measuredNames[of]), bold: true },
        {
          svg: fontsOf(printableSvg(sceneToSvg(calliperPicture(of, measuredNames[of])), has)),
          width: half * 0.72,
        },
        { text: say(measuredHow[of]), fontSize: 7.5 },
      ],
      margin: [0, 0, 0, 4],
    }),
  );
  const rows = Array.from({ length: Math.ceil(cells.length / 2) }, (_, i): Content => {
    const [left, right = { text: '' }] = cells.slice(2 * i, 2 * i + 2);
    return { columns: [left, right], columnGap: 12, unbreakable: true };
  });
  return { stack: rows };
}
