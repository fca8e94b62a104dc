/**
 * The inks of the drawing: one table that says how each kind of line, fill and lettering looks.
 * The screen turns it into a style sheet whose colours are themable variables; files get the same
 * table written into each element.
 */

/** Colours on white paper; a screen theme overrides them as `--ink-…` variables. */
const palette = {
  paper: '#ffffff',
  ink: '#1b2733',
  soft: '#5b6472',
  hair: '#b9b2a0',
  ground: '#e6dfcd',
  steel: '#8d95a0',
  pencil: '#1f5fa6',
  wash: '#cfe0f2',
  limit: '#a5301a',
  caution: '#8a5a00',
  clear: '#1d6a4d',
  body: '#ded6c3',
  bend: '#c8b183',
} as const;

type Colour = keyof typeof palette;

interface Style {
  readonly fill?: Colour | 'none' | 'url(#earth)' | 'url(#cautious)' | 'url(#barred)';
  readonly stroke?: Colour | 'none';
  readonly width?: number;
  readonly dash?: string;
  readonly weight?: number;
  readonly opacity?: number;
  readonly stretch?: number;
  readonly halo?: boolean;
}

const styles = {
  paper: { fill: 'paper', stroke: 'none' },
  frame: { fill: 'none', stroke: 'ink', width: 1.2 },
  hair: { fill: 'none', stroke: 'hair', width: 0.8 },
  dotted: { fill: 'none', stroke: 'hair', width: 0.8, dash: '2 3' },
  ink: { fill: 'none', stroke: 'ink', width: 1.2 },
  fine: { fill: 'none', stroke: 'ink', width: 0.8 },
  bold: { fill: 'none', stroke: 'ink', width: 2.2 },
  nearest: { fill: 'none', stroke: 'limit', width: 2.4 },
  solid: { fill: 'ink', stroke: 'none' },
  open: { fill: 'paper', stroke: 'ink', width: 1.2 },
  earth: { fill: 'ground', stroke: 'none' },
  earthline: { fill: 'none', stroke: 'hair', width: 0.9 },
  rail: { fill: 'none', stroke: 'ink', width: 2 },
  curve: { fill: 'ground', stroke: 'ink', width: 1 },
  bend: { fill: 'none', stroke: 'bend', width: 9, dash: '2.5 1.5' },
  bendsharp: { fill: 'none', stroke: 'caution', width: 11, dash: '2.5 1.5', opacity: 0.75 },
  slick: { fill: 'none', stroke: 'pencil', width: 7, dash: '1 4' },
  platform: { fill: 'none', stroke: 'ink', width: 4.5 },
  portal: { fill: 'soft', stroke: 'ink', width: 1.2 },
  road: { fill: 'none', stroke: 'soft', width: 4 },
  loopend: { fill: 'none', stroke: 'ink', width: 1.4 },
  board: { fill: 'paper', stroke: 'limit', width: 1.6 },
  beam: { fill: 'none', stroke: 'pencil', width: 9, opacity: 0.32 },
  beamlikely: { fill: 'none', stroke: 'pencil', width: 5, opacity: 0.75 },
  planTrain: { fill: 'none', stroke: 'ink', width: 7 },
  lead: { fill: 'none', stroke: 'pencil', width: 1 },
  axis: { fill: 'none', stroke: 'ink', width: 1, dash: '10 3 2 3' },
  limit: { fill: 'none', stroke: 'limit', width: 2.2 },
  limitedge: { fill: 'none', stroke: 'limit', width: 0.9, dash: '2 2' },
  allowed: { fill: 'wash', stroke: 'none', opacity: 0.45 },
  barred: { fill: 'none', stroke: 'limit', width: 0.7, opacity: 0.5 },
  planned: { fill: 'none', stroke: 'soft', width: 1.2, dash: '6 4' },
  likely: { fill: 'pencil', stroke: 'none' },
  cautious: { fill: 'wash', stroke: 'pencil', width: 1.2 },
  hatch: { fill: 'none', stroke: 'pencil', width: 1.1 },
  gap: { fill: 'none', stroke: 'pencil', width: 2.4, dash: '2 3' },
  pencil: { fill: 'none', stroke: 'pencil', width: 1.4 },
  pencilsolid: { fill: 'pencil', stroke: 'none' },
  cursor: { fill: 'none', stroke: 'pencil', width: 1, dash: '5 3' },
  body: { fill: 'body', stroke: 'ink', width: 1.1 },
  engine: { fill: 'ink', stroke: 'ink', width: 1 },
  wheel: { fill: 'paper', stroke: 'ink', width: 1.3 },
  rider: { fill: 'soft', stroke: 'paper', width: 0.7 },
  driver: { fill: 'ink', stroke: 'paper', width: 0.7 },
  seat: { fill: 'none', stroke: 'soft', width: 1.1, dash: '3 2' },
  forbids: { fill: 'limit', stroke: 'paper', width: 1 },
  unknown: { fill: 'ink', stroke: 'paper', width: 1 },
  limits: { fill: 'caution', stroke: 'paper', width: 1 },
  notes: { fill: 'soft', stroke: 'paper', width: 1 },
  harmless: { fill: 'paper', stroke: 'clear', width: 1.2 },
  rollsoff: { fill: 'ground', stroke: 'caution', width: 1.2 },
  runsaway: { fill: 'limit', stroke: 'limit', width: 0.8 },
  weightoff: { fill: 'steel', stroke: 'none', opacity: 0.6 },
  weightthin: { fill: 'caution', stroke: 'none' },
  weightshort: { fill: 'limit', stroke: 'none' },
  stem: { fill: 'none', stroke: 'soft', width: 0.8, dash: '1 3' },
  word: { fill: 'ink', weight: 500, stretch: 85, halo: true },
  strong: { fill: 'ink', weight: 700, stretch: 90, halo: true },
  small: { fill: 'soft', weight: 500, stretch: 80, halo: true },
  zone: { fill: 'limit', weight: 700, stretch: 100, halo: true },
  bendword: { fill: 'caution', weight: 600, stretch: 85, halo: true },
  reason: { fill: 'limit', weight: 600, stretch: 80, halo: true },
  pencilword: { fill: 'pencil', weight: 700, stretch: 85, halo: true },
  onmark: { fill: 'paper', weight: 700, stretch: 85 },
} as const satisfies Readonly<Record<string, Style>>;

