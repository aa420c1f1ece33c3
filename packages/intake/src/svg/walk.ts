import { IDENTITY, applyAffine, composeAffine, translation } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import { computeStyle } from '../css/style.js';
import type { Style, StyleCache } from '../css/style.js';
import type { StyleSheet } from '../css/sheet.js';
import type { DrawnGroup, DrawnLine, DrawnSource, DrawnText, Labels } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { ignore, longName, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { MAX_CLONED, MAX_DEPTH } from '../limits.js';
import { childElements, elementName, textContent } from '../xml/node.js';
import type { XmlElement } from '../xml/node.js';
import { drawShape } from './draw.js';
import { ignoredReason, isSilent, pickFromSwitch } from './elements.js';
import { labelsOf } from './labels.js';
import { resolveLength } from './length.js';
import type { LengthAxis, LengthFrame } from './length.js';
import { isShapeName } from './shapes.js';
import { aboutPoint, parseTransform } from './transform.js';
import { parseViewBox, viewBoxTransform } from './viewport.js';

/** What the walk gathers and what stays the same during it. */
export interface Walk {
  readonly findings: Findings;
  readonly sheet: StyleSheet;
  readonly cache: StyleCache;
  /** Labels of elements already seen: a clone's original is drawn many times. */
  readonly labels: Map<XmlElement, Labels>;
  readonly byId: ReadonlyMap<string, XmlElement>;
  readonly lines: DrawnLine[];
  readonly texts: DrawnText[];
  /** Elements drawn so far as parts of clones. */
  cloned: number;
  segments: number;
  groups: number;
}

/** What changes from element to element. */
export interface Surroundings {
  readonly matrix: Affine;
  readonly style: Style;
  readonly frame: LengthFrame;
  /** Innermost first. */
  readonly groups: readonly DrawnGroup[];
  /** Targets of the `use` elements that are being drawn. */
  readonly using: readonly XmlElement[];
  readonly depth: number;
}

/** Draws one element and what is in it. */
export function walkElement(walk: Walk, element: XmlElement, outer: Surroundings): void {
  if (!element.isSvg) return;
  checkLimits(walk, element, outer);
  const reason = ignoredReason(element);
  if (reason !== undefined) {
    if (!isSilent(element)) ignore(walk.findings, longName(sourceName(element)), reason);
    return;
  }
  if (isSilent(element)) return;
  const style = computeStyle(element, outer.style, walk.sheet, walk.cache);
  if (style.get('display') === 'none') {
    ignore(walk.findings, longName(sourceName(element)), 'hidden');
    return;
  }
  tellUnappliedEffects(walk, element, style);
  const frame = { ...outer.frame, fontSize: fontSizeOf(style, outer) };
  const own = ownTransform(walk, element, style, frame);
  if (own === undefined) return;
  const inner: Surroundings = {
    ...outer,
    matrix: composeAffine(outer.matrix, own),
    style,
    frame,
    depth: outer.depth + 1,
  };
  drawElement(walk, element, inner);
}

function drawElement(walk: Walk, element: XmlElement, inner: Surroundings): void {
  const { name } = element;
  if (isShapeName(name)) drawShape(walk, element, inner, sourceOf(walk, element, inner));
  else if (name === 'text') drawText(walk, element, inner);
  else if (name === 'use') drawUse(walk, element, inner);
  else if (name === 'svg') drawNested(walk, element, inner);
  else if (name === 'switch') {
    const { chosen, others } = pickFromSwitch(element);
    for (const other of others)
      ignore(walk.findings, longName(sourceName(other)), 'other branch of a switch');
    if (chosen !== undefined) walkElement(walk, chosen, inGroup(walk, element, inner));
  } else walkChildren(walk, element, inGroup(walk, element, inner));
}

function walkChildren(walk: Walk, element: XmlElement, surroundings: Surroundings): void {
  for (const child of childElements(element)) walkElement(walk, child, surroundings);
}

function inGroup(walk: Walk, element: XmlElement, surroundings: Surroundings): Surroundings {
  const group: DrawnGroup = {
    key: walk.groups++,
    labels: labelsOf(element),
    isClone: element.name === 'use',
  };
  return { ...surroundings, groups: [group, ...surroundings.groups] };
}

function checkLimits(walk: Walk, element: XmlElement, outer: Surroundings): void {
  const place = { file: walk.findings.file, line: element.line, at: elementName(element) };
  if (outer.using.length > 0 && ++walk.cloned > MAX_CLONED) {
    throw new IntakeError('too-many-clones', { limit: MAX_CLONED }, place);
  }
  if (outer.depth > MAX_DEPTH) throw new IntakeError('too-deep', { limit: MAX_DEPTH }, place);
}

export function sourceName(element: XmlElement): Pick<DrawnSource, 'name' | 'line'> {
  return { name: elementName(element), line: element.line };
}

function sourceOf(walk: Walk, element: XmlElement, { groups }: Surroundings): DrawnSource {
  return { ...sourceName(element), labels: knownLabels(walk, element), groups };
}

function knownLabels(walk: Walk, element: XmlElement): Labels {
  let labels = walk.labels.get(element);
  if (labels === undefined) walk.labels.set(element, (labels = labelsOf(element)));
  return labels;
}

/** Lines are read as if nothing were cut off, masked or filtered. */
function tellUnappliedEffects(walk: Walk, element: XmlElement, style: Style): void {
  const effects = { 'clip-path': 'clip path', mask: 'mask', filter: 'filter' } as const;
  for (const [property, reason] of Object.entries(effects)) {
    const value = style.get(property);
    if (value === undefined || value === 'none') continue;
    if (property === 'clip-path' && clipsToPage(walk, value)) continue;
    ignore(walk.findings, `${reason} of ${longName(sourceName(element))}`, reason);
  }
}

/** A clip that is no more than one upright rectangle around a page takes nothing away that a maker would miss. */
function clipsToPage(walk: Walk, value: string): boolean {
  const target = walk.byId.get(/^url\(\s*["']?#([^"')]+)["']?\s*\)$/.exec(value)?.[1] ?? '');
  if (target === undefined) return false;
  const shapes = childElements(target);
  return (
    shapes.length === 1 && shapes[0]!.name === 'rect' && /page|slide|presentation/i.test(elementName(target))
  );
}

function fontSizeOf(style: Style, outer: Surroundings): number {
  const text = style.get('font-size');
  if (text === undefined) return outer.frame.fontSize;
  if (text === outer.style.get('font-size') && !text.includes('%') && !/em|ex|ch/.test(text)) {
    return outer.frame.fontSize;
  }
  if (text.endsWith('%')) return (parseFloat(text) / 100) * outer.frame.fontSize;
  return resolveLength(text, outer.frame, 'other') ?? outer.frame.fontSize;
}

/** The element's transform, or nothing (with a warning) where it flattens everything. */
function ownTransform(walk: Walk, element: XmlElement, style: Style, frame: LengthFrame): Affine | undefined {
  const css = style.get('transform');
  const text = css ?? element.attributes.get('transform');
  if (text === undefined) return IDENTITY;
  const matrix = parseTransform(text, frame);
  const place = { line: element.line, at: elementName(element) };
  if (matrix === undefined || !Object.values(matrix).every((n) => Number.isFinite(n as number))) {
    refuseInfinite(walk, text, place);
    tell(walk.findings, 'warning', 'bad-transform', { value: text.slice(0, 60) }, place);
    return IDENTITY;
  }
  if (matrix.a * matrix.d - matrix.b * matrix.c === 0) {
    tell(walk.findings, 'warning', 'flat-transform', {}, place);
    return undefined;
  }
  const origin = (style.get('transform-origin') ?? '').split(/\s+/);
  const ox = resolveLength(origin[0] ?? '', frame, 'x') ?? 0;
  const oy = resolveLength(origin[1] ?? '', frame, 'y') ?? 0;
  return ox === 0 && oy === 0 ? matrix : aboutPoint(matrix, ox, oy);
}

/** A number that no computer can hold is not a slip of spelling: where the element belongs is then unknown. */
function refuseInfinite(
  walk: Walk,
  text: string,
  place: { readonly line: number; readonly at: string },
): void {
  const numbers = text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi) ?? [];
  if (/\b(nan|inf)/i.test(text) || !numbers.every((n) => Number.isFinite(Number(n)))) {
    throw new IntakeError('bad-number', { what: 'transform' }, { file: walk.findings.file, ...place });
  }
}

