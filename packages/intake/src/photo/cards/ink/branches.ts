import type { Point } from '@hidebound/geometry';

/** A line of pixels between two ends or crossings; a ring comes back to its start. */
export interface Branch {
  readonly points: readonly Point[];
  /** Numbers of the nodes at its ends; undefined for a ring. */
  readonly from?: number;
  readonly to?: number;
}

export interface Skeleton {
  readonly branches: readonly Branch[];
  /** How many branches meet at each node. */
  readonly degrees: readonly number[];
}

/** The lines of a thinned mask, in pixels. Crossings that touch each other are one node. */
export function branchesOf(mask: Uint8Array, width: number): Skeleton {
  const around = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
  const neighbours = (i: number) => around.map((d) => i + d).filter((j) => mask[j] === 1);
  const point = (i: number): Point => ({ x: i % width, y: Math.floor(i / width) });
  const set: number[] = [];
  mask.forEach((value, i) => {
    if (value === 1) set.push(i);
  });
  const { nodeOf, centres } = nodesOf(set, neighbours, point);
  const done = new Set<number>();
  const branches: Branch[] = [];
  for (const start of set) {
    const from = nodeOf.get(start);
    if (from === undefined) continue;
    for (const first of neighbours(start)) {
      const next = nodeOf.get(first);
      if (next === from || done.has(first)) continue;
      if (next !== undefined) {
        if (next > from) branches.push({ points: [centres[from]!, centres[next]!], from, to: next });
        continue;
      }
      const walked = walk(start, first, neighbours, nodeOf);
      for (const i of walked.pixels) done.add(i);
      const points = [centres[from]!, ...walked.pixels.map(point)];
      if (walked.node === undefined) continue;
      branches.push({ points: [...points, centres[walked.node]!], from, to: walked.node });
    }
  }
  branches.push(...ringsOf(set, nodeOf, done, neighbours, point));
  const degrees = centres.map((_, n) =>
    branches.reduce((sum, b) => sum + (b.from === n ? 1 : 0) + (b.to === n ? 1 : 0), 0),
  );
  return { branches, degrees };
}

type Neighbours = (i: number) => readonly number[];

/** Pixels with one neighbour, or three and more; those that touch are one. */
function nodesOf(set: readonly number[], neighbours: Neighbours, point: (i: number) => Point) {
  const nodeOf = new Map<number, number>();
  const centres: Point[] = [];
  const isNode = (i: number) => neighbours(i).length !== 2;
  for (const start of set) {
    if (nodeOf.has(start) || !isNode(start)) continue;
    const isCrossing = neighbours(start).length > 2;
    const members = [start];
    nodeOf.set(start, centres.length);
    for (let k = 0; isCrossing && k < members.length; k++) {
      for (const j of neighbours(members[k]!)) {
        if (nodeOf.has(j) || neighbours(j).length <= 2) continue;
        nodeOf.set(j, centres.length);
        members.push(j);
      }
    }
    const points = members.map(point);
    const mean = (values: readonly number[]) => values.reduce((a, b) => a + b) / values.length;
    centres.push({ x: mean(points.map(({ x }) => x)), y: mean(points.map(({ y }) => y)) });
  }
  return { nodeOf, centres };
}

/** Along a line from a node until the next one. */
function walk(start: number, first: number, neighbours: Neighbours, nodeOf: ReadonlyMap<number, number>) {
  const pixels = [first];
  const seen = new Set([start, first]);
  for (let i = first; ;) {
    const next = neighbours(i).filter((j) => !seen.has(j));
    const node =
      next.find((j) => nodeOf.has(j)) ??
      (pixels.length > 1 ? neighbours(i).find((j) => nodeOf.has(j)) : undefined);
    if (node !== undefined) return { pixels, node: nodeOf.get(node) };
    const [step] = next;
    if (step === undefined) return { pixels, node: undefined };
    seen.add(step);
    pixels.push(step);
    i = step;
  }
}

function ringsOf(
  set: readonly number[],
  nodeOf: ReadonlyMap<number, number>,
  done: Set<number>,
  neighbours: Neighbours,
  point: (i: number) => Point,
): Branch[] {
  const rings: Branch[] = [];
  for (const start of set) {
    if (nodeOf.has(start) || done.has(start)) continue;
    const pixels = [start];
    done.add(start);
    for (let i: number | undefined = start; i !== undefined;) {
      i = neighbours(i).find((j) => !done.has(j));
      if (i === undefined) break;
      done.add(i);
      pixels.push(i);
    }
    if (pixels.length >= SHORTEST_RING) rings.push({ points: pixels.map(point) });
  }
  return rings;
}

const SHORTEST_RING = 8;
