import { describe, expect, test } from 'vitest';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseHide, writeHide } from '../files/hide-file.js';
import { parseLayout } from '../files/layout-file.js';
import { hashHide, hashPieceShape, sha256Hex } from './index.js';

const FOLDER = new URL('../../../../fixtures/formats/', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, FOLDER), 'utf8');

describe('hashes', () => {
  test('when the text is "abc", the sum is the one of FIPS 180-4', () => {
    // FIPS 180-4, example of SHA-256 for the message "abc".
    expect(sha256Hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  test('when the text is not ASCII, its UTF-8 bytes count, as in the system’s own SHA-256', () => {
    expect(sha256Hex('22¾ ft²')).toBe(createHash('sha256').update('22¾ ft²', 'utf8').digest('hex'));
  });

  test('when a hide is hashed, the sum is the one of its file', () => {
    const text = read('every-field.hide.json');
    const hide = parseHide(text, { file: 'h' });
    expect(writeHide(hide)).toBe(text);
    expect(hashHide(hide)).toBe(createHash('sha256').update(text).digest('hex'));
  });

  test('when anything of a hide changes, its sum changes; less than a rounding step does not count', () => {
    const hide = parseHide(read('every-field.hide.json'), { file: 'h' });
    expect(hashHide({ ...hide, lot: 'another' })).not.toBe(hashHide(hide));
    const [first, ...others] = hide.leather.readings;
    const moved = { ...first!, at: { x: first!.at.x + 0.0004, y: first!.at.y } };
    const readings = [moved, ...others];
    expect(hashHide({ ...hide, leather: { ...hide.leather, readings } })).toBe(hashHide(hide));
  });

  test('when a layout file names its hide and pieces, their sums are those of the files', () => {
    const layout = parseLayout(read('every-field.layout.json'), { file: 'l' });
    const hide = parseHide(read('every-field.hide.json'), { file: 'h' });
    expect(layout.hides[0]?.hash).toBe(hashHide(hide));
    for (const piece of layout.pieces) expect(hashPieceShape(piece.shape)).toBe(piece.hash);
  });

  test('when a piece is renamed, its sum stays; when a line moves, it changes', () => {
    const { shape } = parseLayout(read('every-field.layout.json'), { file: 'l' }).pieces[0]!;
    expect(hashPieceShape({ ...shape, name: 'other' })).toBe(hashPieceShape(shape));
    const punches = shape.punches.map((punch) => ({ ...punch, diameterMm: punch.diameterMm + 0.5 }));
    expect(hashPieceShape({ ...shape, punches })).not.toBe(hashPieceShape(shape));
  });
});
