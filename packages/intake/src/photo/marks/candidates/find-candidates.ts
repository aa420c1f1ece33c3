import { curveFromPolyline, roundPoint, simpleLine } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import type { FlawCandidate, Side } from '@hidebound/leather';
import type { StraightPicture } from '../../straight/straight-picture.js';
import type { Vision } from '../../vision/vision.js';
import { groundOf } from '../map/even-out.js';
import { leatherCells, leatherMap } from '../map/leather-map.js';
import type { LeatherCells, LeatherMap } from '../map/leather-map.js';
import { LINE_CALIBRATION, SPOT_CALIBRATION, STAIN_CALIBRATION, confidenceOf } from './confidence.js';
import { kindOfLine, kindOfSpot } from './kinds.js';
import { levelOf, levelsOf } from './level.js';
import type { Level } from './level.js';
import { findLines } from './lines.js';
import { reliefOf } from './relief.js';
import { findSpots } from './spots.js';
import { findStains } from './stains.js';
import { withoutDoubles } from './without-doubles.js';
import type { Possible } from './without-doubles.js';

export interface CandidateOptions {
  /** Pictures in light from one side, in the same frame: they show relief by its shadows. */
  readonly raking?: readonly StraightPicture[];
  /** What chalk covers or closes in; nothing is searched there. */
  readonly chalk?: readonly Region[];
  /** The picture's cells around the leather, if they were made for the search for chalk. */
  readonly cells?: LeatherCells | undefined;
  /** Less sure ones are left out; 0 to 1. */
  readonly leastConfidence?: number;
  /** The side that lies upwards in the picture. */
  readonly side?: Side;
}

/** Beside the edge lie its shadow, clamp marks, and what the outline is off by. */
const EDGE_MM = 7;

/** The ground is drawn from so far around: wider than brands' strokes, narrower than shadows. */
const GROUND_SIGMA_MM = 40;

/** Spots are looked for at cells of 1, 2 and 4 mm, lines too. */
const LEVELS = 3;

const LEAST_CONFIDENCE = 0.3;

/** More than this no one looks through. */
const MOST_CANDIDATES = 200;

const SIMPLE_MM = 0.7;

/**
 * Marks on the leather that may be flaws, the surest first: spots, lines, patches, and what only a raking light shows.
 * Each stands out against the texture of the leather around it; none is taken for a fact. Ids "possible-1" and so on.
 */
export function findCandidates(
  picture: StraightPicture,
  leather: Region,
  options: CandidateOptions,
  vision: Vision,
): FlawCandidate[] {
  const mapOptions = { edgeMm: EDGE_MM, leftOut: options.chalk ?? [] };
  const cells = options.cells ?? leatherCells(picture, leather.outer, vision);
  if (cells === undefined) return [];
  const map = leatherMap(cells, leather, mapOptions, vision);
  const plain = evened(map, vision);
  const found = [...marksIn(plain, vision), ...stainMarks(map, vision)];
  for (const raking of options.raking ?? []) {
    const lit = leatherCells(raking, leather.outer, vision);
    if (lit === undefined) continue;
    const level = evened(leatherMap(lit, leather, mapOptions, vision), vision);
    found.push(...reliefMarks(level, plain, vision));
  }
  const least = options.leastConfidence ?? LEAST_CONFIDENCE;
  return withoutDoubles(found)
    .filter(({ confidence }) => confidence >= least)
    .slice(0, MOST_CANDIDATES)
    .map((possible, i) => candidateOf(possible, i, options.side ?? 'grain'));
}

function evened(map: LeatherMap, vision: Vision): Level {
  const { grid, mask, lightness } = map;
  const plane = { width: grid.width, height: grid.height, values: lightness };
  const ground = groundOf(plane, mask, GROUND_SIGMA_MM / grid.stepX, vision).values;
  const off = new Float32Array(lightness.length);
  for (let i = 0; i < off.length; i++) if (mask[i] !== 0) off[i] = lightness[i]! - ground[i]!;
  return levelOf(grid, off, mask, vision);
}

function marksIn(finest: Level, vision: Vision): Possible[] {
  return levelsOf(finest, LEVELS, vision).flatMap((level) => [
    ...findLines(level, vision).map((mark): Possible => ({
      shape: { kind: 'line', line: mark.line, widthMm: mark.widthMm },
      flaw: kindOfLine(mark),
      confidence: confidenceOf(mark.strength, LINE_CALIBRATION),
      strength: mark.strength,
      contrast: mark.contrast,
    })),
    ...findSpots(level, vision).map((spot): Possible => ({
      shape: { kind: 'point', at: spot.at, radiusMm: spot.radiusMm },
      flaw: kindOfSpot(spot),
      confidence: confidenceOf(spot.strength, SPOT_CALIBRATION),
      strength: spot.strength,
      contrast: spot.contrast,
    })),
  ]);
}

function stainMarks(map: LeatherMap, vision: Vision): Possible[] {
  return findStains(map, vision).map(({ ring, strength, contrast }) => ({
    shape: { kind: 'area', ring },
    flaw: 'stain',
    confidence: confidenceOf(strength, STAIN_CALIBRATION),
    strength,
    contrast,
  }));
}

/** What shows in raking light is relief, whatever shade its sides have. */
function reliefMarks(lit: Level, plain: Level, vision: Vision): Possible[] {
  return marksIn(reliefOf(lit, plain), vision).map((mark) => ({
    ...mark,
    isRelief: true,
    flaw:
      mark.shape.kind === 'line' && mark.shape.widthMm >= WRINKLE_MM
        ? 'wrinkle'
        : mark.shape.kind === 'line'
          ? 'scar'
          : 'bite',
  }));
}

const WRINKLE_MM = 4;

function candidateOf({ shape, flaw, confidence }: Possible, i: number, side: Side): FlawCandidate {
  return { id: `possible-${i + 1}`, kind: flaw, side, confidence, shape: storedShape(shape) };
}

function storedShape(shape: Possible['shape']): FlawCandidate['shape'] {
  switch (shape.kind) {
    case 'point':
      return { kind: 'point', at: roundPoint(shape.at), radiusMm: tenths(shape.radiusMm) };
    case 'line':
      return {
        kind: 'line',
        line: simpleLine(shape.line, SIMPLE_MM).map(roundPoint),
        widthMm: tenths(shape.widthMm),
      };
    case 'area':
      return { kind: 'area', outline: curveFromPolyline(shape.ring.map(roundPoint), true) };
  }
}

function tenths(mm: number): number {
  return Math.max(0.1, Math.round(10 * mm) / 10);
}
