/** A drawing scene on the screen. */
import { h, type VNode } from 'preact';
import type { Shape } from '../../views/strip/scene.ts';

const made = new WeakMap<Shape, { readonly key: number; readonly node: VNode }>();

/** A shape that is the same as before is the same node: the page does not look into it again. */
function node(item: Shape | string, key: number): VNode | string {
  if (typeof item === 'string') return item;
  const known = made.get(item);
  if (known?.key === key) return known.node;
  const fresh = h(item.tag, { ...item.attrs, key }, (item.children ?? []).map(node));
  made.set(item, { key, node: fresh });
  return fresh;
}

export function Drawing({ scene }: { readonly scene: Shape }) {
  return node(scene, 0) as VNode;
}
