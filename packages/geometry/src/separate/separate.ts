import { WEIGHT_DECAY, WEIGHT_LEAST, WEIGHT_MOST } from './constants.js';
import { movePiece } from './move.js';
import type { Snapshot, World } from './world.js';
import { collides, refreshAll, restoreSnapshot, snapshotOf, totalSeverity } from './world.js';

/** How long a separation goes on. */
export interface SeparateEffort {
  /** Attempts in a row without getting better, after which it gives up. */
  readonly attempts: number;
  /** Rounds in a row without getting better, after which an attempt ends. */
  readonly rounds: number;
}

/** A round counts as better only if it gets below this share of the best. */
const CLEARLY_BETTER = 0.98;

/**
 * Drives overlaps out: round after round every piece that meets something is moved to its best place, and pairs that
 * still meet weigh more (guided local search; Egeblad, Nielsen & Odgaard 2007, Gardeyn, Vanden Berghe & Wauters
 * 2025). Yields after each move; true if nothing meets any more, else the world is at its least bad state.
 */
export function* separate(world: World, effort: SeparateEffort): Generator<undefined, boolean> {
  resetWeights(world);
  let total = refreshAll(world);
  if (total === 0) return true;
  let best: Snapshot = snapshotOf(world);
  let least = total;
  for (let attempt = 0; attempt < effort.attempts;) {
    const leastBefore = least;
    for (let round = 0; round < effort.rounds;) {
      yield* moveColliding(world);
      total = totalSeverity(world);
      if (total === 0) return true;
      raiseWeights(world);
      round = total < CLEARLY_BETTER * least ? 0 : round + 1;
      if (total < least) {
        least = total;
        best = snapshotOf(world);
      }
    }
    attempt = least < CLEARLY_BETTER * leastBefore ? 0 : attempt + 1;
    restoreSnapshot(world, best);
  }
  return false;
}

/** One round: all pieces that meet something, in random order. */
function* moveColliding(world: World): Generator<undefined, void> {
  const colliding: number[] = [];
  for (let i = 0; i < world.count; i++) {
    if (world.isFixed[i] === 0 && world.sheetOf[i]! >= 0 && collides(world, i)) colliding.push(i);
  }
  for (let k = colliding.length - 1; k > 0; k--) {
    const other = world.random.integer(k + 1);
    const i = colliding[k]!;
    colliding[k] = colliding[other]!;
    colliding[other] = i;
  }
  for (const i of colliding) {
    if (!collides(world, i)) continue;
    movePiece(world, i);
    yield;
  }
}

function resetWeights(world: World): void {
  world.weight.fill(1);
  world.groundWeight.fill(1);
  world.ruleWeight.fill(1);
}

/** Pairs that meet weigh more, the worst ones most; all others less, but never below 1. */
function raiseWeights(world: World): void {
  const { count, severity, weight } = world;
  let worst = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) worst = Math.max(worst, severity[i * count + j]!);
    worst = Math.max(worst, world.groundSeverity[i]!, world.ruleSeverity[i]!);
  }
  if (worst === 0) return;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const w = nextWeight(weight[i * count + j]!, severity[i * count + j]!, worst);
      weight[i * count + j] = w;
      weight[j * count + i] = w;
    }
    world.groundWeight[i] = nextWeight(world.groundWeight[i]!, world.groundSeverity[i]!, worst);
    world.ruleWeight[i] = nextWeight(world.ruleWeight[i]!, world.ruleSeverity[i]!, worst);
  }
}

function nextWeight(weight: number, severity: number, worst: number): number {
  if (severity > 0) return weight * (WEIGHT_LEAST + ((WEIGHT_MOST - WEIGHT_LEAST) * severity) / worst);
  const decayed = weight * WEIGHT_DECAY;
  return decayed < 1 ? 1 : decayed;
}
