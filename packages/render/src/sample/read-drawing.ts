import { flattenCurve, orientRing } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import type { Drawing, DrawingElement, GroupElement, PathElement, TextElement } from '../drawing/model.js';
import type { LabelBox } from '../label/label-box.js';
import type { FontBook } from '../text/font-book.js';
import { measureText } from '../text/measure-text.js';
import { sinCosDeg } from '@hidebound/geometry';

/** Every line and text of the drawing, groups opened. */
export function allElements(drawing: Drawing): (PathElement | TextElement)[] {
  return drawing.layers.flatMap((layer) => layer.elements.flatMap(openGroup));
}

export function openGroup(element: DrawingElement): (PathElement | TextElement)[] {
  if (element.kind === 'image') return [];
  return element.kind === 'group' ? element.elements.flatMap(openGroup) : [element];
}

export function textsOf(drawing: Drawing): TextElement[] {
  return allElements(drawing).filter((element): element is TextElement => element.kind === 'text');
}

/** The ink of a line of text as a turned rectangle. */
export function inkBox(fonts: FontBook, text: TextElement): LabelBox {
  const { widthMm, aboveMm, belowMm } = measureText(fonts, text.face, text.sizeMm, text.text);
  const { sin, cos } = sinCosDeg(text.angleDeg);
  const along = { start: widthMm / 2, middle: 0, end: -widthMm / 2 }[text.anchor];
  const down = (belowMm - aboveMm) / 2;
  return {
    center: { x: text.at.x + along * cos - down * sin, y: text.at.y + along * sin + down * cos },
    widthMm,
    heightMm: aboveMm + belowMm,
    angleDeg: text.angleDeg,
  };
}

/** Groups of the named layer whose name begins so. */
export function groupsNamed(drawing: Drawing, layer: string, prefix: string): GroupElement[] {
  const elements = drawing.layers.find((each) => each.name === layer)?.elements ?? [];
  return elements.filter(
    (element): element is GroupElement =>
      element.kind === 'group' && element.name !== undefined && element.name.startsWith(prefix),
  );
}

/** The first curve of the path as a region. */
export function regionOfPath(path: PathElement): Region {
  const [outer, ...openings] = path.curves.map((curve) => flattenCurve(curve, 0.01).slice(0, -1));
  return {
    outer: orientRing(outer!, 'outer'),
    openings: openings.map((opening) => orientRing(opening, 'opening')),
  };
}

/** Both ends of every single straight line in the group. */
export function straightLines(group: GroupElement): (readonly [Point, Point])[] {
  return group.elements
    .flatMap(openGroup)
    .filter((element): element is PathElement => element.kind === 'path')
    .filter((path) => path.curves.length === 1 && path.curves[0]!.segments.length === 1)
    .map((path) => [path.curves[0]!.start, path.curves[0]!.segments[0]!.to]);
}
