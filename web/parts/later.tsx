/** A part of a screen that is loaded when it is first shown; until then nothing stands in its place. */
import { signal } from '@preact/signals';
import type { Attributes, FunctionComponent } from 'preact';
import { useEffect } from 'preact/hooks';

export function later<P extends object>(load: () => Promise<FunctionComponent<P>>): FunctionComponent<P> {
  // In a box, since a signal takes a function for an update.
  const loaded = signal<{ readonly View: FunctionComponent<P> } | null>(null);
  return (props: P) => {
    useEffect(() => {
      if (!loaded.value)
        void load().then((View) => {
          loaded.value = { View };
        });
    }, []);
    const View = loaded.value?.View;
    return View ? <View {...(props as P & Attributes)} /> : null;
  };
}
