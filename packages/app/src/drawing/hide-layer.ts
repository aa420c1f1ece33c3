import type { G } from '@svgdotjs/svg.js';
import { effectOf } from '@hidebound/leather';
import type { Effect, FlawShape, Hide } from '@hidebound/leather';
import { curvePath, linePath } from './path-data.js';

/** The three plain choices for a mark, from what it does to looks and strength. */
export type PlainEffect = 'never' | 'hidden' | 'anywhere';

export function plainEffect({ looks, strength, isVoid }: Effect): PlainEffect {
  if (isVoid) return 'never';
  return looks === 'A' && strength === 'sound' ? 'anywhere' : 'hidden';
}

export interface HideLayerOptions {
  /** Over a photo the leather itself is seen: only lines are drawn. */
  readonly overPhoto: boolean;
  readonly withCandidates: boolean;
}

/** Draws a hide with its marks into a layer, anew. Elements carry `data-kind` and `data-id`, so that a hand finds them. */
export function drawHideInto(layer: G, hide: Hide, { overPhoto, withCandidates }: HideLayerOptions): void {
  layer.clear();
  layer.attr({ class: overPhoto ? 'hide over-photo' : 'hide' });
  const outlines = [hide.outline, ...hide.openings].map(curvePath).join(' ');
  layer.path(outlines).attr({ class: 'hide-outline', 'fill-rule': 'evenodd', 'data-kind': 'outline' });
  for (const zone of hide.zones) {
    const effect = plainEffect(effectOf(zone));
    mark(layer, { kind: 'area', outline: zone.outline }, `zone is-${effect}`, 'zone', zone.id);
  }
  for (const { line } of hide.unsureEdges) layer.path(linePath(line)).attr({ class: 'unsure-edge' });
  if (hide.backbone !== undefined)
    layer.path(linePath(hide.backbone)).attr({ class: 'backbone', 'data-kind': 'backbone' });
  hide.tightness.forEach((stroke, i) =>
    layer.path(linePath(stroke)).attr({ class: 'tightness', 'data-kind': 'tightness', 'data-id': String(i) }),
  );
  for (const flaw of hide.flaws) {
    const effect = plainEffect(effectOf(flaw));
    mark(layer, flaw.shape, `flaw is-${effect}`, 'flaw', flaw.id);
  }
  if (!withCandidates) return;
  for (const { shape, id } of hide.candidates) mark(layer, shape, 'candidate', 'candidate', id);
}

function mark(layer: G, shape: FlawShape, style: string, kind: string, id: string): void {
  const attributes = { class: style, 'data-kind': kind, 'data-id': id };
  switch (shape.kind) {
    case 'point':
      layer
        .circle(2 * shape.radiusMm)
        .center(shape.at.x, shape.at.y)
        .attr(attributes);
      return;
    case 'area':
      layer.path(curvePath(shape.outline)).attr(attributes);
      return;
    case 'line':
      layer.path(linePath(shape.line)).attr({
        ...attributes,
        class: `${style} is-line`,
        style: `stroke-width: ${shape.widthMm}px`,
      });
      return;
  }
}
