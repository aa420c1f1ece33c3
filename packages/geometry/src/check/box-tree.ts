/**
 * A tree of boxes over edges in the order of their rings: neighbours along a ring lie near each other, so
 * that halving the list again and again gives small boxes without sorting. Node 1 is the root, node k has
 * the children 2k and 2k + 1, and leaf j holds the edges from j · LEAF on.
 */
export interface BoxTree {
  /** Leaves, a power of two. */
  readonly leaves: number;
  /** Four numbers a node: minX, minY, maxX, maxY. */
  readonly boxes: Float64Array;
  readonly count: number;
}

/** Edges in a leaf: fewer cost more boxes, more cost more edges looked at in vain. */
const LEAF = 4;

export function buildBoxTree(
  ax: Float64Array,
  ay: Float64Array,
  bx: Float64Array,
  by: Float64Array,
  count: number,
): BoxTree {
  let leaves = 1;
  while (leaves * LEAF < count) leaves *= 2;
  const boxes = new Float64Array(8 * leaves);
  for (let node = 0; node < 2 * leaves; node++)
    boxes.set([Infinity, Infinity, -Infinity, -Infinity], 4 * node);
  for (let i = 0; i < count; i++) {
    const at = 4 * (leaves + Math.floor(i / LEAF));
    boxes[at] = Math.min(boxes[at]!, ax[i]!, bx[i]!);
    boxes[at + 1] = Math.min(boxes[at + 1]!, ay[i]!, by[i]!);
    boxes[at + 2] = Math.max(boxes[at + 2]!, ax[i]!, bx[i]!);
    boxes[at + 3] = Math.max(boxes[at + 3]!, ay[i]!, by[i]!);
  }
  for (let node = leaves - 1; node >= 1; node--) {
    const at = 4 * node;
    const left = 8 * node;
    boxes[at] = Math.min(boxes[left]!, boxes[left + 4]!);
    boxes[at + 1] = Math.min(boxes[left + 1]!, boxes[left + 5]!);
    boxes[at + 2] = Math.max(boxes[left + 2]!, boxes[left + 6]!);
    boxes[at + 3] = Math.max(boxes[left + 3]!, boxes[left + 7]!);
  }
  return { leaves, boxes, count };
}

/** Calls `visit` for every edge whose leaf touches the box; the visitor looks at the edge itself. */
export function visitEdgesInBox(
  tree: BoxTree,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
  visit: (edge: number) => void,
): void {
  const descend = (node: number): void => {
    const at = 4 * node;
    const { boxes, leaves } = tree;
    if (boxes[at]! > maxX || boxes[at + 2]! < minX || boxes[at + 1]! > maxY || boxes[at + 3]! < minY) return;
    if (node < leaves) {
      descend(2 * node);
      descend(2 * node + 1);
      return;
    }
    const first = (node - leaves) * LEAF;
    const end = Math.min(first + LEAF, tree.count);
    for (let edge = first; edge < end; edge++) visit(edge);
  };
  descend(1);
}

/**
 * Calls `visit` for edges in about the order of their distance to the box; `visit` returns the reach (mm)
 * within which further edges matter, and what lies beyond it is passed over.
 */
export function visitNearestEdges(
  tree: BoxTree,
  box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number },
  reach: number,
  visit: (edge: number) => number,
): void {
  const { boxes, leaves } = tree;
  let limit = reach;
  const distanceTo = (node: number): number => {
    const at = 4 * node;
    const dx = Math.max(boxes[at]! - box.maxX, box.minX - boxes[at + 2]!, 0);
    const dy = Math.max(boxes[at + 1]! - box.maxY, box.minY - boxes[at + 3]!, 0);
    return Math.sqrt(dx * dx + dy * dy);
  };
  const descend = (node: number, distance: number): void => {
    if (distance > limit) return;
    if (node >= leaves) {
      const first = (node - leaves) * LEAF;
      const end = Math.min(first + LEAF, tree.count);
      for (let edge = first; edge < end; edge++) limit = Math.min(limit, visit(edge));
      return;
    }
    const left = distanceTo(2 * node);
    const right = distanceTo(2 * node + 1);
    if (left <= right) {
      descend(2 * node, left);
      descend(2 * node + 1, right);
    } else {
      descend(2 * node + 1, right);
      descend(2 * node, left);
    }
  };
  descend(1, distanceTo(1));
}
