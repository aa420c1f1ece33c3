import { roundCoordinate } from '@hidebound/geometry';
import * as v from 'valibot';
import { STITCH_GIVES, STITCH_TOOLS } from '../../model/stitch.js';
import type { StitchWish } from '../../model/stitch.js';
import { parsePitchMm } from '../../units/pitch.js';
import { definedOnly } from '../defined-only.js';
import { group, optional, requiredList } from './group.js';
import { name, oneOf, share } from './leaves.js';
import { readWith } from './problem.js';
import { writtenAngle, writtenLength, writtenPercent, writtenPositive } from './written-leaves.js';

/** Stitching as people write it in an order, article or workshop file. */

const PITCH_WORDS =
  'a pitch: millimetres as a bare number (3.4), or with its unit ("3.4 mm"); never by the inch';
export const writtenPitch = v.pipe(
  v.union([v.number(PITCH_WORDS), v.string(PITCH_WORDS)], PITCH_WORDS),
  readWith(parsePitchMm),
  v.transform(roundCoordinate),
);

const IRON_WORDS = 'an iron of the workshop’s table: its name, or its pitch in mm (3.4)';
const writtenIron = v.pipe(
  v.union([v.number(IRON_WORDS), name], IRON_WORDS),
  readWith((value: string | number) => (isFigure(value) ? roundCoordinate(parsePitchMm(value)) : value)),
);

/** "3.4 mm" or "8 spi", not "the fine one". */
function isFigure(value: string | number): boolean {
  return typeof value === 'number' || /^\s*[\d.½¼¾]/.test(value);
}

const PERCENT = 100;

const stitchGroup = group({
  pitch: [optional(writtenPitch), 'From hole to hole; overrules what the table says of the iron.'],
  iron: [optional(writtenIron), 'An iron of the workshop’s table, by name or by its pitch: gives the pitch.'],
  with: [
    optional(oneOf(STITCH_TOOLS)),
    'iron: the pitch stays; awl: it may be adjusted so that ends and corners get a hole; iron unless written.',
  ],
  gives: [
    optional(oneOf(STITCH_GIVES)),
    'With an iron: the gap that gives where the line is no whole number of pitches, or its length; both ends unless written.',
  ],
  adjust: [optional(writtenPercent), 'With an awl: how far the pitch may be adjusted; 10 % unless written.'],
  corner: [optional(writtenAngle), 'A turn sharper than this is a corner; 30 degrees unless written.'],
  endGap: [
    optional(writtenLength),
    'Least gap between an end of an open line and its hole; 0 unless written.',
  ],
  gather: [
    optional(writtenPercent),
    'How far two lines that are sewn together may differ without a warning; 2 % unless written.',
  ],
  tails: [optional(writtenLength), 'Thread of a seam for its tails and needles; 300 mm unless written.'],
  thread: [optional(name), 'The thread by name; the article’s first one unless written, then the order’s.'],
  stack: [
    optional(writtenPositive),
    'All that the needle goes through; unless written, it follows from the thickness of what is sewn together.',
  ],
  leaveOut: [optional(requiredList(name)), 'Names of stitch lines that get no holes.'],
});

export const writtenStitch = v.pipe(stitchGroup, v.transform(readStitch));

function readStitch(written: v.InferOutput<typeof stitchGroup>): StitchWish {
  return definedOnly({
    pitchMm: written.pitch,
    iron: written.iron,
    with: written.with,
    gives: written.gives,
    adjustShare: written.adjust === undefined ? undefined : toShare(written.adjust),
    cornerDeg: written.corner,
    endGapMm: written.endGap,
    gatherShare: written.gather === undefined ? undefined : toShare(written.gather),
    tailsMm: written.tails,
    thread: written.thread,
    stackMm: written.stack,
    leaveOut: written.leaveOut,
  });
}

function toShare(percent: number): number {
  return share.encode(Math.min(percent / PERCENT, 1)) as number;
}

/** The way back. A pitch is written with its unit, as a whole number alone would be asked about. */
export function writeStitch(wish: StitchWish): Readonly<Record<string, unknown>> {
  return definedOnly({
    pitch: wish.pitchMm === undefined ? undefined : writePitch(wish.pitchMm),
    iron: typeof wish.iron === 'number' ? writePitch(wish.iron) : wish.iron,
    with: wish.with,
    gives: wish.gives,
    adjust: wish.adjustShare === undefined ? undefined : toPercent(wish.adjustShare),
    corner: wish.cornerDeg,
    endGap: wish.endGapMm,
    gather: wish.gatherShare === undefined ? undefined : toPercent(wish.gatherShare),
    tails: wish.tailsMm,
    thread: wish.thread,
    stack: wish.stackMm,
    leaveOut: wish.leaveOut,
  });
}

export function writePitch(mm: number): string {
  return `${mm} mm`;
}

/** Shares have six decimals, so that their percentages have four. */
const PERCENT_STEPS = 1e4;

function toPercent(value: number): number {
  return Math.round(value * PERCENT * PERCENT_STEPS) / PERCENT_STEPS;
}
