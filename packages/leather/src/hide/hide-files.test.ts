import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseHide, writeHide } from '../files/hide-file.js';
import { hideFiles, withFilesNamed } from './hide-files.js';

const PATH = join(import.meta.dirname, '../../../../fixtures/formats/every-field.hide.json');
/** Every field of the format is in it. */
const TEXT = readFileSync(PATH, 'utf8');

describe('the files that a hide names', () => {
  it('when they get other names, every name in its file is another one, and nothing else', () => {
    const hide = parseHide(TEXT, { file: PATH });
    // By the text of the file alone: what ends as a picture or hints do.
    const inText = [...TEXT.matchAll(/"([^"]+\.(?:jpg|yaml))"/g)].map(([, name]) => name!);
    expect(new Set(hideFiles(hide))).toEqual(new Set(inText));
    const renamed = writeHide(withFilesNamed(hide, (file) => `photos/${file}`));
    expect(JSON.parse(renamed.replaceAll('"photos/', '"'))).toEqual(JSON.parse(writeHide(hide)));
    expect(renamed.match(/"photos\//g)).toHaveLength(inText.length);
  });
});
