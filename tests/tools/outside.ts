import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * Path of a program outside the project that a test looks for, or undefined where it is absent: such a test then
 * skips by name. Under HIDEBOUND_NO_SKIP=1 an absent program is an error, so that nothing goes untested unseen.
 */
export function outsideProgram(name: string): string | undefined {
  const path = (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find(isExecutable);
  if (path === undefined && process.env['HIDEBOUND_NO_SKIP'] === '1') {
    throw new Error(`${name} is not installed, and HIDEBOUND_NO_SKIP=1 lets no test skip.`);
  }
  return path;
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
