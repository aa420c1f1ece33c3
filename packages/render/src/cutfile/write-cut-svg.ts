import { arcCentre, curveSteps } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import { formatNumber } from '../drawing/format-number.js';
import { escapeXml } from '../svg/escape-xml.js';
import type { CutDrawing, CutDrawingPath } from './cut-drawing.js';
import { CUT_LAYERS } from './layers.js';
import { narrowArcs } from './narrow-arcs.js';

/** Many machines cut only what is no wider than a thousandth of an inch, and engrave what is. */
const HAIRLINE_MM = 0.025;
/** Written with three decimals, arcs of a third of a circle stay within 0.001 mm. */
const WIDEST_ARC_DEG = 120;

/**
 * The cut file as SVG at true scale: `width` and `height` in mm, one user unit a mm. A group for each kind, in the
 * order of cutting and so are the paths within; lines as `L`, arcs as `A`, cubics as `C`, all absolute. The same
 * drawing gives the same bytes everywhere.
 */
export function writeCutSvg({ title, widthMm, heightMm, paths }: CutDrawing): string {
  const width = formatNumber(widthMm);
  const height = formatNumber(heightMm);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escapeXml(title)}</title>`,
  ];
  for (const kind of new Set(paths.map((path) => path.kind))) {
    const { name, colour } = CUT_LAYERS[kind];
    lines.push(`<g id="${name}" fill="none" stroke="${colour}" stroke-width="${formatNumber(HAIRLINE_MM)}">`);
    for (const path of paths) if (path.kind === kind) lines.push(pathToSvg(path));
    lines.push('</g>');
  }
  lines.push('</svg>', '');
  return lines.join('\n');
}

function pathToSvg({ name, curves }: CutDrawingPath): string {
  return `<path data-name="${escapeXml(name)}" d="${curves.map(curveData).join('')}"/>`;
}

function curveData(curve: Curve): string {
  const narrow = narrowArcs(curve, WIDEST_ARC_DEG);
  let data = `M${pair(narrow.start)}`;
  for (const { from, segment } of curveSteps(narrow)) {
    const to = pair(segment.to);
    if (segment.kind === 'cubic') data += `C${pair(segment.handle1)} ${pair(segment.handle2)} ${to}`;
    else if (segment.kind === 'line' || to === pair(from)) data += `L${to}`;
    else data += arcData(from, segment.via, segment.to);
  }
  return curve.closed ? `${data}Z` : data;
}

function arcData(from: Point, via: Point, to: Point): string {
  const circle = arcCentre(from, via, to);
  if (circle === 'straight') return `L${pair(to)}`;
  const radius = formatNumber(circle.radius);
  return `A${radius} ${radius} 0 0 ${circle.sweepDeg > 0 ? 1 : 0} ${pair(to)}`;
}

function pair({ x, y }: Point): string {
  return `${formatNumber(x)} ${formatNumber(y)}`;
}
