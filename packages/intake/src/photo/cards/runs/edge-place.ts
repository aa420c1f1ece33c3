import type { Point } from '@hidebound/geometry';

/** A place that was measured on an edge or a drawn line, mm; `weightMm` is how much of the line it stands for. */
export interface EdgePlace extends Point {
  readonly weightMm: number;
}
