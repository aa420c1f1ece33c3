import type { FlawKind } from '@hidebound/leather';
import type { LineMark } from './lines.js';
import type { Spot } from './spots.js';

/** Through a hole the floor or its shadow is seen: far darker than any grain, in L*. */
const HOLE_DARKER = 16;
const LEAST_HOLE_RADIUS_MM = 1.2;

/** Bites and pocks are small; a larger round mark is a stain. */
const MOST_BITE_RADIUS_MM = 5;

/** What a spot most likely is. */
export function kindOfSpot({ contrast, radiusMm }: Spot): FlawKind {
  if (contrast < -HOLE_DARKER && radiusMm >= LEAST_HOLE_RADIUS_MM) return 'hole';
  return radiusMm <= MOST_BITE_RADIUS_MM ? 'bite' : 'stain';
}

/** An open cut is as dark as a hole. */
const CUT_DARKER = 20;
const MOST_CUT_WIDTH_MM = 3;

/** Veins show dark and wander; a dark line that is straighter than this is a scratch. */
const VEIN_DETOUR = 1.12;

/** Growth lines and wrinkles are wide and soft. */
const WRINKLE_WIDTH_MM = 6;

/** What a line most likely is. */
export function kindOfLine({ contrast, widthMm, line, lengthMm }: LineMark): FlawKind {
  if (contrast < -CUT_DARKER && widthMm <= MOST_CUT_WIDTH_MM) return 'cut';
  if (widthMm >= WRINKLE_WIDTH_MM) return 'wrinkle';
  const first = line[0]!;
  const last = line[line.length - 1]!;
  const straight = Math.hypot(last.x - first.x, last.y - first.y);
  return contrast < 0 && lengthMm > VEIN_DETOUR * straight ? 'vein' : 'scar';
}
