import type { G } from '@svgdotjs/svg.js';
import type { Point, Polyline } from '@hidebound/geometry';
import { effectOf } from '@hidebound/leather';
import type { Effect, FlawShape, Hide } from '@hidebound/leather';
import { hatchPaint, ofScreenSize } from './hatch.js';
import { curvePath, linePath } from './path-data.js';

/** The three plain choices for a mark, from what it does to looks and strength. */
export type PlainEffect = 'never' | 'hidden' | 'anywhere';

export function plainEffect({ looks, strength, isVoid }: Effect): PlainEffect {
  if (isVoid) return 'never';
  return looks === 'A' && strength === 'sound' ? 'anywhere' : 'hidden';
}

/** Words that stand in the drawing of a hide. */
export interface HideLayerWords {
  readonly head: string;
  readonly tail: string;
  readonly thickness: (mm: number) => string;
}

export interface HideLayerOptions {
  /** Over a photo the leather itself is seen: only lines are drawn. */
  readonly overPhoto: boolean;
  readonly withCandidates: boolean;
  /** The mark in hand: "flaw:scar-2", "zone:belly", "tightness:0". */
  readonly chosen?: string;
  /** With them, ends of the backbone and thickness readings are told. */
  readonly words?: HideLayerWords;
}

/** Draws a hide with its marks into a layer, anew. Elements carry `data-kind` and `data-id`, so that a hand finds them. */
export function drawHideInto(
  layer: G,
  hide: Hide,
  { overPhoto, withCandidates, chosen, words }: HideLayerOptions,
): void {
  layer.clear();
  layer.attr({ class: overPhoto ? 'hide over-photo' : 'hide' });
  const outlines = [hide.outline, ...hide.openings].map(curvePath).join(' ');
  if (overPhoto) drawCasing(layer, hide, outlines, withCandidates ? hide.candidates : []);
  layer.path(outlines).attr({ class: 'hide-outline', 'fill-rule': 'evenodd', 'data-kind': 'outline' });
  for (const zone of hide.zones) {
    const style = `zone zone-${zone.kind} ${isChosen(chosen, 'zone', zone.id)}`;
    layer.path(curvePath(zone.outline)).attr({ class: style, 'data-kind': 'zone', 'data-id': zone.id });
  }
  for (const { line } of hide.unsureEdges) layer.path(linePath(line)).attr({ class: 'unsure-edge' });
  if (hide.backbone !== undefined) drawBackbone(layer, hide.backbone, words);
  hide.tightness.forEach((stroke, i) =>
    drawTightness(layer, stroke, isChosen(chosen, 'tightness', String(i)), String(i)),
  );
  for (const flaw of hide.flaws) {
    const effect = plainEffect(effectOf(flaw));
    const style = `flaw is-${effect} ${isChosen(chosen, 'flaw', flaw.id)}`;
    drawMark(layer, flaw.shape, style, { kind: 'flaw', id: flaw.id, paint: hatchPaint(layer, effect) });
  }
  if (words !== undefined) drawReadings(layer, hide, words, chosen);
  if (!withCandidates) return;
  for (const { shape, id } of hide.candidates) {
    const style = `candidate ${isChosen(chosen, 'candidate', id)}`;
    drawMark(layer, shape, style, { kind: 'candidate', id, paint: 'none' });
  }
}

/** A dark line under each light one, so that it is seen on pale leather and on any floor. */
function drawCasing(
  layer: G,
  { zones, backbone, tightness }: Hide,
  outlines: string,
  candidates: Hide['candidates'],
): void {
  const lines = [
    outlines,
    ...zones.map(({ outline }) => curvePath(outline)),
    ...(backbone === undefined ? [] : [backbone]).concat(tightness).map(linePath),
    ...candidates.map(({ shape }) => markPath(shape)),
  ];
  layer.path(lines.join(' ')).attr({ class: 'line-casing' });
}

function markPath(shape: FlawShape): string {
  switch (shape.kind) {
    case 'point':
      return '';
    case 'line':
      return linePath(shape.line);
    case 'area':
      return curvePath(shape.outline);
  }
}

