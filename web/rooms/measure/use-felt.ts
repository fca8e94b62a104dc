/** What the phone feels of its own weight, once its owner allows it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type Felt, steady } from '../../../desk/measured/level.ts';

/** iOS asks its owner; others have no such word. */
type Asking = { readonly requestPermission?: () => Promise<string> };

/** Looks that one reading is the mean of, and how long none may come before there is no such sense, ms. */
const LOOKS = 20;
const SILENT = 2000;

export type Feeling = 'off' | 'asked' | 'on' | 'none' | 'refused';

export interface Feels {
  readonly state: Feeling;
  readonly listening: boolean;
  readonly start: () => Promise<void>;
  /** Held still, which way it feels its weight; undefined: it moves. */
  readonly now: Felt | undefined;
}

/** @param each hears every look, with its time by the page's clock, ms */
export function useFelt(each?: (felt: Felt, time: number) => void): Feels {
  const [state, go] = useState<Feeling>('off');
  const looks = useRef<Felt[]>([]);
  const heard = useRef(each);
  heard.current = each;
  const [now, feel] = useState<Felt>();
  const listening = state === 'asked' || state === 'on';
  useEffect(() => {
    if (!listening) return undefined;
    const hear = (event: DeviceMotionEvent): void => {
      const g = event.accelerationIncludingGravity;
      if (g?.x == null || g.y == null || g.z == null || Math.hypot(g.x, g.y, g.z) === 0) return;
      const felt: Felt = [g.x, g.y, g.z];
      heard.current?.(felt, event.timeStamp);
      looks.current = [...looks.current.slice(1 - LOOKS), felt];
      go('on');
      feel(looks.current.length < LOOKS ? undefined : steady(looks.current));
    };
    const silent = setTimeout(() => {
      if (looks.current.length === 0) go('none');
    }, SILENT);
    addEventListener('devicemotion', hear);
    return () => {
      clearTimeout(silent);
      removeEventListener('devicemotion', hear);
    };
  }, [listening]);
  const start = async (): Promise<void> => {
    if (!('DeviceMotionEvent' in globalThis)) return go('none');
    const { requestPermission } = DeviceMotionEvent as unknown as Asking;
    const answer = requestPermission ? await requestPermission().catch(() => 'denied') : 'granted';
    go(answer === 'granted' ? 'asked' : 'refused');
  };
  return { state, listening, start, now };
}
