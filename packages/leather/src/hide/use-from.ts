import { atan2Deg, minimumWidthBox, polylineNearest, ringCentroid, sinCosDeg } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Hide } from '../model/hide.js';
import type { UseFrom } from '../model/order.js';
import { hideRegion } from './hide-region.js';

export interface UseFromVector {
  /** Unit vector from the end that is used first into the hide. */
  readonly vector: Point;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The way into a hide. From the tail: against the backbone (end to start); from the head: along it; from the
 * backbone: at a right angle away from it, towards the side where most of the hide lies; from the belly: the
 * opposite. A number is the angle itself. Without a backbone the long axis of the smallest-width box stands for it,
 * the tail at its greater x, and a warning says so.
 */
export function useFromVector(hide: Hide, useFrom: UseFrom): UseFromVector {
  if (typeof useFrom === 'number') return { vector: unitAt(useFrom), diagnostics: [] };
  const { backbone } = hide;
  const ends = backbone === undefined ? undefined : headToTail(backbone[0]!, backbone[backbone.length - 1]!);
  if (ends === undefined || backbone === undefined) {
    const diagnostic: Diagnostic = {
      code: 'use-from-guessed',
      severity: 'warning',
      params: { hide: hide.id, useFrom },
      place: { at: hide.id },
    };
    return { vector: withoutBackbone(hide, useFrom), diagnostics: [diagnostic] };
  }
  if (useFrom === 'head') return { vector: ends, diagnostics: [] };
  if (useFrom === 'tail') return { vector: opposite(ends), diagnostics: [] };
  const centre = ringCentroid(hideRegion(hide).outer);
  const near = polylineNearest(backbone, centre).point;
  const across = { x: -ends.y + 0, y: ends.x };
  const side = (centre.x - near.x) * across.x + (centre.y - near.y) * across.y;
  const away = side >= 0 ? across : opposite(across);
  return { vector: useFrom === 'backbone' ? away : opposite(away), diagnostics: [] };
}

function withoutBackbone(hide: Hide, useFrom: Exclude<UseFrom, number>): Point {
  const { angleDeg } = minimumWidthBox(hideRegion(hide).outer);
  const axis = angleDeg % 180;
  const tailwards = unitAt(axis > 90 ? axis + 180 : axis);
  switch (useFrom) {
    case 'head':
      return tailwards;
    case 'tail':
      return opposite(tailwards);
    case 'backbone':
      return { x: -tailwards.y + 0, y: tailwards.x };
    case 'belly':
      return { x: tailwards.y, y: -tailwards.x + 0 };
  }
}

function headToTail(head: Point, tail: Point): Point | undefined {
  if (head.x === tail.x && head.y === tail.y) return undefined;
  return unitAt(atan2Deg(tail.y - head.y, tail.x - head.x));
}

function unitAt(deg: number): Point {
  const { sin, cos } = sinCosDeg(deg);
  return { x: cos, y: sin };
}

function opposite(v: Point): Point {
  return { x: -v.x + 0, y: -v.y + 0 };
}
