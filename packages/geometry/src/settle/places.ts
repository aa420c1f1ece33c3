import type { SettleTask } from './contacts.js';

/** Where the bodies are, and which unknowns they are: body i at 2 slot[i] and 2 slot[i] + 1; slot -1: it stays. */
export interface Places {
  readonly slot: Int32Array;
  /** Bodies that move. */
  readonly free: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

export function createPlaces(task: SettleTask): Places {
  const count = task.shapes.length;
  const slot = new Int32Array(count);
  let free = 0;
  for (let i = 0; i < count; i++) slot[i] = task.fixed !== undefined && task.fixed[i] === 1 ? -1 : free++;
  return { slot, free, x: Float64Array.from(task.x), y: Float64Array.from(task.y) };
}

export function readPlaces({ slot, x, y }: Places, unknowns: Float64Array): void {
  for (let i = 0; i < slot.length; i++) {
    if (slot[i]! < 0) continue;
    unknowns[2 * slot[i]!] = x[i]!;
    unknowns[2 * slot[i]! + 1] = y[i]!;
  }
}

export function writePlaces({ slot, x, y }: Places, unknowns: Float64Array): void {
  for (let i = 0; i < slot.length; i++) {
    if (slot[i]! < 0) continue;
    x[i] = unknowns[2 * slot[i]!]!;
    y[i] = unknowns[2 * slot[i]! + 1]!;
  }
}
