/** A drawing scene on the screen. */
import { h, type VNode } from 'preact';
import type { Shape } from '../../views/strip/scene.ts';

const node = (item: Shape | string, key: number): VNode | string =>
  typeof item === 'string' ? item : h(item.tag, { ...item.attrs, key }, (item.children ?? []).map(node));

export function Drawing({ scene }: { readonly scene: Shape }) {
  return node(scene, 0) as VNode;
}
