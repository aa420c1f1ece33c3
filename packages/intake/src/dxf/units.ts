import { curveBox, boxUnion } from '@hidebound/geometry';
import type { DrawingUnit, PatternReading } from '@hidebound/leather';
import type { Drawing } from '../drawing/drawn-line.js';
import { IntakeError } from '../error.js';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { MM_PER_INCH } from '../limits.js';
import type { FileScale } from '../pattern-read.js';
import type { DxfHeader } from './header.js';
import type { PieceFile } from './piece-file.js';

/** As one decimal number: 12 inches in doubles are a hair less. */
const MM_PER_FOOT = 304.8;

const MM_PER_ASKED: Readonly<Record<DrawingUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: MM_PER_FOOT,
};

/** $INSUNITS (DXF reference, header variables). Units of maps and of stars are left out: no pattern is drawn in them. */
const MM_PER_HEADER: Readonly<Record<number, readonly [mm: number, name: string]>> = {
  1: [MM_PER_INCH, 'inches'],
  2: [MM_PER_FOOT, 'feet'],
  4: [1, 'mm'],
  5: [10, 'cm'],
  6: [1000, 'm'],
  8: [MM_PER_INCH / 1e6, 'microinches'],
  9: [MM_PER_INCH / 1e3, 'mils'],
  10: [36 * MM_PER_INCH, 'yards'],
  13: [1e-3, 'microns'],
  14: [100, 'dm'],
};

/** What a unit is: as the reading asks, as the header says, as the pieces' own text says; nothing if no one says. */
export function unitScale(
  header: DxfHeader,
  pieceFile: PieceFile | undefined,
  reading: PatternReading | undefined,
  findings: Findings,
): FileScale | undefined {
  if (reading?.units !== undefined) return { mmPerUnit: MM_PER_ASKED[reading.units], source: 'asked units' };
  const inHeader = MM_PER_HEADER[header.units ?? 0];
  const inText = pieceFile?.units === undefined ? undefined : TEXT_UNITS[pieceFile.units];
  if (inHeader !== undefined && inText !== undefined && inHeader[0] !== inText[0]) {
    tell(findings, 'warning', 'dxf-units-disagree', { header: inHeader[1], pieces: inText[1] });
  }
  const [mmPerUnit] = inHeader ?? inText ?? [];
  return mmPerUnit === undefined ? undefined : { mmPerUnit, source: 'units' };
}

/** "Units: METRIC" and "Units: ENGLISH" (ASTM D6673, from memory: mm and inches). */
const TEXT_UNITS = { metric: [1, 'mm'], english: [MM_PER_INCH, 'inches'] } as const;

const MM_PER_METRE = 1000;

/** Refuses a drawing without a unit, with its width in either of the likely ones; `drawing` has a mm for each unit. */
export function refuseWithoutUnit(drawing: Drawing, { measurement }: DxfHeader, file: string): never {
  const boxes = drawing.lines.map(({ curve }) => curveBox(curve));
  const box = boxes.length === 0 ? undefined : boxes.reduce(boxUnion);
  const width = box === undefined ? 0 : box.maxX - box.minX;
  const hints = [' (a hint in its header is for inches)', ' (a hint in its header is for metric units)'];
  const hint = hints[measurement ?? -1] ?? '';
  const params = { mm: lengthText(width), inches: lengthText(width * MM_PER_INCH), hint };
  throw new IntakeError('dxf-no-units', params, { file });
}

function lengthText(mm: number): string {
  const isLong = mm >= MM_PER_METRE;
  return `${Number((isLong ? mm / MM_PER_METRE : mm).toPrecision(3))} ${isLong ? 'm' : 'mm'}`;
}
