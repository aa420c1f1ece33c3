import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { unpackedSize } from './unpack.js';

const LIMIT = 1_000_000;
const text = (letters: string) => new TextEncoder().encode(letters);

describe('sizes of packed streams', () => {
  it('when a stream is deflated twice, the larger of both sizes is told, whether its filters say so or not', () => {
    const once = deflateSync(new Uint8Array(900_000));
    const twice = deflateSync(once);
    expect(unpackedSize(twice, ['flate', 'flate'], LIMIT)).toBe(900_000);
    expect(unpackedSize(twice, ['flate'], LIMIT)).toBe(900_000);
    expect(unpackedSize(twice, [], LIMIT)).toBe(900_000);
    expect(unpackedSize(once, ['flate'], LIMIT)).toBe(900_000);
    const bomb = deflateSync(deflateSync(new Uint8Array(5_000_000)));
    expect(unpackedSize(bomb, ['flate', 'flate'], LIMIT)).toBeGreaterThan(LIMIT);
  });

  it('when deflated data are written in letters, they are followed', () => {
    const packed = deflateSync(new Uint8Array(2_000_000));
    const hex = text(`${packed.toString('hex')}>`);
    expect(unpackedSize(hex, ['hex', 'flate'], LIMIT)).toBeGreaterThan(LIMIT);
    expect(unpackedSize(text(base85(packed)), ['base 85', 'flate'], LIMIT)).toBeGreaterThan(LIMIT);
  });

  // ISO 32000-1, section 7.4.4.2, example 2: the bytes 45 45 45 45 45 65 45 45 45 66 as LZW.
  it('when a stream is packed with LZW, its size is that of the example in the standard', () => {
    const packed = Uint8Array.of(0x80, 0x0b, 0x60, 0x50, 0x22, 0x0c, 0x0c, 0x85, 0x01);
    expect(unpackedSize(packed, ['lzw'], LIMIT)).toBe(10);
  });

  it('when runs of one byte are packed, each counts as long as it is', () => {
    // ISO 32000-1, section 7.4.5: 255 is the byte twice, 129 is 128 times, 2 is three bytes as they are, 128 the end.
    const packed = Uint8Array.of(255, 7, 129, 9, 2, 1, 2, 3, 128, 50);
    expect(unpackedSize(packed, ['runs'], LIMIT)).toBe(2 + 128 + 3);
  });
});

/** ISO 32000-1, section 7.4.3; whole groups only. */
function base85(bytes: Uint8Array): string {
  let letters = '';
  const padded = [...bytes, 0, 0, 0].slice(0, Math.ceil(bytes.length / 4) * 4);
  for (let i = 0; i < padded.length; i += 4) {
    let value = padded.slice(i, i + 4).reduce((sum, byte) => sum * 256 + byte, 0);
    let group = '';
    for (let k = 0; k < 5; k++) {
      group = String.fromCharCode(0x21 + (value % 85)) + group;
      value = Math.floor(value / 85);
    }
    letters += group;
  }
  return `${letters}~>`;
}