function lengthOf(
  element: XmlElement,
  name: string,
  { frame }: Surroundings,
  axis: LengthAxis,
): number | undefined {
  const text = element.attributes.get(name);
  return text === undefined || text === 'auto' ? undefined : resolveLength(text, frame, axis);
}

/** A nested `svg`, or a `symbol` where it is used: a viewport of its own (SVG 2, sections 5.6 and 8.2). */
function drawNested(
  walk: Walk,
  element: XmlElement,
  surroundings: Surroundings,
  size?: { readonly width: number | undefined; readonly height: number | undefined },
): void {
  const x = lengthOf(element, 'x', surroundings, 'x') ?? 0;
  const y = lengthOf(element, 'y', surroundings, 'y') ?? 0;
  const width = size?.width ?? lengthOf(element, 'width', surroundings, 'x') ?? surroundings.frame.width;
  const height = size?.height ?? lengthOf(element, 'height', surroundings, 'y') ?? surroundings.frame.height;
  const viewBox = parseViewBox(element.attributes.get('viewBox'));
  let matrix = composeAffine(surroundings.matrix, translation(x, y));
  if (viewBox !== undefined) {
    if (!(width > 0 && height > 0)) {
      ignore(walk.findings, longName(sourceName(element)), 'no size');
      return;
    }
    const fit = element.attributes.get('preserveAspectRatio');
    matrix = composeAffine(matrix, viewBoxTransform(viewBox, { width, height }, fit));
  }
  const frame = {
    ...surroundings.frame,
    width: viewBox?.width ?? width,
    height: viewBox?.height ?? height,
  };
  walkChildren(walk, element, inGroup(walk, element, { ...surroundings, matrix, frame }));
}

