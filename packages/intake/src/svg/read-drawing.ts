import type { PatternReading } from '@hidebound/leather';
import { readStyleSheet } from '../css/sheet.js';
import type { Drawing } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { ignore, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { decodeText } from '../text/decode.js';
import { childElements, elementName } from '../xml/node.js';
import type { XmlElement } from '../xml/node.js';
import { parseXml } from '../xml/parse.js';
import { scaleByKnownLength } from './known-length.js';
import { rootFrame } from './scale.js';
import type { FileScale } from '../pattern-read.js';
import { computeStyle } from '../css/style.js';
import { walkElement } from './walk.js';
import type { Surroundings, Walk } from './walk.js';

/** An SVG file read as far as lines in mm. */
export interface SvgDrawing extends Drawing {
  readonly root: XmlElement;
  readonly scale: FileScale;
  /** The size of the drawing rests on what a px is: nothing in the file says mm, and neither does the caller. */
  readonly isInPx: boolean;
}

/** A file's tree with what drawing it needs. */
export interface SvgSource {
  readonly root: XmlElement;
  readonly findings: Findings;
  readonly sheet: Walk['sheet'];
  readonly byId: ReadonlyMap<string, XmlElement>;
}

/** Reads the text and the tree, then draws everything. Throws `IntakeError` for what can't be read at all. */
export function readSvgDrawing(
  input: Uint8Array | string,
  reading: PatternReading | undefined,
  findings: Findings,
): SvgDrawing {
  const source = openSvg(input, findings);
  const drawing = drawAll(source, reading, findings);
  const known = reading?.knownLength;
  return known === undefined ? drawing : scaleByKnownLength(source, reading!, drawing);
}

function openSvg(input: Uint8Array | string, findings: Findings): SvgSource {
  const { file } = findings;
  const { root, instructions } = parseXml(decodeText(input, file), file);
  if (!root.isSvg || root.name !== 'svg') {
    throw new IntakeError('not-svg', { root: root.name }, { file, line: root.line });
  }
  if (instructions.includes('xml-stylesheet')) ignore(findings, 'xml-stylesheet', 'external reference');
  const byId = new Map<string, XmlElement>();
  const styles: XmlElement[] = [];
  collect(root, byId, styles);
  const sheet = readStyleSheet(styles);
  for (const skipped of sheet.skipped) ignore(findings, `<style> ${skipped}`, 'style not read');
  return { root, findings, sheet, byId };
}

function collect(element: XmlElement, byId: Map<string, XmlElement>, styles: XmlElement[]): void {
  const id = element.attributes.get('id');
  if (id !== undefined && !byId.has(id)) byId.set(id, element);
  if (element.isSvg && element.name === 'style') styles.push(element);
  for (const child of childElements(element)) collect(child, byId, styles);
}

/** All lines and texts of the file at the scale that the reading asks for. */
export function drawAll(
  source: SvgSource,
  reading: PatternReading | undefined,
  findings: Findings,
): SvgDrawing {
  const { root, sheet, byId } = source;
  const { toMm, frame, scale, isInPx } = rootFrame(root, reading, findings);
  const walk: Walk = {
    findings,
    sheet,
    byId,
    cache: new Map(),
    labels: new Map(),
    lines: [],
    texts: [],
    cloned: 0,
    segments: 0,
    groups: 0,
  };
  const style = computeStyle(root, new Map(), sheet, walk.cache);
  const around: Surroundings = { matrix: toMm, style, frame, groups: [], using: [], depth: 0 };
  if (style.get('display') === 'none')
    tell(findings, 'warning', 'nothing-drawn', {}, { at: elementName(root) });
  else for (const child of childElements(root)) walkElement(walk, child, around);
  return { root, lines: walk.lines, texts: walk.texts, scale, isInPx };
}
