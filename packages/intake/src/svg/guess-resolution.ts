import { curveBox } from '@hidebound/geometry';
import type { DrawnLine } from '../drawing/drawn-line.js';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { MM_PER_INCH, OTHER_RESOLUTIONS, PX_PER_INCH, ROUND_SIZE_MM } from '../limits.js';
import type { SvgDrawing } from './read-drawing.js';

/** Sizes that people draw are whole mm or whole eighths of an inch more often than chance would have it. */
const ROUND_STEPS_MM = [1, MM_PER_INCH / 8];

/** Fewer different sizes than this prove nothing. */
const LEAST_SIZES = 2;

/** So large a share of sizes must be round at the other resolution, and no more than this one at 96. */
const CLEARLY_ROUND = 0.8;
const HARDLY_ROUND = 0.5;

/**
 * Warns when a file in px looks like one of another resolution: its sizes are round in mm or inches at 72 or 90 px to
 * the inch but not at 96, or it bears the marks of a program that wrote so. Nothing is changed.
 */
export function warnOfResolution(drawing: SvgDrawing, findings: Findings): void {
  if (!drawing.isInPx || drawing.lines.length === 0) return;
  const sizes = distinctSizes(drawing.lines);
  const shareAt = (dpi: number) => shareRound(sizes.map((mm) => (mm * PX_PER_INCH) / dpi));
  const marked = markedResolution(drawing);
  const standard = shareAt(PX_PER_INCH);
  const bySizes =
    sizes.length >= LEAST_SIZES && standard <= HARDLY_ROUND
      ? OTHER_RESOLUTIONS.find((dpi) => shareAt(dpi) >= CLEARLY_ROUND)
      : undefined;
  const dpi = bySizes ?? (standard >= CLEARLY_ROUND ? undefined : marked);
  if (dpi === undefined) return;
  const largest = Math.max(...sizes);
  const params = { dpi, now: round1(largest), then: round1((largest * PX_PER_INCH) / dpi) };
  tell(findings, 'warning', 'other-resolution', params, { at: '<svg>' });
}

function distinctSizes(lines: readonly DrawnLine[]): number[] {
  const sizes = new Set<number>();
  for (const { curve } of lines) {
    const box = curveBox(curve);
    for (const size of [box.maxX - box.minX, box.maxY - box.minY]) {
      if (size > 2) sizes.add(Math.round(size * 100) / 100);
    }
  }
  return [...sizes];
}

function shareRound(sizes: readonly number[]): number {
  const isRound = (mm: number) =>
    ROUND_STEPS_MM.some((step) => Math.abs(mm - Math.round(mm / step) * step) <= ROUND_SIZE_MM);
  return sizes.length === 0 ? 0 : sizes.filter(isRound).length / sizes.length;
}

/** Programs before 0.92 of the one and with a certain root element of the other wrote 90 and 72 px to the inch. */
function markedResolution({ root }: SvgDrawing): number | undefined {
  const version = /^0\.(\d+)/.exec(root.attributes.get('inkscape:version') ?? '');
  if (version !== null) return Number(version[1]!.padEnd(2, '0').slice(0, 2)) < 92 ? 90 : undefined;
  const marks =
    root.attributes.has('enable-background') || /enable-background/.test(root.attributes.get('style') ?? '');
  return marks && root.attributes.get('x') === '0px' && root.attributes.get('y') === '0px' ? 72 : undefined;
}

function round1(n: number): number {
  return Math.round(n * 10) / 10;
}
