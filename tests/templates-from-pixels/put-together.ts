import { toMm } from './bitmap.js';
import type { Point } from './bitmap.js';
import { emptyEquations, observe, solve } from './least-squares.js';
import type { Join } from './match-rows.js';
import { moved } from './pose.js';
import type { Pose } from './pose.js';
import type { PageReading } from './read-page.js';

/** The pages laid together so that their marks meet as well as they can. */
export interface JoinedPages {
  /** Where each page lies, by its number in the list of readings; the first page stays where it is. */
  readonly poses: ReadonlyMap<number, Pose>;
  /** Greatest distance between the two prints of one mark, mm, and the join that has it. */
  readonly worstMark: { readonly mm: number; readonly join: Join };
}

const ROUNDS = 3;

/** Finds the places of these pages (connected by these joins) from nothing but the marks that two of them share. */
export function putTogether(
  readings: readonly PageReading[],
  pages: readonly number[],
  joins: readonly Join[],
): JoinedPages {
  const shared = joins.map((join) => ({ join, pairs: sharedMarks(readings, join) }));
  let poses = firstPoses(pages, shared);
  for (let round = 0; round < ROUNDS; round++) poses = improved(poses, pages, shared);
  let worstMark = { mm: 0, join: joins[0]! };
  for (const { join, pairs } of shared) {
    for (const [a, b] of pairs) {
      const [p, q] = [moved(poses.get(join.first)!, a), moved(poses.get(join.second)!, b)];
      const mm = Math.hypot(p.x - q.x, p.y - q.y);
      if (mm > worstMark.mm) worstMark = { mm, join };
    }
  }
  return { poses, worstMark };
}

type MarkPair = readonly [Point, Point];
interface SharedMarks {
  readonly join: Join;
  readonly pairs: readonly MarkPair[];
}

/** The squares of the row and the crosses at both ends of the join, as either page prints them, mm. */
function sharedMarks(readings: readonly PageReading[], join: Join): MarkPair[] {
  const [first, second] = [readings[join.first]!, readings[join.second]!];
  const [a, b] = join.isLevelNeighbour
    ? [first.rows.right!, second.rows.left!]
    : [first.rows.bottom!, second.rows.top!];
  const squares = a.marks.flatMap((mark, i): MarkPair[] => {
    const other = b.marks[i];
    return mark === undefined || other === undefined ? [] : [[toMm(mark), toMm(other)]];
  });
  const crosses: MarkPair[] = join.isLevelNeighbour
    ? [
        [first.crosses.topRight, second.crosses.topLeft],
        [first.crosses.bottomRight, second.crosses.bottomLeft],
      ]
    : [
        [first.crosses.bottomLeft, second.crosses.topLeft],
        [first.crosses.bottomRight, second.crosses.topRight],
      ];
  return [...crosses, ...squares];
}

/** Page by page from the first one: moved so that the first cross meets, not turned. */
function firstPoses(pages: readonly number[], shared: readonly SharedMarks[]): Map<number, Pose> {
  const poses = new Map<number, Pose>([[pages[0]!, { x: 0, y: 0, turn: 0 }]]);
  for (let grown = true; grown;) {
    grown = false;
    for (const { join, pairs } of shared) {
      const [a, b] = pairs[0]!;
      const [first, second] = [poses.get(join.first), poses.get(join.second)];
      if (first !== undefined && second === undefined)
        poses.set(join.second, { x: first.x + a.x - b.x, y: first.y + a.y - b.y, turn: 0 });
      else if (second !== undefined && first === undefined)
        poses.set(join.first, { x: second.x + b.x - a.x, y: second.y + b.y - a.y, turn: 0 });
      else continue;
      grown = true;
    }
  }
  return poses;
}

/** One step of Gauss and Newton over the places and turns of all pages but the first. */
function improved(
  poses: ReadonlyMap<number, Pose>,
  pages: readonly number[],
  shared: readonly SharedMarks[],
): Map<number, Pose> {
  const unknown = new Map(pages.slice(1).map((page, i) => [page, 3 * i]));
  const equations = emptyEquations(3 * unknown.size);
  for (const { join, pairs } of shared) {
    for (const [a, b] of pairs) {
      const ends = [
        { at: unknown.get(join.first), pose: poses.get(join.first)!, point: a, sign: 1 },
        { at: unknown.get(join.second), pose: poses.get(join.second)!, point: b, sign: -1 },
      ];
      const [p, q] = [moved(ends[0]!.pose, a), moved(ends[1]!.pose, b)];
      const along = { x: [] as [number, number][], y: [] as [number, number][] };
      for (const { at, pose, point, sign } of ends) {
        if (at === undefined) continue;
        const { x, y } = moved({ x: 0, y: 0, turn: pose.turn }, point);
        along.x.push([at, sign], [at + 2, -sign * y]);
        along.y.push([at + 1, sign], [at + 2, sign * x]);
      }
      observe(equations, along.x, q.x - p.x);
      observe(equations, along.y, q.y - p.y);
    }
  }
  const change = solve(equations);
  return new Map(
    pages.map((page) => {
      const [pose, at] = [poses.get(page)!, unknown.get(page)];
      if (at === undefined) return [page, pose];
      return [
        page,
        { x: pose.x + change[at]!, y: pose.y + change[at + 1]!, turn: pose.turn + change[at + 2]! },
      ];
    }),
  );
}