function isChosen(chosen: string | undefined, kind: string, id: string): string {
  return chosen === `${kind}:${id}` ? 'is-chosen' : '';
}

interface MarkLook {
  readonly kind: string;
  readonly id: string;
  /** Of its inside. */
  readonly paint: string;
}

/** A mark at its size, and a core that is seen however far away one is. */
function drawMark(layer: G, shape: FlawShape, style: string, { kind, id, paint }: MarkLook): void {
  const names = { 'data-kind': kind, 'data-id': id };
  switch (shape.kind) {
    case 'point': {
      const { at, radiusMm } = shape;
      layer.path(dotPath(at)).attr({ ...names, class: `${style} core` });
      layer
        .circle(2 * radiusMm)
        .center(at.x, at.y)
        .attr({ ...names, class: style, fill: paint });
      return;
    }
    case 'area':
      layer
        .path(curvePath(shape.outline))
        .attr({ ...names, class: style, fill: paint, 'fill-rule': 'evenodd' });
      return;
    case 'line': {
      // Its own width and paint win over the style of marks; the page's policy wants them set by script.
      const band = layer.path(linePath(shape.line)).attr({ ...names, class: `${style} band` });
      band.css({ 'stroke-width': `${shape.widthMm}px`, ...(paint === 'none' ? {} : { stroke: paint }) });
      layer.path(linePath(shape.line)).attr({ ...names, class: `${style} core` });
      return;
    }
  }
}

/** A stroke without length: its round or square ends are a dot of the same size at any scale. */
export function dotPath({ x, y }: Point): string {
  return `${linePath([{ x, y }])}h0`;
}

const HEAD = 'M-11 -6L0 0L-11 6';

/** The direction in which a line comes in at its end, degrees. */
function directionDeg(before: Point, end: Point): number {
  return (Math.atan2(end.y - before.y, end.x - before.x) * 180) / Math.PI;
}

function drawHead(layer: G, style: string, before: Point, end: Point): void {
  const head = layer.path(HEAD).attr({ class: style });
  ofScreenSize(head, end.x, end.y, directionDeg(before, end));
}

function drawBackbone(layer: G, line: Polyline, words: HideLayerWords | undefined): void {
  layer.path(linePath(line)).attr({ class: 'backbone', 'data-kind': 'backbone' });
  const [head, tail] = [line[0]!, line.at(-1)!];
  drawHead(layer, 'line-end', line.at(-2)!, tail);
  if (words === undefined) return;
  drawEndWord(layer, head, tail, words.head);
  drawEndWord(layer, tail, head, words.tail);
}

function drawTightness(layer: G, line: Polyline, style: string, id: string): void {
  layer.path(linePath(line)).attr({ class: `tightness ${style}`, 'data-kind': 'tightness', 'data-id': id });
  drawHead(layer, `line-end ${style}`, line[1]!, line[0]!);
  drawHead(layer, `line-end ${style}`, line.at(-2)!, line.at(-1)!);
}

function drawReadings(layer: G, hide: Hide, words: HideLayerWords, chosen: string | undefined): void {
  hide.leather.readings.forEach(({ at, mm }, i) => {
    const style = isChosen(chosen, 'reading', String(i));
    layer
      .path(dotPath(at))
      .attr({ class: `reading-dot ${style}`, 'data-kind': 'reading', 'data-id': String(i) });
    drawWord(layer, at, words.thickness(mm), `hide-word reading ${style}`);
  });
}

/** Over the end of a line and towards its other end, so that it isn't cut off where the hide fills a narrow screen. */
function drawEndWord(layer: G, at: Point, other: Point, word: string): void {
  const isToTheLeft = other.x < at.x;
  const group = layer.group().attr({ class: 'hide-word' });
  group.plain(word).attr({ x: isToTheLeft ? -4 : 4, y: -10, 'text-anchor': isToTheLeft ? 'end' : 'start' });
  ofScreenSize(group, at.x, at.y);
}

function drawWord(layer: G, at: Point, word: string, style: string): void {
  const group = layer.group().attr({ class: style });
  group.plain(word).attr({ x: 9, y: 5 });
  ofScreenSize(group, at.x, at.y);
}
