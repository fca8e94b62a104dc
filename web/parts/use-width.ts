/** The width of an element as the page gives it, px. */
import { type Signal, useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

export function useWidth(box: RefObject<HTMLElement | null>, first: number): Signal<number> {
  const width = useSignal(first);
  useEffect(() => {
    const measure = (): void => {
      width.value = box.current?.clientWidth ?? first;
    };
    measure();
    const observer = new ResizeObserver(measure);
    if (box.current) observer.observe(box.current);
    return () => observer.disconnect();
  }, []);
  return width;
}
