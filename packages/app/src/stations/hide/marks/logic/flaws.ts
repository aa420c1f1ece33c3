import { roundCoordinate, roundCurve, roundPoint, transformCurve, translation } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { freeFlawName } from '@hidebound/leather';
import type { Effect, Flaw, FlawShape, Hide } from '@hidebound/leather';
import type { PlainEffect } from '../../../../drawing/hide-layer.js';

/** What the three plain choices mean for looks and strength. */
export const PLAIN_EFFECTS: Readonly<Record<PlainEffect, Effect>> = {
  never: { looks: 'C', strength: 'weak', isVoid: true },
  hidden: { looks: 'C', strength: 'sound', isVoid: false },
  anywhere: { looks: 'A', strength: 'sound', isVoid: false },
};

/** The hide with one flaw more, and the flaw's name. */
export function withFlaw(
  hide: Hide,
  shape: FlawShape,
  effect: PlainEffect,
): { readonly hide: Hide; readonly id: string } {
  const used = new Set([...hide.flaws, ...hide.candidates].map(({ id }) => id));
  const id = freeFlawName('flaw', used);
  const flaw: Flaw = { id, side: 'grain', shape, effect: PLAIN_EFFECTS[effect] };
  return { hide: { ...hide, flaws: [...hide.flaws, flaw] }, id };
}

export function withoutFlaw(hide: Hide, id: string): Hide {
  return { ...hide, flaws: hide.flaws.filter((flaw) => flaw.id !== id) };
}

export function changedFlaw(hide: Hide, id: string, change: (flaw: Flaw) => Flaw): Hide {
  return { ...hide, flaws: hide.flaws.map((flaw) => (flaw.id === id ? change(flaw) : flaw)) };
}

/** A mark moved by so many mm, on the file's grid. */
export function movedShape(shape: FlawShape, by: Point): FlawShape {
  const move = ({ x, y }: Point): Point => roundPoint({ x: x + by.x, y: y + by.y });
  switch (shape.kind) {
    case 'point':
      return { ...shape, at: move(shape.at) };
    case 'line':
      return { ...shape, line: shape.line.map(move) };
    case 'area':
      return { ...shape, outline: roundCurve(transformCurve(translation(by.x, by.y), shape.outline)) };
  }
}

/** The size that a person means by a mark: radius of a spot, width of a stroke, mm; none for a patch. */
export function sizeOf(shape: FlawShape): number | undefined {
  if (shape.kind === 'area') return undefined;
  return shape.kind === 'point' ? shape.radiusMm : shape.widthMm;
}

/** Smaller than an awl's tip is no mark. */
const LEAST_SIZE_MM = 0.5;

export function resizedShape(shape: FlawShape, sizeMm: number): FlawShape {
  const size = roundCoordinate(Math.max(LEAST_SIZE_MM, sizeMm));
  switch (shape.kind) {
    case 'point':
      return { ...shape, radiusMm: size };
    case 'line':
      return { ...shape, widthMm: size };
    case 'area':
      return shape;
  }
}
