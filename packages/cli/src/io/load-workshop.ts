import { existsSync } from 'node:fs';
import { parseWorkshop } from '@hidebound/leather';
import type { Workshop } from '@hidebound/leather';
import { besideFile, readText } from './load-files.js';

/** The user's own table of parts, marks and cutting methods, with the file that it was read from. */
export interface WorkshopInUse {
  readonly file: string;
  readonly workshop: Workshop;
}

/** Read where no other one is named. */
const USUAL_NAME = 'workshop.yaml';

/**
 * The workshop file that was named, or else the one beside the file that is worked on; nothing where there is none, and
 * then the built-in table counts.
 */
export function loadWorkshop(named: string | undefined, mainFile: string): WorkshopInUse | undefined {
  const beside = besideFile(mainFile, USUAL_NAME);
  const file = named ?? (existsSync(beside) ? beside : undefined);
  return file === undefined
    ? undefined
    : { file, workshop: parseWorkshop(readText(file, 'workshop'), { file }) };
}

/** Says whose table counts, where it is not the built-in one. */
export function workshopLines(inUse: WorkshopInUse | undefined): readonly string[] {
  return inUse === undefined
    ? []
    : [`Parts, flaws, zones and cutting methods are taken as ${inUse.file} says.`];
}
