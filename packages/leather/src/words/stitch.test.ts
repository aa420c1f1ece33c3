import { describe, expect, test } from 'vitest';
import { sentenceFor } from './catalogue.js';
import { STITCH_SENTENCES } from './stitch.js';

describe('the sentences of stitching', () => {
  const params = {
    article: 'bag',
    piece: 'front',
    other: 'gusset',
    line: 'edge',
    lines: 'front/edge',
    seam: 'front/edge + gusset/edge',
    long: 'front/edge',
    short: 'gusset/edge',
    found: '"8 spi"',
    perInch: '8',
    ironMm: '3.4',
    stitchesMm: '3.175',
    iron: '"fine"',
    known: '3.4 mm',
    lengthMm: '3',
    pitchMm: '3.4',
    usedMm: '3',
    endGapMm: '2',
    distanceMm: '1',
    thicknessMm: '2',
    differenceMm: '9',
    percent: '5',
    allowedPercent: '2',
    with: 'iron',
    count: 2,
    thread: 'linen',
    neededM: '20',
    statedM: '12',
    threadMm: '0.8',
    fromMm: '4',
    toMm: '4.8',
  };
  test.each(Object.keys(STITCH_SENTENCES))(
    'when %s is told, it is one sentence with all its values',
    (code) => {
      const sentence = sentenceFor({ code, params });
      expect(sentence).toMatch(/^\S.*\.$/s);
      expect(sentence).not.toMatch(/undefined|NaN|\[object/);
      expect(sentence).not.toContain(code);
    },
  );
});
