import { FLOOR_UNIT_MM } from './unknowns.js';

/**
 * What is usual for phones, printers and paper, as deviations. They keep what a photo hardly tells from running away, and
 * they are what the error estimate falls back on. Too narrow: a strange lens is believed to be straight. Too wide: one sheet
 * alone tells nothing of places far from it.
 */
export const USUAL_DEVIATION = {
  /** Distortion by the half diagonal. Phones straighten most of theirs, plain cameras reach 0.1. */
  k1: 0.045,
  k2: 0.015,
  /** Parts of the lens off their axis. */
  p: 0.0007,
  /** The lens' axis off the picture's middle, in half diagonals. */
  axis: 0.01,
  /** Logarithm of the focal length over the usual one: from 20 mm to 35 mm of the small film. */
  focal: 0.25,
  /** Ink that ran and edges taken too wide, mm each side of a marker. */
  spreadMm: 0.3,
  /** Size of a print that nobody measured, as a share; printers asked for the actual size are off by some 0.3 %. */
  printedShare: 0.003,
  /** What a rule laid on a bar is misread by, mm. */
  barReadingMm: 0.18,
  /** What a person's figure for a side is off by, mm, and as a share. */
  statedMm: 0.5,
  /** Readings on a steel rule: its own error, as a share. */
  ruleShare: 0.0003,
  /** ISO/IEC 7810: 85.60 mm within 0.13 mm or so. */
  cardShare: 0.001,
  /** The rim of a sheet of paper that lies by itself, over the floor. */
  curlMm: 0.8,
  /** Zero of a rule from where the two meet. */
  slideMm: 50,
} as const;

export const inFloorUnits = (mm: number): number => mm / FLOOR_UNIT_MM;
