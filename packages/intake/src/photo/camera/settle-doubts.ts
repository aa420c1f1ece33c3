import type { Findings } from '../../findings.js';
import { tell } from '../../findings.js';
import type { Body } from './bodies.js';
import { groupMisses, mostUnusual, robustCost } from './least-squares.js';
import { solveScene } from './solve-scene.js';
import type { FloorScene, SolvedScene } from './solve-scene.js';
import { round1 } from './tell-floor.js';
import { FLOOR_UNIT_MM } from './unknowns.js';

/** A scene and how it was solved, with what did not fit taken out of it. */
export interface Settled {
  readonly scene: FloorScene;
  readonly solved: SolvedScene;
}

/** A marker that misses by so many deviations makes one look for a reason. */
const DOUBTFUL_MISS = 3;
/** So does a size, a lens or a curl that is so unusual: a sheet of another size bends these first. */
const DOUBTFUL_UNUSUAL = 2.4;
/** A reason counts if it lowers the cost by this share of it and by this much: a new unknown alone lowers it by 1 or so. */
const EXPLAINS_SHARE = 0.4;
const EXPLAINS_COST = 30;
/** A sheet whose size is free: any size between half and twice. */
const FREE_SIZE_SHARE = 0.3;
/** A size nearer than this to what is stated is no other size. */
const LEAST_SIZE_SHARE = 0.006;
/** Sheets that a person did not touch lie still within this, mm. */
const LEAST_MOVE_MM = 2;
const MOST_DOUBTS = 3;

/**
 * Where markers of a solved scene miss, each reason that one could think of is tried (a sheet of another size, a sheet that
 * was moved between two photos); one that explains the misses is told, and the sheet no longer bends the rest.
 */
export function settleDoubts(first: Settled, findings: Findings): Settled {
  let settled = first;
  for (let doubt = 0; doubt < MOST_DOUBTS; doubt++) {
    if (!isDoubtful(settled.solved)) break;
    const reason = bestReason(settled);
    if (reason === undefined) break;
    tellReason(settled, reason, findings);
    settled = reason.settled;
  }
  return settled;
}

interface Reason {
  readonly kind: 'size' | 'moved';
  readonly body: number;
  readonly photo?: number;
  readonly settled: Settled;
  readonly cost: number;
}

function isDoubtful({ problem, solution: { values } }: SolvedScene): boolean {
  const misses = groupMisses(problem, values);
  return misses.some((miss) => miss > DOUBTFUL_MISS) || mostUnusual(problem, values) > DOUBTFUL_UNUSUAL;
}

/** A bad sheet bends the others, so all are looked at. */
function bestReason(settled: Settled): Reason | undefined {
  const bodies = settled.scene.bodies.map((_, body) => body);
  const before = robustCost(settled.solved.problem, settled.solved.solution.values);
  let best: Reason | undefined;
  for (const tried of bodies.flatMap((body) => reasonsFor(settled, body))) {
    const cost = robustCost(tried.settled.solved.problem, tried.settled.solved.solution.values);
    if (cost < (best?.cost ?? before)) best = { ...tried, cost };
  }
  if (best === undefined) return undefined;
  const gain = before - best.cost;
  const isReason = gain > EXPLAINS_COST && gain > EXPLAINS_SHARE * before && !isSlight(best);
  return isReason ? best : undefined;
}

function reasonsFor({ scene }: Settled, body: number): Omit<Reason, 'cost'>[] {
  const reasons: Omit<Reason, 'cost'>[] = [];
  const photos = [...new Set(scene.sightings.filter((one) => one.body === body).map(({ photo }) => photo))];
  if (scene.bodies.length > 1 && scene.bodies[body]!.kind === 'sheet') {
    const tried = withFreeSize(scene, body);
    reasons.push({ kind: 'size', body, settled: { scene: tried, solved: solveScene(tried) } });
  }
  for (const photo of photos.length > 1 ? photos.slice(1) : []) {
    const tried = withMoved(scene, body, photo);
    if (!isTied(tried)) continue;
    reasons.push({ kind: 'moved', body, photo, settled: { scene: tried, solved: solveScene(tried) } });
  }
  return reasons;
}

function withFreeSize(scene: FloorScene, body: number): FloorScene {
  const freed: Body = {
    ...scene.bodies[body]!,
    sizeShare: { x: FREE_SIZE_SHARE, y: FREE_SIZE_SHARE },
    sizeGroup: `free ${body}`,
  };
  return { ...scene, bodies: scene.bodies.map((each, i) => (i === body ? freed : each)) };
}

/** The sheet as one of its own from this photo on. */
function withMoved(scene: FloorScene, body: number, photo: number): FloorScene {
  const moved = scene.bodies.length;
  return {
    ...scene,
    bodies: [...scene.bodies, scene.bodies[body]!],
    sightings: scene.sightings.map((one) =>
      one.body === body && one.photo >= photo ? { ...one, body: moved } : one,
    ),
  };
}

/** True where every photo shares a body with another one, directly or by way of others. */
function isTied({ seen, sightings }: FloorScene): boolean {
  const reached = new Set([0]);
  for (let grew = true; grew;) {
    const bodies = new Set(sightings.filter(({ photo }) => reached.has(photo)).map(({ body }) => body));
    const before = reached.size;
    for (const { photo, body } of sightings) if (bodies.has(body)) reached.add(photo);
    grew = reached.size > before;
  }
  return reached.size === seen.length;
}

function isSlight({ kind, body, settled }: Reason): boolean {
  if (kind === 'size') return Math.abs(sizeOf(settled, body)) < LEAST_SIZE_SHARE;
  return moveOf(settled, body) < LEAST_MOVE_MM;
}

function sizeOf({ solved }: Settled, body: number): number {
  const first = solved.layout.size[body]!;
  return (solved.solution.values[first]! + solved.solution.values[first + 1]!) / 2;
}

/** How far the last body, which is this one moved, lies from it. */
function moveOf({ scene, solved }: Settled, body: number): number {
  const { values } = solved.solution;
  const [was, is] = [solved.layout.body[body]!, solved.layout.body[scene.bodies.length - 1]!];
  return FLOOR_UNIT_MM * Math.hypot(values[was]! - values[is]!, values[was + 1]! - values[is + 1]!);
}

function tellReason(before: Settled, { kind, body, photo, settled }: Reason, findings: Findings): void {
  const { name } = before.scene.bodies[body]!;
  if (kind === 'moved') {
    const file = before.scene.seen[photo!]!.file;
    tell(findings, 'warning', 'sheet-moved', { name, mm: round1(moveOf(settled, body)) }, { file });
    return;
  }
  const share = sizeOf(settled, body);
  const only = before.scene.bodies.length === 2 ? before.scene.bodies[1 - body] : undefined;
  const percent = round1(Math.abs(share) * 100);
  const both = only === undefined ? name : `${name} (or ${only.name} the other way)`;
  const direction = share > 0 ? 'larger' : 'smaller';
  tell(findings, 'warning', 'sheet-size-differs', { name: both, percent, direction });
}
