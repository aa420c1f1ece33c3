/** A small bitmap, 1 for set cells, with where it was cut from. */
export interface Patch {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly cells: Uint8Array;
}

/** Every second round looks at the other two sides, so that a line is eaten evenly. */
export function thinned(patch: Patch): Patch {
  const cells = patch.cells.slice();
  let todo = indicesOf(cells);
  for (let changed = true; changed;) {
    changed = false;
    for (const step of [0, 1]) {
      const gone = todo.filter((i) => canGo(cells, patch.width, i, step));
      for (const i of gone) cells[i] = 0;
      if (gone.length > 0) {
        changed = true;
        todo = todo.filter((i) => cells[i] !== 0);
      }
    }
  }
  return { ...patch, cells };
}

export function indicesOf(cells: Uint8Array): number[] {
  const indices: number[] = [];
  for (let i = 0; i < cells.length; i++) if (cells[i] !== 0) indices.push(i);
  return indices;
}

/** T. Y. Zhang, C. Y. Suen 1984. The patch needs a border of unset cells. */
function canGo(cells: Uint8Array, width: number, i: number, step: number): boolean {
  const p2 = cells[i - width]!;
  const p3 = cells[i - width + 1]!;
  const p4 = cells[i + 1]!;
  const p5 = cells[i + width + 1]!;
  const p6 = cells[i + width]!;
  const p7 = cells[i + width - 1]!;
  const p8 = cells[i - 1]!;
  const p9 = cells[i - width - 1]!;
  const set = p2 + p3 + p4 + p5 + p6 + p7 + p8 + p9;
  if (set < 2 || set > 6) return false;
  const changes =
    rise(p2, p3) +
    rise(p3, p4) +
    rise(p4, p5) +
    rise(p5, p6) +
    rise(p6, p7) +
    rise(p7, p8) +
    rise(p8, p9) +
    rise(p9, p2);
  if (changes !== 1) return false;
  return step === 0 ? p2 * p4 * p6 === 0 && p4 * p6 * p8 === 0 : p2 * p4 * p8 === 0 && p2 * p6 * p8 === 0;
}

function rise(from: number, to: number): number {
  return from === 0 && to === 1 ? 1 : 0;
}

/** The longest way along the thin lines of a patch, from end to end, as indices; of a closed one, half of it. */
export function longestWay({ cells, width }: Patch): number[] {
  const start = cells.indexOf(1);
  if (start < 0) return [];
  const farthest = walk(cells, width, start).last;
  const { last, from } = walk(cells, width, farthest);
  const way = [last];
  for (let i = last; i !== farthest;) {
    i = from.get(i)!;
    way.push(i);
  }
  return way;
}

function walk(cells: Uint8Array, width: number, start: number): { last: number; from: Map<number, number> } {
  const from = new Map<number, number>([[start, start]]);
  const queue = [start];
  const around = [-1, 1, -width, width, -width - 1, -width + 1, width - 1, width + 1];
  for (let head = 0; head < queue.length; head++) {
    const i = queue[head]!;
    for (const way of around) {
      const next = i + way;
      if (cells[next] === 1 && !from.has(next)) {
        from.set(next, i);
        queue.push(next);
      }
    }
  }
  return { last: queue[queue.length - 1]!, from };
}