export type Ink = keyof typeof styles;

const face = "'Cabin Variable', 'DejaVu Sans', sans-serif";

function declarations(style: Style, colour: (name: Colour) => string): Record<string, string | number> {
  const paint = (value: string): string => (value in palette ? colour(value as Colour) : value);
  const out: Record<string, string | number> = {};
  if (style.fill !== undefined) out['fill'] = paint(style.fill);
  if (style.stroke !== undefined) out['stroke'] = paint(style.stroke);
  if (style.width !== undefined) out['stroke-width'] = style.width;
  if (style.dash !== undefined) out['stroke-dasharray'] = style.dash;
  if (style.opacity !== undefined) out['opacity'] = style.opacity;
  if (style.weight !== undefined) {
    out['font-weight'] = style.weight;
    out['font-family'] = face;
  }
  if (style.stretch !== undefined) out['font-stretch'] = `${style.stretch}%`;
  if (style.halo) {
    out['stroke'] = paint('paper');
    out['stroke-width'] = 3;
    out['stroke-linejoin'] = 'round';
    out['paint-order'] = 'stroke';
  }
  return out;
}

/** Presentation attributes of an ink, for files. Unknown class names (groups) have none. */
export function inkAttributes(ink: string): Record<string, string | number> {
  const style = (styles as Readonly<Record<string, Style>>)[ink];
  return style ? declarations(style, (name) => palette[name]) : {};
}

/** The same table as a style sheet under `scope`; colours are `--ink-…` variables where the theme sets them. */
export function inkSheet(scope: string): string {
  return Object.entries(styles)
    .map(([name, style]) => {
      const rules = declarations(style, (colour) => `var(--ink-${colour}, ${palette[colour]})`);
      const body = Object.entries(rules).map(([key, value]) => `${key}:${value}`);
      return `${scope} .${name}{${body.join(';')}}`;
    })
    .join('\n');
}
