import { readdirSync, unlinkSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { systemCode } from './system-words.js';

/** The file beside a target that its new content goes into first. */
export function partName(target: string): string {
  return `${target}.${process.pid}.part`;
}

/**
 * Removes what earlier writes of the same target left when they were killed: their process is gone. What a running
 * process writes is left alone. Nothing here is a failure: the target itself is already whole.
 */
export function removeStaleParts(target: string): void {
  const folder = dirname(target);
  for (const name of namesIn(folder)) {
    const pid = pidOfPart(name, basename(target));
    if (pid === undefined || isAlive(pid)) continue;
    try {
      unlinkSync(join(folder, name));
    } catch {
      // Somebody else removed it, or it may not be removed: it stays, and does no harm.
    }
  }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function pidOfPart(name: string, target: string): number | undefined {
  if (!name.startsWith(`${target}.`) || !name.endsWith('.part')) return undefined;
  const middle = name.slice(target.length + 1, -'.part'.length);
  return /^[1-9]\d*$/.test(middle) ? Number(middle) : undefined;
}

/** Signal 0 asks whether a process is there and does nothing to it. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return systemCode(error) !== 'ESRCH';
  }
}
