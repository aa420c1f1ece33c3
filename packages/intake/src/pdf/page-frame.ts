import { roundCoordinate } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import { MM_PER_POINT } from './limits.js';
import type { PdfPage } from './pdfjs.js';

/** A page as one looks at it, and the way from its user space to mm from its top left corner, y down. */
export interface PageFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly toMm: Affine;
}

/**
 * The frame of a page: its crop box within the media box, turned clockwise by its rotation, at the size of its user
 * unit (ISO 32000-1, sections 8.3.2.3, 14.11.2 and table 30).
 */
export function pageFrame({
  view,
  rotate,
  userUnit,
}: Pick<PdfPage, 'view' | 'rotate' | 'userUnit'>): PageFrame {
  const [left, bottom, right, top] = view as [number, number, number, number];
  const k = MM_PER_POINT * (userUnit > 0 ? userUnit : 1);
  const width = roundCoordinate((right - left) * k);
  const height = roundCoordinate((top - bottom) * k);
  switch (rotate) {
    case 90:
      return { widthMm: height, heightMm: width, toMm: affine(0, k, k, 0, -bottom * k, -left * k) };
    case 180:
      return { widthMm: width, heightMm: height, toMm: affine(-k, 0, 0, k, right * k, -bottom * k) };
    case 270:
      return { widthMm: height, heightMm: width, toMm: affine(0, -k, -k, 0, top * k, right * k) };
    default:
      return { widthMm: width, heightMm: height, toMm: affine(k, 0, 0, -k, -left * k, top * k) };
  }
}

function affine(a: number, b: number, c: number, d: number, e: number, f: number): Affine {
  return { a, b, c, d, e, f };
}
