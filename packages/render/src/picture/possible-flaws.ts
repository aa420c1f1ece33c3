import { boxUnion, growBox, offsetRegions, regionBox } from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import { flawRegions } from '@hidebound/leather';
import type { FlawCandidate, Hide } from '@hidebound/leather';
import { boxCorners, group, path, regionCurves } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { BRASS, INK, MARK_LINE_MM, PAPER } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { capitalHeightMm, measureText, textLine } from '../text/measure-text.js';
import { regionOnDrawing } from './hide-view.js';
import type { HideView } from './hide-view.js';

/** A line around a possible flaw keeps this much off it, so that the photo below shows what it is. */
const ROOM_MM = 1;
const DASHES_MM = [0.9, 0.6] as const;
const NUMBER_MM = 2.1;
const NUMBER_ROOM_MM = 0.25;
const GROUND_OPACITY = 0.7;

/** "3" of "possible-3"; an id of another kind as it is. */
export function possibleNumber({ id }: Pick<FlawCandidate, 'id'>): string {
  return /^possible-(\d+)$/.exec(id)?.[1] ?? id;
}

/** What a photo may show and nobody has confirmed: a dashed line around each, with its number beside it. */
export function possibleFlaws(hide: Hide, view: HideView, fonts: FontBook): DrawingElement[] {
  const taken: Box[] = [];
  return hide.candidates.map((candidate) => {
    const regions = flawRegions(candidate.shape).map((region) => regionOnDrawing(view.toDrawing, region));
    const around = offsetRegions(regions, ROOM_MM, { join: 'round' });
    const box = around.map(regionBox).reduce(boxUnion);
    return group(`possible flaw ${candidate.id}`, [
      path(around.flatMap(outerOnly), {
        stroke: { colour: BRASS, widthMm: MARK_LINE_MM, dashMm: DASHES_MM },
      }),
      ...numberBeside(possibleNumber(candidate), box, taken, fonts),
    ]);
  });
}

function outerOnly({ outer }: Region) {
  return regionCurves({ outer, openings: [] });
}

/** At the first place around the box where no earlier number stands; on the right if all are taken. */
function numberBeside(text: string, box: Box, taken: Box[], fonts: FontBook): DrawingElement[] {
  const { widthMm } = measureText(fonts, 'bold', NUMBER_MM, text);
  const heightMm = capitalHeightMm(fonts, 'bold', NUMBER_MM);
  const places = placesAround(box, widthMm, heightMm).map((at) => plate(at, widthMm, heightMm));
  const free = places.find((place) => taken.every((other) => !overlap(place, other))) ?? places[0]!;
  taken.push(free);
  const ground = path(regionCurves({ outer: boxCorners(free), openings: [] }), {
    fill: PAPER,
    opacity: GROUND_OPACITY,
  });
  const at = { x: free.minX + NUMBER_ROOM_MM, y: free.maxY - NUMBER_ROOM_MM };
  return [ground, textLine(fonts, text, { at, sizeMm: NUMBER_MM, face: 'bold', colour: INK })];
}

/** Lower left corners of a number right, left, above and below of the box. */
function placesAround({ minX, minY, maxX, maxY }: Box, width: number, height: number): Point[] {
  const gap = NUMBER_ROOM_MM * 2;
  const [midX, midY] = [(minX + maxX - width) / 2, (minY + maxY + height) / 2];
  return [
    { x: maxX + gap, y: midY },
    { x: minX - gap - width, y: midY },
    { x: midX, y: minY - gap },
    { x: midX, y: maxY + gap + height },
    { x: maxX + gap, y: minY },
    { x: maxX + gap, y: maxY + height },
    { x: minX - gap - width, y: minY },
    { x: minX - gap - width, y: maxY + height },
  ];
}

function plate({ x, y }: Point, width: number, height: number): Box {
  return growBox({ minX: x, minY: y - height, maxX: x + width, maxY: y }, NUMBER_ROOM_MM);
}

function overlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
