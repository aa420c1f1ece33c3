import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHide, writeHide } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import type { Job, JobFile } from '../../../../job/job.js';
import { hideParts, withFreeId } from './hide-parts.js';

const PATH = join(import.meta.dirname, '../../../../../../../fixtures/formats/every-field.hide.json');
const hide = parseHide(readFileSync(PATH, 'utf8'), { file: PATH });
const picture: JobFile = { kind: 'picture', bytes: new Uint8Array() };
const job = (...paths: readonly string[]): Job => ({
  name: '',
  files: new Map(paths.map((path) => [path, picture])),
});

describe('a hide file with what it names', () => {
  it('when its picture and photos come with it, all keep together under names that are free', () => {
    const { file } = hide.photo!;
    const given = [file, 'side-12-a.jpg', 'side-12-low.jpg', 'holiday.jpg'];
    const came = hideParts(job('side-12-a.jpg'), hide, 'side', given);
    expect(Object.fromEntries(came.parts)).toEqual({
      [file]: 'side.straight.jpg',
      'side-12-a.jpg': 'side-12-a-2.jpg',
      'side-12-low.jpg': 'side-12-low.jpg',
    });
    expect(came.isWithoutPhoto).toBe(false);
    expect(came.hide.photo).toMatchObject({
      file: 'side.straight.jpg',
      takenFrom: ['side-12-a-2.jpg', 'side-12-b.jpg', 'side-12-low.jpg', 'side-12-back.jpg'],
      raking: ['side-12-low.jpg'],
      hints: 'side.hints.yaml',
    });
    // The file can be read again (the format's own reader).
    expect(parseHide(writeHide(came.hide), { file: 'side.hide.json' })).toEqual(came.hide);
  });

  it('when it comes alone, it says that its photo is missing; a hide without photo misses none', () => {
    expect(hideParts(job(), hide, 'side', []).isWithoutPhoto).toBe(true);
    const { photo: _, ...plain } = hide;
    expect(hideParts(job(), plain, 'side', ['holiday.jpg'])).toEqual({
      hide: plain,
      parts: new Map(),
      isWithoutPhoto: false,
    });
  });

  it('when another hide has its id, it gets the next free one, since layouts know hides by their ids', () => {
    const taken = new Set([hide.id, `${hide.id}-2`]);
    expect(withFreeId(hide, taken).id).toBe(`${hide.id}-3`);
    expect(withFreeId(hide, new Set())).toBe(hide);
  });
});
