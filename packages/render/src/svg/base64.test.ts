import { expect, test } from 'vitest';
import { toBase64 } from './base64.js';

// RFC 4648, section 10.
test.each([
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
])('when "%s" is written, it is "%s"', (text, written) => {
  expect(toBase64(Uint8Array.from(text, (letter) => letter.charCodeAt(0)))).toBe(written);
});

test('when there are more bytes than are taken at a time, Node writes the same', () => {
  for (const length of [12_287, 12_288, 12_289, 40_000]) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 197 + (i >> 8)) & 255);
    expect(toBase64(bytes) === Buffer.from(bytes).toString('base64'), `${length} bytes`).toBe(true);
  }
});
