import { parseLengthMm } from '@hidebound/leather';

/** A length in mm, written as a bare number or with its unit; nothing if it is none. */
export function lengthOrNothing(text: string): number | undefined {
  try {
    return parseLengthMm(/^[\d.]+$/.test(text) ? Number(text) : text);
  } catch {
    return undefined;
  }
}
