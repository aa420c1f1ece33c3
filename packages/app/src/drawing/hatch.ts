import type { Element, G } from '@svgdotjs/svg.js';
import type { PlainEffect } from './hide-layer.js';

/** Width of one mesh of the hatching, CSS pixels at any scale. */
const MESH_PX = 9;

/** Crossed, slanted, dotted: told apart without any colour. */
const LINES: Readonly<Record<PlainEffect, string>> = {
  never: 'M0 0L9 9M9 0L0 9',
  hidden: 'M-2 11L11 -2M-2 2L2 -2M7 11L11 7',
  anywhere: 'M4.5 4.5h0.01',
};

/** The hatching for what may lie on a mark, as a paint for fill or stroke; made where the drawing has none yet. */
export function hatchPaint(layer: G, effect: PlainEffect): string {
  const id = `hatch-${effect}`;
  const root = layer.root() as ReturnType<G['root']> | null;
  if (root !== null && root.defs().findOne(`#${id}`) === null) {
    const pattern = root.defs().pattern(MESH_PX, MESH_PX);
    pattern.attr({ id, patternTransform: `scale(${1 / scaleOf(layer)})` });
    pattern.path(LINES[effect]).attr({ class: `mark-hatch is-${effect}` });
  }
  return `url(#${id})`;
}

/** What keeps its size on the screen is fitted to how the drawing is seen: hatching, arrow heads, words and numbers. */
export function fitToView(
  layer: G,
  { scale, turnDeg }: { readonly scale: number; readonly turnDeg: number },
): void {
  const root = layer.root() as ReturnType<G['root']> | null;
  for (const pattern of root?.defs().find('pattern') ?? [])
    pattern.node.setAttribute('patternTransform', `scale(${1 / scale})`);
  for (const element of layer.find('.of-screen-size')) placeFixed(element, scale, turnDeg);
}

/** An element that keeps its size; without a direction of its own it stays upright. */
export function ofScreenSize(element: Element, x: number, y: number, deg?: number): void {
  element.addClass('of-screen-size');
  element.node.dataset['x'] = String(x);
  element.node.dataset['y'] = String(y);
  if (deg !== undefined) element.node.dataset['deg'] = String(deg);
  placeFixed(element, scaleOf(element), 0);
}

function placeFixed({ node }: Element, scale: number, turnDeg: number): void {
  const { x, y, deg } = node.dataset;
  node.setAttribute('transform', `translate(${x} ${y}) rotate(${deg ?? -turnDeg}) scale(${1 / scale})`);
}

/** Pixels per mm of the drawing as it stands. */
function scaleOf({ node }: Element): number {
  const matrix = (node as SVGGraphicsElement).getScreenCTM();
  const scale = matrix === null ? 1 : Math.hypot(matrix.a, matrix.b);
  return scale > 0 ? scale : 1;
}
