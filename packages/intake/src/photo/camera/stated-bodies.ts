import type { Point } from '@hidebound/geometry';
import type { StatedReference } from '@hidebound/leather';
import type { Body, Sighting } from './bodies.js';
import { USUAL_DEVIATION } from './usual.js';

/** ISO/IEC 7810, ID-1: 85.60 × 53.98 mm. Its corners are rounded (2.88 to 3.48 mm); the straight sides are meant. */
export const ID1_CARD_MM = { width: 85.6, height: 53.98 } as const;

/** A person hits a corner or a mark within so many px (deviation). */
export const CLICKED_PX = 1.5;

type RuleReading = Extract<StatedReference, { kind: 'rules' }>['along'][number];

const NOWHERE: Point = { x: 0, y: 0 };
/** From this many readings on, a rule tells where the other one's zero lies. */
const READINGS_FOR_ZERO = 3;

/** A reference that a person stated for one photo, as a body with what is seen of it. */
export function statedBody(
  stated: StatedReference,
  photo: number,
  body: number,
  deviationPx: readonly number[],
): { readonly body: Body; readonly sightings: readonly Sighting[] } {
  if (stated.kind === 'rules') return rulesBody(stated.along, stated.across, photo, body);
  const { width, height } =
    stated.kind === 'card' ? ID1_CARD_MM : { width: stated.widthMm, height: stated.heightMm };
  const ring = rectangleRing(width, height);
  const share = (mm: number): number =>
    stated.kind === 'card' ? USUAL_DEVIATION.cardShare : USUAL_DEVIATION.statedMm / mm;
  return {
    body: {
      name: stated.kind,
      kind: stated.kind,
      ring,
      half: { x: width / 2, y: height / 2 },
      sizeShare: { x: share(width), y: share(height) },
      stretch: { x: 1, y: 1 },
      sizeGroup: `stated ${body}`,
      curlMm: 0,
      slides: false,
    },
    sightings: ring.map((on, i) => ({
      photo,
      body,
      group: `${photo} ${stated.kind} ${body}`,
      on,
      spread: NOWHERE,
      px: stated.corners[i]!,
      deviationPx: deviationPx[i] ?? CLICKED_PX,
      slide: NOWHERE,
    })),
  };
}

/** The along rule lies on the x axis, the across rule on the y axis; each may have its zero elsewhere. */
function rulesBody(
  along: readonly RuleReading[],
  across: readonly RuleReading[],
  photo: number,
  body: number,
): { readonly body: Body; readonly sightings: readonly Sighting[] } {
  const far = { x: farthest(along), y: farthest(across) };
  const slides = along.length >= READINGS_FOR_ZERO && across.length >= READINGS_FOR_ZERO;
  const way = acrossWay(along, across);
  const sight = ({ at, mm }: RuleReading, isAlong: boolean): Sighting => ({
    photo,
    body,
    group: `${photo} rules ${body}`,
    on: isAlong ? { x: mm, y: 0 } : { x: 0, y: way * mm },
    spread: NOWHERE,
    px: at,
    deviationPx: CLICKED_PX,
    slide: slides ? (isAlong ? { x: 1, y: 0 } : { x: 0, y: 1 }) : NOWHERE,
  });
  return {
    body: {
      name: 'rules',
      kind: 'rules',
      ring: [NOWHERE, { x: far.x, y: 0 }, { x: far.x, y: way * far.y }, { x: 0, y: way * far.y }],
      half: far,
      sizeShare: { x: USUAL_DEVIATION.ruleShare, y: USUAL_DEVIATION.ruleShare },
      stretch: { x: 1, y: 1 },
      sizeGroup: `stated ${body}`,
      curlMm: 0,
      slides,
    },
    sightings: [
      ...along.map((reading) => sight(reading, true)),
      ...across.map((reading) => sight(reading, false)),
    ],
  };
}

/** 1 where the across rule runs clockwise from the along rule, as y from x; -1 where it runs the other way. */
function acrossWay(along: readonly RuleReading[], across: readonly RuleReading[]): number {
  const [a, b] = [directionOf(along), directionOf(across)];
  return a.x * b.y - a.y * b.x >= 0 ? 1 : -1;
}

function directionOf(readings: readonly RuleReading[]): Point {
  const sorted = [...readings].sort((a, b) => a.mm - b.mm);
  const [first, last] = [sorted[0]!.at, sorted[sorted.length - 1]!.at];
  return { x: last.x - first.x, y: last.y - first.y };
}

const farthest = (readings: readonly RuleReading[]): number =>
  Math.max(1, ...readings.map(({ mm }) => Math.abs(mm)));

function rectangleRing(width: number, height: number): readonly Point[] {
  const x = width / 2;
  const y = height / 2;
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ];
}
