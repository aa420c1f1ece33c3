import type { DxfParts } from './write-dxf.js';
import { decimal } from './pairs.js';
import type { Pair } from './pairs.js';

/** Of $INSUNITS. */
const MILLIMETRES = '4';
/** Of $MEASUREMENT. */
const METRIC = '1';

/** The header section: version, extents and units. */
export function header(version: string, { widthMm, heightMm }: DxfParts, more: readonly Pair[] = []): Pair[] {
  const far: Pair[] = [
    [10, decimal(widthMm)],
    [20, decimal(heightMm)],
  ];
  const zero: Pair[] = [
    [10, '0.0'],
    [20, '0.0'],
  ];
  return section('HEADER', [
    [9, '$ACADVER'],
    [1, version],
    ...more,
    [9, '$INSBASE'],
    ...zero,
    [30, '0.0'],
    [9, '$EXTMIN'],
    ...zero,
    [30, '0.0'],
    [9, '$EXTMAX'],
    ...far,
    [30, '0.0'],
    [9, '$LIMMIN'],
    ...zero,
    [9, '$LIMMAX'],
    ...far,
    [9, '$INSUNITS'],
    [70, MILLIMETRES],
    [9, '$MEASUREMENT'],
    [70, METRIC],
  ]);
}

export function section(name: string, pairs: readonly Pair[]): Pair[] {
  return [[0, 'SECTION'], [2, name], ...pairs, [0, 'ENDSEC']];
}

export function place(at: { readonly x: number; readonly y: number }, first = 10): Pair[] {
  return [
    [first, decimal(at.x)],
    [first + 10, decimal(at.y)],
  ];
}
