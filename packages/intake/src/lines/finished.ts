import type { DrawnLine, DrawnSource } from '../drawing/drawn-line.js';

/**
 * True for a line of a pattern that this program saved (`data-finished`): it was joined and mended when it was first
 * read, so it is taken as it stands, and whatever meets it is another line.
 */
export function isFinished({ source }: Pick<DrawnLine, 'source'>): boolean {
  return source.labels.data['finished'] !== undefined;
}

/** A number that stands beside a saved line because the line itself, on the 1 µm grid, can't hold it exactly. */
export function exactNumber(source: DrawnSource, name: string): number | undefined {
  const text = source.labels.data[name];
  const n = text === undefined || text === '' ? NaN : Number(text);
  return Number.isFinite(n) ? n : undefined;
}
