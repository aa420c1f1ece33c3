import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), '..', 'golden');

/**
 * Compares with the approved file `tests/golden/<name>`. A difference fails and leaves `<name>.actual` beside it to be
 * looked at. UPDATE_GOLDENS=1 approves what came out, in a run that fails all the same.
 */
export function expectGolden(name: string, text: string): void {
  const file = join(FOLDER, name);
  const actual = `${file}.actual`;
  const approved = existsSync(file) ? readFileSync(file, 'utf8') : undefined;
  if (approved === text) {
    rmSync(actual, { force: true });
    return;
  }
  mkdirSync(FOLDER, { recursive: true });
  if (process.env['UPDATE_GOLDENS'] === '1') {
    writeFileSync(file, text);
    rmSync(actual, { force: true });
    expect.fail(`${name} was approved as it came out; look at it, then run again without UPDATE_GOLDENS.`);
  }
  writeFileSync(actual, text);
  expect.fail(`${name} differs from the approved picture; what came out is in ${name}.actual.`);
}
