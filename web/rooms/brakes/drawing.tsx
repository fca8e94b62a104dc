/** A scene of the desk as SVG on the screen. Inks are classes: the style sheet gives them their colours. */
import { h, type VNode } from 'preact';
import type { Scene, Shape } from '../../../desk/strip/scene.ts';

const draw = (item: Shape | string): VNode | string =>
  typeof item === 'string' ? item : h(item.tag, { ...item.attrs }, ...(item.children ?? []).map(draw));

/** As wide as the page lets it be. */
export function Drawing({ scene }: { readonly scene: Scene }) {
  const { width: _, height: __, ...attrs } = scene.attrs;
  return draw({
    ...scene,
    attrs: { ...attrs, class: 'drawing', style: 'max-width:760px;width:100%;height:auto' },
  }) as VNode;
}
