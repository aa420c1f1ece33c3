import type { LineRole } from '@hidebound/leather';
import { longName, noteRepair } from '../findings.js';
import type { Findings } from '../findings.js';
import { fitArcs } from './fit-arcs.js';
import { isFinished } from './finished.js';
import type { RoleLine } from './role-line.js';
import { cutTinyLoops } from './tiny-loops.js';

/** Marks whose ends alone count. */
const NOT_MENDED = new Set<LineRole>(['direction', 'notch', 'mirror', 'text', 'ignore']);

/** Outlines that a knife follows: a loop in one of them is an error. */
const OUTLINES = new Set<LineRole | undefined>([undefined, 'cut', 'cut-out', 'face']);

/** A curve that lies where it was but for rounding, as small circles do that were written as cubics, was not changed. */
const ROUNDED_MM = 0.002;

/** The line without tiny loops and with arcs where arcs were meant; every change is noted. */
export function mendLine(line: RoleLine, findings: Findings): RoleLine {
  if (isFinished(line) || (line.role !== undefined && NOT_MENDED.has(line.role))) return line;
  const element = longName(line.source);
  const loops = OUTLINES.has(line.role) ? cutTinyLoops(line.curve) : { curve: line.curve, removed: [] };
  for (const { at, extentMm } of loops.removed) {
    noteRepair(findings, { kind: 'loop removed', element, at, sizeMm: toMicrometres(extentMm) });
  }
  const { curve, fitted } = fitArcs(loops.curve);
  for (const { at, offMm } of fitted) {
    if (offMm > ROUNDED_MM)
      noteRepair(findings, { kind: 'curve fitted', element, at, sizeMm: toMicrometres(offMm) });
  }
  return curve === line.curve ? line : { ...line, curve };
}

export function toMicrometres(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
