import { arcsToCubics } from '@hidebound/geometry';
import type { Affine, Curve } from '@hidebound/geometry';
import { formatNumber } from '../drawing/format-number.js';
import type {
  Drawing,
  DrawingElement,
  FontFace,
  GroupElement,
  ImageElement,
  Layer,
  PathElement,
  PathStyle,
  TextElement,
} from '../drawing/model.js';
import { toBase64 } from './base64.js';
import { escapeXml } from './escape-xml.js';

/** What stands in where the font itself is not at hand: fonts of like build. */
const FONT_FAMILIES: Readonly<Record<FontFace, string>> = {
  regular: "'DejaVu Sans', Verdana, sans-serif",
  bold: "'DejaVu Sans', Verdana, sans-serif",
  narrow: "'DejaVu Sans', 'DejaVu Sans Condensed', Tahoma, sans-serif",
  'narrow bold': "'DejaVu Sans', 'DejaVu Sans Condensed', Tahoma, sans-serif",
};

/**
 * The drawing as an SVG file at true scale: `width` and `height` in mm, one user unit a mm. The same drawing gives the
 * same text everywhere. Layers are groups, the first lowest.
 */
export function writeSvg(drawing: Drawing): string {
  const width = formatNumber(drawing.widthMm);
  const height = formatNumber(drawing.heightMm);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escapeXml(drawing.title)}</title>`,
  ];
  const taken = new Set<string>();
  for (const layer of drawing.layers) writeLayer(layer, taken, lines);
  lines.push('</svg>', '');
  return lines.join('\n');
}

function writeLayer(layer: Layer, taken: Set<string>, lines: string[]): void {
  lines.push(`<g id="${uniqueId(layer.name, taken)}" data-layer="${escapeXml(layer.name)}">`);
  for (const element of layer.elements) writeElement(element, lines);
  lines.push('</g>');
}

function writeElement(element: DrawingElement, lines: string[]): void {
  switch (element.kind) {
    case 'path':
      writePath(element, lines);
      break;
    case 'text':
      lines.push(textToSvg(element));
      break;
    case 'image':
      lines.push(imageToSvg(element));
      break;
    case 'group':
      writeGroup(element, lines);
      break;
  }
}

function writePath(element: PathElement, lines: string[]): void {
  if (element.curves.length === 0) return;
  lines.push(`<path d="${element.curves.map(curveToPathData).join('')}"${styleToSvg(element.style)}/>`);
}

function writeGroup(element: GroupElement, lines: string[]): void {
  const name = element.name === undefined ? '' : ` data-name="${escapeXml(element.name)}"`;
  const transform = element.transform === undefined ? '' : ` transform="${matrixToSvg(element.transform)}"`;
  let clip = '';
  if (element.clip !== undefined) {
    // The line number makes an id that is unique and the same on every run.
    const id = `clip-${lines.length}`;
    const data = element.clip.map(curveToPathData).join('');
    lines.push(`<clipPath id="${id}"><path clip-rule="evenodd" d="${data}"/></clipPath>`);
    clip = ` clip-path="url(#${id})"`;
  }
  // The clip is in the group's own frame, and a clip path follows the transform of what refers to it.
  lines.push(`<g${name}${transform}${clip}>`);
  for (const child of element.elements) writeElement(child, lines);
  lines.push('</g>');
}

/** Path data of a curve: absolute commands, arcs as cubics so that every writer draws the same. */
export function curveToPathData(curve: Curve): string {
  const smooth = arcsToCubics(curve);
  const at = (p: { readonly x: number; readonly y: number }): string =>
    `${formatNumber(p.x)} ${formatNumber(p.y)}`;
  let data = `M${at(smooth.start)}`;
  for (const segment of smooth.segments) {
    if (segment.kind === 'cubic') {
      data += `C${at(segment.handle1)} ${at(segment.handle2)} ${at(segment.to)}`;
    } else data += `L${at(segment.to)}`;
  }
  return curve.closed ? `${data}Z` : data;
}

function styleToSvg(style: PathStyle): string {
  const { stroke } = style;
  let text = ` fill="${style.fill ?? 'none'}"`;
  if (style.fill !== undefined) text += ' fill-rule="evenodd"';
  if (stroke !== undefined) {
    text += ` stroke="${stroke.colour}" stroke-width="${formatNumber(stroke.widthMm)}"`;
    if (stroke.dashMm !== undefined)
      text += ` stroke-dasharray="${stroke.dashMm.map(formatNumber).join(' ')}"`;
    if (stroke.cap === 'round') text += ' stroke-linecap="round"';
    if (stroke.join !== 'miter') text += ' stroke-linejoin="round"';
  }
  if (style.opacity !== undefined) text += ` opacity="${formatNumber(style.opacity)}"`;
  return text;
}

function textToSvg(element: TextElement): string {
  const { x, y } = element.at;
  const turn =
    element.angleDeg === 0
      ? ''
      : ` transform="rotate(${formatNumber(element.angleDeg)} ${formatNumber(x)} ${formatNumber(y)})"`;
  const weight = element.face === 'bold' || element.face === 'narrow bold' ? ' font-weight="bold"' : '';
  const stretch = element.face.startsWith('narrow') ? ' font-stretch="condensed"' : '';
  const anchor = element.anchor === 'start' ? '' : ` text-anchor="${element.anchor}"`;
  return (
    `<text x="${formatNumber(x)}" y="${formatNumber(y)}"${turn} font-family="${FONT_FAMILIES[element.face]}"` +
    `${weight}${stretch} font-size="${formatNumber(element.sizeMm)}"${anchor} fill="${element.colour}"` +
    ` textLength="${formatNumber(element.widthMm)}" lengthAdjust="spacingAndGlyphs"` +
    ` xml:space="preserve">${escapeXml(element.text)}</text>`
  );
}

/** The file stands within the drawing, in the older of SVG's two ways, which every program knows. */
function imageToSvg({ file, box, opacity }: ImageElement): string {
  const faint = opacity === undefined ? '' : ` opacity="${formatNumber(opacity)}"`;
  return (
    `<image x="${formatNumber(box.minX)}" y="${formatNumber(box.minY)}"` +
    ` width="${formatNumber(box.maxX - box.minX)}" height="${formatNumber(box.maxY - box.minY)}"` +
    ` preserveAspectRatio="none"${faint} xmlns:xlink="http://www.w3.org/1999/xlink"` +
    ` xlink:href="data:${file.type};base64,${toBase64(file.bytes)}"/>`
  );
}

/** Nine decimals in the turning part: on a hide of 3 m that is 3 nm. */
function matrixToSvg(m: Affine): string {
  const exact = (n: number): string => String(Math.round(n * 1e9) / 1e9 + 0);
  return `matrix(${exact(m.a)} ${exact(m.b)} ${exact(m.c)} ${exact(m.d)} ${formatNumber(m.e)} ${formatNumber(m.f)})`;
}

function uniqueId(name: string, taken: Set<string>): string {
  const base = name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-');
  let id = `layer-${base}`;
  for (let n = 2; taken.has(id); n++) id = `layer-${base}-${n}`;
  taken.add(id);
  return id;
}
