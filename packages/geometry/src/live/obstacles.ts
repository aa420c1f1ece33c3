import { areBoxesNear, areaOfRings } from '../check/area.js';
import type { Area } from '../check/area.js';
import type { Placed, PlacedNeed } from '../check/context.js';
import { laneCorridor, laneFrame } from '../check/lane-frame.js';
import { laneNeighbourKerf, laneSeats } from '../check/lane-seats.js';
import { copyKey } from '../check/violation.js';
import type { CopyRef, Need, QualityRegion } from '../types/problem.js';
import { needsOfPlaced } from './bench.js';
import type { Bench } from './bench.js';

/** Something that a moved copy, or a part of it, may not come nearer to than a distance. */
export interface Obstacle {
  /** A copy, or the name that the check gives it. */
  readonly name: CopyRef | string;
  /** What of the moved copy it concerns: 0 is the whole copy, from 1 on the areas of its parts. */
  readonly shape: number;
  readonly area: Area;
  /** `outside`: what is solid is all around the area, and the copy is to stay within. */
  readonly solid: 'inside' | 'outside';
  readonly distance: number;
  /** Another area may cover for this one (zones side by side), so that touching it is no fault in itself. */
  readonly isPassable: boolean;
}

/** A moved copy where it was put, the areas by which it touches, and all that they may meet within reach. */
export interface Surroundings {
  /** The whole copy, then the areas of its parts. */
  readonly shapes: readonly Area[];
  readonly obstacles: readonly Obstacle[];
}

/** All that a copy at its place may meet when it travels no farther than `reach` (mm). */
export function surroundingsOf(bench: Bench, moved: Placed, reach: number): Surroundings {
  const needs = needsOfPlaced(bench.stage, moved);
  const shapes = needs.flatMap(({ areas }) => areas);
  const obstacles = [
    ...neighbours(bench, moved),
    ...sheetObstacles(bench, moved),
    ...leatherObstacles(moved, needs),
    ...laneObstacles(bench, moved),
    ...blockObstacles(bench, moved),
  ].filter(({ shape, area, solid, distance }) => {
    return solid === 'outside' || areBoxesNear(shapes[shape]!.box, area.box, reach + distance);
  });
  return { shapes, obstacles };
}

const WHOLE = { shape: 0, solid: 'inside', isPassable: false } as const;

function neighbours({ problem, placed, answer }: Bench, moved: Placed): Obstacle[] {
  const { gap, betweenGroups = 0 } = problem.distances;
  const seats = laneSeats(answer);
  const key = copyKey(moved.copy);
  return placed
    .filter((other) => other.sheet === moved.sheet && copyKey(other.copy) !== key)
    .map((other) => {
      const kerf = laneNeighbourKerf(seats.get(key), seats.get(copyKey(other.copy)));
      const apart = other.item.group === moved.item.group ? gap : Math.max(gap, betweenGroups);
      return { ...WHOLE, name: other.copy, area: other.area, distance: kerf ?? apart };
    });
}

function sheetObstacles({ problem }: Bench, { sheet }: Placed): Obstacle[] {
  const { edge, void: fromVoid } = problem.distances;
  const voids = sheet.qualities
    .filter(({ quality }) => quality.isVoid)
    .flatMap(({ quality, areas }) =>
      areas.map((area) => ({
        ...WHOLE,
        name: quality.id,
        area,
        distance: fromVoid + quality.uncertaintyMm,
      })),
    );
  return [{ ...WHOLE, name: 'outline', area: sheet.area, solid: 'outside', distance: edge }, ...voids];
}

/** Leather that is not good enough for the copy or a part of it, and the zones that it must stay in. */
function leatherObstacles({ sheet }: Placed, needs: readonly PlacedNeed[]): Obstacle[] {
  const obstacles: Obstacle[] = [];
  let shape = 0;
  for (const { need, areas: own } of needs) {
    for (const _ of own) {
      for (const { quality, areas } of sheet.qualities) {
        const isZone = quality.zone !== undefined && need.zones?.includes(quality.zone) === true;
        for (const area of areas) {
          const base = { ...WHOLE, name: quality.id, shape, area, distance: 0 };
          if (isUnfit(quality, need)) obstacles.push(base);
          if (isZone) obstacles.push({ ...base, solid: 'outside', isPassable: true });
        }
      }
      shape += 1;
    }
  }
  return obstacles;
}

function isUnfit({ grade, weak }: QualityRegion, need: Need): boolean {
  return grade > need.maxGrade || (weak && need.strong);
}

function laneObstacles({ answer }: Bench, { copy, placement }: Placed): Obstacle[] {
  const key = copyKey(copy);
  return answer.lanes
    .filter(({ sheet, rows }) => {
      const isMember = rows.some(({ straps }) => straps.some((strap) => copyKey(strap) === key));
      return sheet === placement.sheet && !isMember;
    })
    .map((lane) => ({ frame: laneFrame(lane), name: lane.id }))
    .filter(({ frame }) => frame.length > 0 && frame.width > 0)
    .map(({ frame, name }) => ({ ...WHOLE, name, area: areaOfRings([laneCorridor(frame)]), distance: 0 }));
}

function blockObstacles({ answer }: Bench, { copy, placement, item }: Placed): Obstacle[] {
  const key = copyKey(copy);
  return answer.roughCuts
    .filter(({ sheet }) => sheet === placement.sheet)
    .map(({ id, outline, members, marginMm }) => {
      const base = { ...WHOLE, name: id, area: areaOfRings([outline]), distance: 0 };
      if (!members.some((member) => copyKey(member) === key)) return base;
      return { ...base, solid: 'outside' as const, distance: Math.max(marginMm, item.roughMargin ?? 0) };
    });
}
