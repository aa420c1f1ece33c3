import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HOSTILE_PDFS } from './tools/hostile-pdfs.js';
import { pdfReaderAlone } from './tools/pdf-alone.js';

/** What comes of each file: a refusal by its code, or how much of it is read. */
const OUTCOMES: Readonly<Record<string, string>> = {
  'a form that contains itself': 'pdf-form-unfinished',
  'ten levels of forms that each draw ten': 'pdf-too-many-forms',
  'thirteen levels of forms, the last ones empty': 'pdf-too-many-forms',
  'forms upon forms in a tiled filling': 'read, 1 lines',
  'forms upon forms in a letter': 'pdf-too-many-forms',
  'a deflate bomb of a page': 'pdf-inflates-too-far',
  'a deflate bomb in a deflate bomb': 'pdf-inflates-too-far',
  'a deflate bomb that says it is a picture': 'pdf-only-pictures',
  'a deflate bomb whose filter stands elsewhere': 'pdf-inflates-too-far',
  'a page tree 20,000 deep': 'read, 1 lines',
  'a page tree in a circle': 'pdf-broken',
  'a billion pages by their count': 'read, 1 lines',
  'an array of eight million numbers': 'read, 1 lines',
  'an array of thirty million numbers': 'pdf-inflates-too-far',
  'arrays twenty million deep': 'pdf-inflates-too-far',
  'arrays two million deep': 'pdf-no-lines',
  'eight megabytes of drawing': 'too-many-elements',
  'one path of twenty megabytes': 'path-too-long',
  'two million saved states': 'pdf-too-deep',
  'twenty megabytes of words that mean nothing': 'pdf-no-lines',
  'twenty megabytes of texts': 'pdf-too-many-operators',
  'a thousand clips upon each other': 'pdf-clip-too-heavy',
  'a table of places of four hundred million entries': 'pdf-too-many-objects',
  'a function of a billion samples': 'pdf-inflates-too-far',
};

/** Peak memory of the process, MB: Node with the reader alone takes 80; the bound tells a bomb from a large file. */
const MOST_MB = 1000;

describe('hostile PDFs, each read in a process of its own', () => {
  let alone: Awaited<ReturnType<typeof pdfReaderAlone>>;
  beforeAll(async () => {
    alone = await pdfReaderAlone();
  });
  afterAll(() => alone.close());

  it('when a file is made to take all time or memory, every way of it has an outcome here', () => {
    expect(Object.keys(HOSTILE_PDFS).sort()).toEqual(Object.keys(OUTCOMES).sort());
  });

  for (const [name, make] of Object.entries(HOSTILE_PDFS)) {
    it(`when it has ${name}, it is refused or read within bounds, and nothing is printed`, () => {
      const { outcome, peakMb, noise } = alone.read(make());
      expect({ outcome, noise }).toEqual({ outcome: OUTCOMES[name], noise: '' });
      expect(peakMb).toBeLessThan(MOST_MB);
    });
  }
});
