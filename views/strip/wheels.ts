/**
 * A ribbon that grows downward with the load that the train's lightest wheel loses on the run; dotted: the most
 * that it may lose. Where little is left of that it is inked as a caution, and beyond it as a limit.
 */
import { lightestPlace, thinShare } from '../../desk/light-wheels.ts';
import { type Layout, label } from './layout.ts';
import type { Sheet } from './letters.ts';
import type { StripModel, StripWords } from './model.ts';
import { filledTo, group, lineShape, type Point, pathShape, type Shape } from './scene.ts';

type RibbonInk = 'weightoff' | 'weightthin' | 'weightshort';

/** The band is tall enough for this many times the loss allowed; a greater loss fills it, and its words tell how much. */
const ROOM = 1.6;

/** Whether the train's wheels run so light that one should see where. */
export function runsLight({ wheels }: StripModel): boolean {
  const worst = wheels && lightestPlace(wheels);
  return !!wheels && !!worst && worst.share < thinShare(wheels.required);
}

export function wheelBand(
  { wheels, line }: StripModel,
  layout: Layout,
  words: StripWords,
  sheet: Sheet,
): Shape {
  const worst = wheels && lightestPlace(wheels);
  if (!wheels || !worst || layout.wheels.bottom > layout.axis - layout.size) return group({}, []);
  const { wheels: band, left, right, size } = layout;
  const thin = thinShare(wheels.required);
  const inkOf = (share: number): RibbonInk =>
    share < wheels.required ? 'weightshort' : share < thin ? 'weightthin' : 'weightoff';
  const full = ROOM * (1 - wheels.required);
  const tall = (share: number): number =>
    Math.min(1, Math.max(0, (1 - share) / full)) * (band.bottom - band.top);
  const allowed = band.top + tall(wheels.required);
  const told = sheet.put(
    worst.share < thin ? 'reason' : 'small',
    label(words.lightest(worst), layout, 0.62),
    size,
    [{ x: left, y: band.top - size * 0.3 }],
  );
  return group({ class: 'wheels' }, [
    ...ribbons(columns(wheels, line, layout), inkOf).map(({ ink, from, shares }) =>
      pathShape(
        ink,
        filledTo(
          band.top,
          shares.map((s, i): Point => [left + from + i, band.top + tall(s)]),
        ),
      ),
    ),
    lineShape('fine', left, band.top, right, band.top),
    lineShape('dotted', left, allowed, right, allowed),
    ...(told ? [told.shape] : []),
  ]);
}

/** The least share under each pixel of the window, so that no thin place falls between two samples. */
function columns(
  { at, share }: NonNullable<StripModel['wheels']>,
  { loop, length }: StripModel['line'],
  { view, left, right }: Layout,
): number[] {
  const step = at[1] - at[0];
  const wide = Math.max(1, Math.round(right - left));
  const index = (s: number): number => (loop ? ((s % length) + length) % length : s) / step;
  return Array.from({ length: wide + 1 }, (_, i) => {
    const from = index(view.from + ((view.to - view.from) * i) / wide);
    const over = (view.to - view.from) / wide / step;
    let least = Infinity;
    for (let j = Math.floor(from); j <= Math.ceil(from + over); j++) {
      const k = loop ? j % share.length : Math.min(share.length - 1, Math.max(0, j));
      if (share[k] < least) least = share[k];
    }
    return least;
  });
}

interface Ribbon {
  readonly ink: RibbonInk;
  readonly from: number;
  readonly shares: number[];
}

/** Neighbouring columns of one ink; each ribbon reaches to the next one's first column, so that none gapes. */
function ribbons(shares: readonly number[], inkOf: (share: number) => RibbonInk): Ribbon[] {
  const out: Ribbon[] = [];
  shares.forEach((share, i) => {
    const last = out[out.length - 1];
    const ink = inkOf(share);
    last?.shares.push(share);
    if (last?.ink !== ink) out.push({ ink, from: i, shares: [share] });
  });
  return out;
}
