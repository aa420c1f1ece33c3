import type { Point } from '@hidebound/geometry';
import type { LineRole, PatternPiece, Punch } from '@hidebound/leather';
import { formatNumber } from '../drawing/format-number.js';
import type { Stroke } from '../drawing/model.js';
import { LINE_LOOKS } from '../picture/line-looks.js';
import { FINE_LINE_MM, INK, INK_SOFT } from '../sheet/palette.js';
import { escapeXml } from '../svg/escape-xml.js';
import { exactPath, pair } from './exact-path.js';
import { nameOnPiece } from './name-on-piece.js';
import { linesOfPiece } from './piece-lines.js';
import type { PatternLine } from './piece-lines.js';
import { movedBy, placeApart } from './place-apart.js';

export interface PatternSvgOptions {
  /** Of the drawing; the name of the pattern, say. */
  readonly title: string;
}

const HOLE = LINE_LOOKS.hole.stroke;
const STROKES: Readonly<Partial<Record<LineRole, Stroke>>> = {
  cut: LINE_LOOKS.cut.stroke,
  'cut-out': HOLE,
  punch: HOLE,
  notch: HOLE,
  stitch: LINE_LOOKS.stitch.stroke,
  fold: LINE_LOOKS.fold.stroke,
  skive: LINE_LOOKS.skive.stroke,
  cement: LINE_LOOKS.cement.stroke,
  face: LINE_LOOKS.face.stroke,
  direction: { colour: INK, widthMm: FINE_LINE_MM * 1.4 },
};

/** The head of a direction arrow, in widths of its line; a marker is no line of the pattern. */
const ARROW_HEAD =
  `<defs><marker id="tail" viewBox="0 0 10 8" refX="9" refY="4" markerWidth="14" markerHeight="11" orient="auto">` +
  `<path d="M0 0L10 4L0 8L2.5 4Z" fill="${INK}"/></marker></defs>`;

/**
 * Pieces as a pattern drawing of our own, at true scale: `width` and `height` in mm, one user unit a mm, one group a
 * piece, and on every line what it is. `readPatternSvg` reads the same pieces back, whole mm of moving apart: numbers
 * are on the 1 µm grid, and what a drawn line can't hold exactly (the point that an arc passes through, a notch's
 * angle, an odd diameter) stands beside it. The same pieces give the same bytes everywhere.
 */
export function writePatternSvg(pieces: readonly PatternPiece[], { title }: PatternSvgOptions): string {
  const { offsets, widthMm, heightMm } = placeApart(pieces.map(({ piece }) => piece));
  const [width, height] = [formatNumber(widthMm), formatNumber(heightMm)];
  const hasArrow = pieces.some(({ piece }) => piece.direction !== undefined);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" fill="none" stroke-linejoin="round">`,
    `<title>${escapeXml(title)}</title>`,
    ...(hasArrow ? [ARROW_HEAD] : []),
    ...pieces.flatMap((found, i) => pieceGroup(found, offsets[i]!)),
    '</svg>',
    '',
  ].join('\n');
}

function pieceGroup(found: PatternPiece, offset: Point): string[] {
  const { piece, count, mirrored, material, size } = found;
  const said = {
    'data-piece': piece.name,
    'data-count': count,
    'data-mirrored': mirrored,
    'data-material': material,
    'data-size': size,
  };
  return [
    `<g${attributes(said)}>`,
    ...linesOfPiece(piece).map((line) => lineElement(line, offset)),
    ...piece.punches.map((punch) => punchElement(punch, offset)),
    nameElement(found, offset),
    '</g>',
  ];
}

/** `data-finished` tells the reader that this line is what it is: it is joined to nothing and mended in nothing. */
function lineElement({ role, curve, name, exact = {} }: PatternLine, offset: Point): string {
  const { data, via } = exactPath(movedBy(offset, curve));
  const said = {
    'data-role': role,
    'data-finished': 'yes',
    'data-name': name,
    ...Object.fromEntries(Object.entries(exact).map(([key, value]) => [`data-${key}`, String(value)])),
    d: data,
    'data-via': via === '' ? undefined : via,
    ...strokeOf(role),
    'marker-end': role === 'direction' ? 'url(#tail)' : undefined,
  };
  return `<path${attributes(said)}/>`;
}

/** Of an odd diameter in µm the circle's points don't lie on the grid, so it is drawn 1 µm wider. */
function punchElement({ at, diameterMm }: Punch, { x, y }: Point): string {
  const radius = Math.ceil(Math.round(diameterMm * 1000) / 2) / 1000;
  const said = {
    'data-role': 'punch',
    'data-finished': 'yes',
    'data-diameter': String(diameterMm),
    cx: formatNumber(at.x + x),
    cy: formatNumber(at.y + y),
    r: formatNumber(radius),
    ...strokeOf('punch'),
  };
  return `<circle${attributes(said)}/>`;
}

function strokeOf(role: LineRole): Readonly<Record<string, string | undefined>> {
  const { colour, widthMm, dashMm }: Stroke = STROKES[role] ?? LINE_LOOKS.cut.stroke;
  return {
    stroke: colour,
    'stroke-width': formatNumber(widthMm),
    'stroke-dasharray': dashMm?.map(formatNumber).join(' '),
  };
}

function nameElement({ piece }: PatternPiece, offset: Point): string {
  const { at, sizeMm } = nameOnPiece(piece);
  const [x, y] = pair({ x: at.x + offset.x, y: at.y + offset.y }).split(' ');
  const said = {
    'data-role': 'text',
    x,
    y,
    'font-family': 'DejaVu Sans, Verdana, sans-serif',
    'font-size': formatNumber(sizeMm),
    'text-anchor': 'middle',
    fill: INK_SOFT,
  };
  return `<text${attributes(said)}>${escapeXml(piece.name)}</text>`;
}

/** Attributes in their order; what is not known is left out. */
function attributes(values: Readonly<Record<string, string | number | undefined>>): string {
  return Object.entries(values)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${escapeXml(String(value))}"`)
    .join('');
}

/** Names that several of these pieces have. */
export function namesUsedTwice(pieces: readonly PatternPiece[]): string[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const { piece } of pieces) (seen.has(piece.name) ? twice : seen).add(piece.name);
  return [...twice];
}
