/** What a column asks for, in mm. */
export interface ColumnWish {
  /** Its longest text on one line. */
  readonly wholeMm: number;
  /** Its longest word: it gets no narrower where that can be helped. */
  readonly wordMm: number;
  /** Whether its texts may be broken into lines. */
  readonly mayWrap: boolean;
}

/**
 * Widths of columns that stand side by side with a gap between them, no wider than the room together. Where all fit
 * whole they do, else those that may wrap share what the others leave: the widest are cut first, down to one width.
 */
export function columnWidths(wishes: readonly ColumnWish[], roomMm: number, gapMm: number): number[] {
  const free = roomMm - gapMm * Math.max(0, wishes.length - 1);
  const whole = wishes.map(({ wholeMm }) => wholeMm);
  if (sum(whole) <= free) return whole;
  const rigid = sum(wishes.map(({ mayWrap, wholeMm }) => (mayWrap ? 0 : wholeMm)));
  const wrapping = wishes.filter(({ mayWrap }) => mayWrap);
  const cap = capFor(wrapping, free - rigid);
  const wanted = wishes.map(({ mayWrap, wholeMm, wordMm }) =>
    mayWrap ? Math.min(wholeMm, Math.max(cap, wordMm)) : wholeMm,
  );
  const tooMuch = sum(wanted) / free;
  return tooMuch <= 1 ? wanted : wanted.map((width) => width / tooMuch);
}

/** The width at which every wider column is cut, so that all together have the room; words keep their own width. */
function capFor(wishes: readonly ColumnWish[], roomMm: number): number {
  let [low, high] = [0, roomMm];
  for (let i = 0; i < HALVINGS; i++) {
    const cap = (low + high) / 2;
    const taken = sum(wishes.map(({ wholeMm, wordMm }) => Math.min(wholeMm, Math.max(cap, wordMm))));
    if (taken > roomMm) high = cap;
    else low = cap;
  }
  return low;
}

/** Halves a page's width to well below what an eye sees. */
const HALVINGS = 20;

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
