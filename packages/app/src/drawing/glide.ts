import { placementMatrix } from './piece-layer.js';
import type { DrawnPiece, ShownPiece } from './piece-layer.js';

type Place = ShownPiece['placement'];

interface Glide {
  readonly drawn: DrawnPiece;
  readonly from: Place;
  readonly started: number;
}

/** How long a piece takes to its new place, ms. */
const GLIDE_MS = 220;

export interface Glider {
  /** Lets a piece glide from where it is seen to its place. */
  readonly move: (drawn: DrawnPiece, from: Place) => void;
  /** Puts all of them to their places. */
  readonly end: () => void;
}

/** Pieces that glide to their places, all in one frame's work; at once for those who asked for less motion. */
export function createGlider(): Glider {
  const gliding = new Map<Element, Glide>();
  let frame = 0;
  const isStill = matchMedia('(prefers-reduced-motion: reduce)').matches;

  const step = (now: number): void => {
    frame = 0;
    for (const [node, { drawn, from, started }] of gliding) {
      const share = Math.min(1, Math.max(0, (now - started) / GLIDE_MS));
      node.setAttribute('transform', placementMatrix(between(from, drawn.placement, share)));
      if (share === 1) gliding.delete(node);
    }
    if (gliding.size > 0) frame = requestAnimationFrame(step);
  };

  return {
    move: (drawn, from) => {
      const node = drawn.group.node;
      if (isStill) {
        node.setAttribute('transform', placementMatrix(drawn.placement));
        return;
      }
      gliding.set(node, { drawn, from, started: performance.now() });
      if (frame === 0) frame = requestAnimationFrame(step);
    },
    end: () => {
      cancelAnimationFrame(frame);
      frame = 0;
      for (const [node, { drawn }] of gliding)
        node.setAttribute('transform', placementMatrix(drawn.placement));
      gliding.clear();
    },
  };
}

/** Straight on, and the shorter way round. Slow at the end. */
export function between(from: Place, to: Place, share: number): Place {
  const eased = 1 - (1 - share) * (1 - share);
  const turn = ((((to.rotationDeg - from.rotationDeg + 180) % 360) + 360) % 360) - 180;
  return {
    ...to,
    x: from.x + (to.x - from.x) * eased,
    y: from.y + (to.y - from.y) * eased,
    rotationDeg: share === 1 ? to.rotationDeg : from.rotationDeg + turn * eased,
  };
}
