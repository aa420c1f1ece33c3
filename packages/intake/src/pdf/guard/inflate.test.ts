import { deflateRawSync, deflateSync, constants } from 'node:zlib';
import { createRandom } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { inflatedSize, isZlib } from './inflate.js';

const { Z_FIXED, Z_HUFFMAN_ONLY, Z_RLE, Z_DEFAULT_STRATEGY } = constants;

/** Bytes of which some runs come again, so that all kinds of codes are used. */
function sample(seed: number, length: number): Uint8Array {
  const random = createRandom(seed);
  const bytes = new Uint8Array(length);
  for (let i = 0; i < length;) {
    const copies = random.between(0, 1) < 0.5 && i > 0;
    const run = Math.min(length - i, 1 + Math.floor(random.between(0, 300)));
    const back = 1 + Math.floor(random.between(0, Math.min(i, 32_768)));
    for (let k = 0; k < run; k++) {
      bytes[i + k] = copies ? bytes[i + k - back]! : Math.floor(random.between(0, seed % 2 === 0 ? 256 : 8));
    }
    i += run;
  }
  return bytes;
}

// zlib, as Node brings it, packs; what was packed is known.
describe('sizes of deflated data', () => {
  it('when zlib packs bytes by any of its ways, their size and their first bytes are told', () => {
    for (const strategy of [Z_DEFAULT_STRATEGY, Z_FIXED, Z_HUFFMAN_ONLY, Z_RLE]) {
      for (const level of [0, 1, 9]) {
        for (let seed = 0; seed < 8; seed++) {
          const bytes = sample(seed, 1 + seed * 9000);
          const packed = deflateSync(bytes, { level, strategy });
          const { size, head } = inflatedSize(packed, 0, 1e9, 40_000);
          expect(size).toBe(bytes.length);
          expect(Buffer.compare(head, bytes.subarray(0, 40_000))).toBe(0);
        }
      }
    }
  });

  it('when megabytes of one byte are packed, they are counted, and counting stops beyond the limit', () => {
    const packed = deflateSync(new Uint8Array(50_000_000));
    expect(inflatedSize(packed, 0, 1e9).size).toBe(50_000_000);
    const { size } = inflatedSize(packed, 0, 1_000_000);
    expect(size).toBeGreaterThan(1_000_000);
    expect(size).toBeLessThan(1_001_000);
  });

  it('when the data break off or are no deflated data, what comes before is counted', () => {
    const bytes = sample(3, 20_000);
    const packed = deflateSync(bytes);
    const { size } = inflatedSize(packed.subarray(0, packed.length >> 1), 0, 1e9);
    expect(size).toBeGreaterThan(0);
    expect(size).toBeLessThan(20_000);
    expect(inflatedSize(new Uint8Array([0x78, 0x9c, 7, 7, 7]), 0, 1e9).size).toBe(0);
  });

  it('when data start like zlib data, that is told', () => {
    expect(isZlib(deflateSync('x'), 0)).toBe(true);
    expect(isZlib(deflateSync('x', { level: 9 }), 0)).toBe(true);
    expect(isZlib(deflateRawSync('x'), 0)).toBe(false);
    expect(isZlib(new TextEncoder().encode('q 1 0 0'), 0)).toBe(false);
    expect(isZlib(new Uint8Array([0x78]), 0)).toBe(false);
  });
});
