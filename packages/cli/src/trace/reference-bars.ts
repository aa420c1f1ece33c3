import { existsSync } from 'node:fs';
import {
  REFERENCE_SHEETS_FILE,
  barsOfSheet,
  parseMeasuredBars,
  parseReferenceSheets,
} from '@hidebound/leather';
import type { MeasuredBars } from '@hidebound/leather';
import { besideFile, readText } from '../io/load-files.js';

/** How long the lines of the printed sheets came out, and who said so. */
export interface KnownBars {
  readonly barsOf: (sheet: number) => MeasuredBars | undefined;
  /** The file that was read, if it was one. */
  readonly file?: string;
}

/**
 * What `--bars` says of all sheets; else what was remembered beside the photo, else in the working folder; nothing
 * where nobody measured.
 */
export function knownBars(said: string | undefined, photo: string): KnownBars | undefined {
  if (said !== undefined) {
    const bars = parseMeasuredBars(said);
    return { barsOf: () => bars };
  }
  const places = [besideFile(photo, REFERENCE_SHEETS_FILE), REFERENCE_SHEETS_FILE];
  const file = places.find((place) => existsSync(place));
  if (file === undefined) return undefined;
  const sheets = parseReferenceSheets(readText(file, 'reference-sheets'), { file });
  return { barsOf: (sheet) => barsOfSheet(sheets, sheet), file };
}
