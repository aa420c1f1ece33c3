import type { StraightPicture } from '../straight/straight-picture.js';
import type { Rail } from './even-steps.js';
import { SAMPLE_NUMBERS, samplePlace } from './fine-colour.js';

/** What lies across the edge at each point of a rail: samples one pixel apart from `-reach` (leather) to `reach` (floor). */
export interface EdgeSamples {
  readonly reach: number;
  /** Samples at each point: 2 × reach + 1. */
  readonly across: number;
  readonly values: Float32Array;
  /** 1 for what is this edge's: leather inwards up to the next edge, floor outwards up to the next edge. */
  readonly counts: Uint8Array;
  /** 1 where red, green and blue all are at their brightest. */
  readonly blownOut: Uint8Array;
}

/** An amount of light from which on nothing can be told any more: 250 of 255. */
const BLOWN_OUT = 0.956;

/**
 * `sideAt` tells on which side a place of the picture is thought to lie: above 0 leather, below 0 floor, NaN where that
 * is not to be used. The first pixels beside the edge, `near`, may be on either side yet.
 */
export function sampleEdge(
  picture: StraightPicture,
  rail: Rail,
  reach: number,
  near: number,
  sideAt: (x: number, y: number) => number,
): EdgeSamples {
  const across = 2 * reach + 1;
  const values = new Float32Array(rail.points.length * across * SAMPLE_NUMBERS);
  const counts = new Uint8Array(rail.points.length * across);
  const blownOut = new Uint8Array(rail.points.length * across);
  rail.points.forEach((point, i) => {
    const out = rail.out[i]!;
    for (const way of [-1, 1])
      for (let away = way < 0 ? 1 : 0; away <= reach; away++) {
        const x = point.x + out.x * away * way;
        const y = point.y + out.y * away * way;
        const at = i * across + reach + away * way;
        if (!samplePlace(picture, x, y, values, at * SAMPLE_NUMBERS)) break;
        const side = sideAt(x, y);
        if (Number.isNaN(side) || (away > near && side * way > 0)) break;
        counts[at] = 1;
        const light = at * SAMPLE_NUMBERS + 3;
        blownOut[at] = Math.min(values[light]!, values[light + 1]!, values[light + 2]!) > BLOWN_OUT ? 1 : 0;
      }
  });
  return { reach, across, values, counts, blownOut };
}
