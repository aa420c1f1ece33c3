import type { Drawing } from '../drawing/drawn-line.js';

/**
 * One page of a pattern file as one looks at it: cropped, turned, at its true size. Lines and texts in mm, y down, from
 * the page's top left corner; nothing lies beyond its edges, and a line that was cut by an edge or by a clip ends there.
 */
export interface PatternPage extends Drawing {
  /** From 1. */
  readonly number: number;
  readonly widthMm: number;
  readonly heightMm: number;
}
