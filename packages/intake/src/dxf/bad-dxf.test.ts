import { describe, expect, test } from 'vitest';
import { IntakeError } from '../error.js';
import { readPattern } from '../read-pattern.js';
import { block, circle, dxfText, encode, insert, line } from './test-dxf.js';
import type { TestDxf, TestPair } from './test-dxf.js';

async function refusal(input: string | TestDxf): Promise<IntakeError> {
  const bytes = encode(typeof input === 'string' ? input : dxfText(input));
  const error: unknown = await readPattern(bytes, { file: 'bag.dxf' }).catch((e: unknown) => e);
  expect(error).toBeInstanceOf(IntakeError);
  return error as IntakeError;
}
const plain = dxfText({ entities: circle(0, 0, 5) });

describe('files that can not be read', () => {
  test('when it is a binary DXF, the sentence says what to export', async () => {
    // The sentinel of binary DXF (DXF reference, "Binary DXF Files").
    const error = await refusal(`Some Binary DXF\r\n\u001a\0\0\0`);
    expect(error.code).toBe('dxf-binary');
  });

  test('when it is a DWG, the sentence says so', async () => {
    const error = await refusal(`AC1027${'\0'.repeat(80)}`);
    expect(error.message).toContain('bag.dxf: This is a DWG file (AC1027)');
  });

  test('when it stops anywhere, it is refused as truncated, or read whole', async () => {
    for (let length = plain.indexOf('ENTITIES'); length < plain.length; length += 3) {
      const cut = encode(plain.slice(0, length));
      const found = await readPattern(cut, { file: 'bag.dxf' }).catch((e: unknown) => e as IntakeError);
      if (found instanceof IntakeError) expect(['dxf-truncated', 'bad-number']).toContain(found.code);
      else expect(found.diagnostics.map(({ code }) => code)).toContain('dxf-no-end');
    }
  });

  test('when a group code is no number, its line is told', async () => {
    const error = await refusal(plain.replace('\n40\n', '\nradius\n'));
    expect(error.code).toBe('dxf-bad-pair');
    expect(plain.split('\n')[error.place.line! - 1]).toBe('40');
  });

  test.each(['nan', '1e999', 'ten', ''])('when a coordinate is %j, group and line are told', async (text) => {
    const error = await refusal(plain.replace('\n10\n0\n', `\n10\n${text}\n`));
    expect(error).toMatchObject({ code: 'bad-number', params: { what: 'group 10' } });
    expect(plain.split('\n')[error.place.line! - 2]).toBe('10');
  });

  test('when a coordinate is far beyond any workshop, the element is told', async () => {
    const error = await refusal({ entities: line(0, 0, 1e9, 0, [[5, '1A2']]) });
    expect(error).toMatchObject({ code: 'absurd-coordinate', place: { at: 'LINE 1A2' } });
  });

  test('when nobody says the unit, its width is told in both likely ones', async () => {
    const error = await refusal({ units: null, entities: line(0, 0, 812, 0) });
    expect(error.code).toBe('dxf-no-units');
    expect(error.message).toContain('812 mm wide if that is mm, 20.6 m if it is inches');
    const zero = await refusal({
      units: 0,
      header: [
        [9, '$MEASUREMENT'],
        [70, 1],
      ],
      entities: line(0, 0, 81, 0),
    });
    expect(zero.message).toContain('a hint in its header is for metric units');
  });

  test('when nothing is drawn, that is said', async () => {
    expect((await refusal({ entities: [] })).code).toBe('dxf-no-entities');
    expect((await refusal('0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n')).code).toBe('dxf-no-entities');
  });

  test('when blocks contain each other, the block is told', async () => {
    const blocks = [...block('a', insert('b', 0, 0)), ...block('b', insert('a', 0, 0))];
    const error = await refusal({ blocks, entities: insert('a', 0, 0) });
    expect(error).toMatchObject({ code: 'dxf-block-cycle', params: { block: 'a' } });
  });

  test('when blocks within blocks would draw billions, it is refused within the limit', async () => {
    const twice = (i: number) => block(`b${i}`, [...insert(`b${i + 1}`, 0, 0), ...insert(`b${i + 1}`, 9, 0)]);
    const blocks = [
      ...Array.from({ length: 40 }, (_, i) => twice(i)).flat(),
      ...block('b40', circle(0, 0, 1)),
    ];
    expect((await refusal({ blocks, entities: insert('b0', 0, 0) })).code).toBe('dxf-too-many-inserted');
  });

  test('when an empty block has billions of rows, it is refused within the limit', async () => {
    const grid: TestPair[] = [
      [70, 30000],
      [71, 30000],
      [44, 1],
      [45, 1],
    ];
    const error = await refusal({ blocks: block('b', []), entities: insert('b', 0, 0, grid) });
    expect(error.code).toBe('dxf-too-many-inserted');
  });

  test('when blocks are nested deeper than any drawing, it is refused', async () => {
    const blocks = Array.from({ length: 500 }, (_, i) => block(`b${i}`, insert(`b${i + 1}`, 0, 0))).flat();
    expect((await refusal({ blocks, entities: insert('b0', 0, 0) })).code).toBe('too-deep');
  });

  test('when it is larger than any drawing, it is refused', async () => {
    const bytes = new Uint8Array(65 * 1024 * 1024).fill(0x20);
    bytes.set(encode('0\nSECTION\n'));
    const error: unknown = await readPattern(bytes, { file: 'bag.dxf' }).catch((e: unknown) => e);
    expect(error).toMatchObject({ code: 'too-large' });
  });
});

test('when a spline has knots that do not fit, it is left out and told of', async () => {
  const spline: TestPair[] = [
    [0, 'SPLINE'],
    [70, 0],
    [71, 3],
    [40, 0],
    [40, 1],
    [10, 0],
    [20, 0],
    [10, 5],
    [20, 5],
  ];
  const read = await readPattern(encode(dxfText({ entities: [...spline, ...circle(0, 0, 5)] })), {
    file: 'bag.dxf',
  });
  expect(read.ignored).toMatchObject([{ reason: 'kind not read' }]);
});
