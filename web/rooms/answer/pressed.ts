/** The train follows whoever presses on a drawing of the line, until they let go. */
import type { Signal } from '@preact/signals';

export const pressed = (dragging: Signal<boolean>, follow: (e: PointerEvent) => void) => {
  const letGo = (): void => {
    dragging.value = false;
  };
  return {
    onPointerDown: (e: PointerEvent) => {
      dragging.value = true;
      (e.currentTarget as Element).setPointerCapture(e.pointerId);
      follow(e);
    },
    onPointerMove: (e: PointerEvent) => {
      if (dragging.value) follow(e);
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
  };
};
