import type { CopyRef, Lane, LaneRow } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import { areaOfRings } from './area.js';
import type { Area } from './area.js';
import { distanceToBoundary } from './boundary-distance.js';
import type { CheckContext, Placed } from './context.js';
import { farStretches } from './far-stretches.js';
import { FORGIVEN_MM } from './forgiven.js';
import { fromLane, laneCorridor, laneExtent, laneFrame } from './lane-frame.js';
import type { LaneFrame } from './lane-frame.js';
import { findStrapFaults } from './lane-strap.js';
import { overlapDeeperThan } from './overlap-depth.js';
import { isStrictlyInside } from './point-in-area.js';
import { copyKey, copyRef } from './violation.js';
import type { Finding } from './violation.js';

/**
 * Rule `lane`: straps lie in lanes, each in one. A lane's straps lie between its lines and its ends, parallel,
 * none over another in its row (a straight cut across may be shared); the lane is open at the sheet's edge at
 * the end that it names; nothing else reaches into it. Its kerf is what the cut takes away at least. Flaws and
 * openings may lie in it, between straps.
 */
export function findLaneFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [...membershipFaults(context)];
  for (const lane of context.answer.lanes) {
    const sheet = context.sheets.get(lane.sheet);
    const frame = laneFrame(lane);
    if (sheet === undefined || !(frame.length > 0)) {
      findings.push({ rule: 'lane', other: lane.id, sheet: lane.sheet });
      continue;
    }
    findings.push(...kerfFaults(lane, context), ...openEndFaults(lane, frame, context));
    findings.push(...lane.rows.flatMap((row, index) => rowFaults(context, lane, frame, row, index)));
    findings.push(...intruderFaults(context, lane, frame));
  }
  return findings;
}

/** Every placed strap is in exactly one lane. */
function membershipFaults(context: CheckContext): readonly Finding[] {
  const seats = new Map<string, number>();
  for (const strap of context.answer.lanes.flatMap(strapsOf)) {
    seats.set(copyKey(strap), (seats.get(copyKey(strap)) ?? 0) + 1);
  }
  return context.placed
    .filter(({ item, copy }) => item.lane !== undefined && seats.get(copyKey(copy)) !== 1)
    .map(({ copy, placement }) => ({
      rule: 'lane',
      at: copy,
      sheet: placement.sheet,
      measured: seats.get(copyKey(copy)) ?? 0,
      required: 1,
    }));
}

/** A lane of one strap has no line that neighbours could share. */
function kerfFaults(lane: Lane, { problem }: CheckContext): readonly Finding[] {
  const required = problem.distances.kerf ?? 0;
  if (lane.kerfMm >= required - FORGIVEN_MM || strapsOf(lane).length < 2) return [];
  return [{ rule: 'lane', other: lane.id, sheet: lane.sheet, measured: lane.kerfMm, required }];
}

function rowFaults(
  context: CheckContext,
  lane: Lane,
  frame: LaneFrame,
  row: LaneRow,
  index: number,
): readonly Finding[] {
  const findings: Finding[] = [];
  const seated: Placed[] = [];
  for (const strap of row.straps) {
    const placed = context.byCopy.get(copyKey(strap));
    if (placed === undefined || placed.placement.sheet !== lane.sheet || placed.item.lane === undefined) {
      findings.push({ rule: 'lane', at: copyRef(strap), other: lane.id, sheet: lane.sheet });
      continue;
    }
    seated.push(placed);
    findings.push(...findStrapFaults(placed, lane, frame, index));
  }
  return [...findings, ...endToEndFaults(seated, frame, lane)];
}

function endToEndFaults(seated: readonly Placed[], frame: LaneFrame, lane: Lane): readonly Finding[] {
  const extents = seated
    .map((placed) => ({ placed, ...laneExtent(frame, placed.area) }))
    .sort((one, other) => one.minAlong - other.minAlong);
  const findings: Finding[] = [];
  for (let i = 1; i < extents.length; i++) {
    const before = extents[i - 1]!;
    const here = extents[i]!;
    const measured = here.minAlong - before.maxAlong;
    if (measured >= lane.kerfMm - FORGIVEN_MM) continue;
    findings.push({
      rule: 'lane',
      at: here.placed.copy,
      other: before.placed.copy,
      sheet: lane.sheet,
      place: fromLane(frame, here.minAlong, here.minAcross),
      measured,
      required: lane.kerfMm,
    });
  }
  return findings;
}

function openEndFaults(lane: Lane, frame: LaneFrame, context: CheckContext): readonly Finding[] {
  const outline = areaOfRings([context.sheets.get(lane.sheet)!.sheet.region.outer]);
  const ends = lane.openAt === 'both' ? (['from', 'to'] as const) : [lane.openAt];
  return ends.flatMap((end) => {
    const along = end === 'from' ? 0 : frame.length;
    const inside = insidePlace(fromLane(frame, along, 0), fromLane(frame, along, frame.width), outline);
    if (inside === undefined) return [];
    const measured = -distanceToBoundary(outline, inside.x, inside.y);
    return [{ rule: 'lane', other: lane.id, sheet: lane.sheet, place: inside, measured, required: 0 }];
  });
}

/** A place of the segment that lies inside the outline deeper than what is forgiven. */
function insidePlace(p: Point, q: Point, outline: Area): Point | undefined {
  for (const [from, to] of farStretches(p.x, p.y, q.x, q.y, [outline], FORGIVEN_MM)) {
    const t = (from + to) / 2;
    const place = { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
    if (isStrictlyInside(outline, place.x, place.y)) return place;
  }
  return undefined;
}

function intruderFaults(context: CheckContext, lane: Lane, frame: LaneFrame): readonly Finding[] {
  if (!(frame.width > 0)) return [];
  const members = new Set(strapsOf(lane).map(copyKey));
  const corridor = areaOfRings([laneCorridor(frame)]);
  const findings: Finding[] = [];
  for (const placed of context.bySheet.get(lane.sheet) ?? []) {
    if (members.has(copyKey(placed.copy))) continue;
    const depth = overlapDeeperThan(placed.area, corridor, FORGIVEN_MM);
    if (depth === undefined) continue;
    findings.push({
      rule: 'lane',
      at: placed.copy,
      other: lane.id,
      sheet: lane.sheet,
      place: depth.place,
      measured: -depth.depth,
      required: 0,
    });
  }
  return findings;
}

function strapsOf(lane: Lane): readonly CopyRef[] {
  return lane.rows.flatMap((row) => row.straps);
}