function drawUse(walk: Walk, element: XmlElement, surroundings: Surroundings): void {
  const href = (element.attributes.get('href') ?? element.attributes.get('xlink:href') ?? '').trim();
  const place = { line: element.line, at: elementName(element) };
  if (!href.startsWith('#')) {
    const reason = href === '' ? 'missing target' : 'external reference';
    ignore(walk.findings, longName(sourceName(element)), reason);
    return;
  }
  const target = walk.byId.get(href.slice(1)) ?? walk.byId.get(decodedId(href.slice(1)));
  if (target === undefined) {
    ignore(walk.findings, longName(sourceName(element)), 'missing target');
    return;
  }
  if (surroundings.using.includes(target) || isWithin(element, target)) {
    throw new IntakeError('use-cycle', { target: href }, { file: walk.findings.file, ...place });
  }
  const x = lengthOf(element, 'x', surroundings, 'x') ?? 0;
  const y = lengthOf(element, 'y', surroundings, 'y') ?? 0;
  const inner = inGroup(walk, element, {
    ...surroundings,
    matrix: composeAffine(surroundings.matrix, translation(x, y)),
    using: [...surroundings.using, target],
  });
  const size = {
    width: lengthOf(element, 'width', surroundings, 'x'),
    height: lengthOf(element, 'height', surroundings, 'y'),
  };
  if (target.name === 'symbol' || target.name === 'svg') drawViewportTarget(walk, target, inner, size);
  else walkElement(walk, target, inner);
}

/** A used `symbol` or `svg`: its own style and transform, and the size that the `use` gives it. */
function drawViewportTarget(
  walk: Walk,
  target: XmlElement,
  outer: Surroundings,
  size: { readonly width: number | undefined; readonly height: number | undefined },
): void {
  checkLimits(walk, target, outer);
  const style = computeStyle(target, outer.style, walk.sheet, walk.cache);
  if (style.get('display') === 'none') {
    ignore(walk.findings, longName(sourceName(target)), 'hidden');
    return;
  }
  const own = ownTransform(walk, target, style, outer.frame);
  if (own === undefined) return;
  const matrix = composeAffine(outer.matrix, own);
  drawNested(walk, target, { ...outer, matrix, style, depth: outer.depth + 1 }, size);
}

function isWithin(element: XmlElement, ancestor: XmlElement): boolean {
  for (let up: XmlElement | undefined = element; up !== undefined; up = up.parent) {
    if (up === ancestor) return true;
  }
  return false;
}

function decodedId(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}

/** Text is no line; what it says may name the piece that it lies in. */
function drawText(walk: Walk, element: XmlElement, surroundings: Surroundings): void {
  // Lettering that says itself that it is no more than that is no news.
  if (element.attributes.get('data-role') === 'text') return;
  ignore(walk.findings, longName(sourceName(element)), 'text');
  const text = textContent(element).replace(/\s+/g, ' ').trim();
  if (text === '' || surroundings.style.get('visibility') === 'hidden') return;
  const at = { x: firstCoordinate(element, 'x'), y: firstCoordinate(element, 'y') };
  walk.texts.push({
    text,
    at: applyAffine(surroundings.matrix, at),
    source: sourceOf(walk, element, surroundings),
  });
}

/** The first `x` or `y` on the text or on a `tspan` within it. */
function firstCoordinate(element: XmlElement, name: 'x' | 'y'): number {
  const own = parseFloat(element.attributes.get(name) ?? '');
  if (Number.isFinite(own)) return own;
  for (const child of childElements(element)) {
    const inner = firstCoordinate(child, name);
    if (inner !== 0) return inner;
  }
  return 0;
}
