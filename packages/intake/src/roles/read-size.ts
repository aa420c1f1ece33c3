/** Letters and numbers that sizes are called by: S, XL, 2XL, 38, 7.5, 38/40, "one size" has none. */
const SIZE = String.raw`(?:x{0,4}[sl]|\dx[sl]|m|\d{1,3}(?:[.,]\d)?(?:\s?[/-]\s?\d{1,3})?|small|medium|large)`;

/** A number with a unit is a length, not a size. */
const UNIT = String.raw`\s?(?:mm|cm|in|inch|inches|pt)\b`;

const SPELT_OUT = new RegExp(String.raw`(?:^|[^\p{L}])size[\s:_-]*(${SIZE})(?!${UNIT})(?![\p{L}\d])`, 'iu');

/** Sizes of other things than the piece: "hole size 3". */
const OTHER_SIZE =
  /\b(?:hole|punch|rivet|snap|needle|thread|iron|page|paper|sheet|font|text|hardware|buckle|ring)\s+size\b/iu;

const BARE = new RegExp(`^${SIZE}$`, 'iu');

/** The size that a name spells out ("size 38", "cut, size M"); nothing if it doesn't. */
export function speltOutSize(name: string): string | undefined {
  const found = OTHER_SIZE.test(name) ? undefined : SPELT_OUT.exec(name)?.[1];
  return found === undefined ? undefined : tidy(found);
}

/** The size that a name would be if it is one ("38", "M"); other things are called so too. */
export function bareSize(name: string): string | undefined {
  const text = name.trim();
  return BARE.test(text) ? tidy(text) : undefined;
}

/** True for a name that says a size and nothing else. */
export function isSizeAlone(name: string, size: string): boolean {
  const rest = name.replace(/^\s*size[\s:_-]*/iu, '').trim();
  return rest.toLowerCase() === size.toLowerCase() || (bareSize(rest) ?? '') === size;
}

/** The name with its size behind it, unless it ends so already. */
export function nameWithSize(name: string, size: string): string {
  const end = name.slice(-size.length);
  const before = name.at(-size.length - 1) ?? ' ';
  const endsSo = end.toLowerCase() === size.toLowerCase() && !/[\p{L}\d]/u.test(before);
  return endsSo ? name : `${name} size ${size}`;
}

/** Letters of sizes are capitals; words stay. */
function tidy(text: string): string {
  return /^(?:x*[sl]|\dx[sl]|m)$/iu.test(text) ? text.toUpperCase() : text.toLowerCase();
}

/** Smallest first: by numbers, then letters from XXXXS to XXXXL, then as written. */
export function compareSizes(a: string, b: string): number {
  const [rankA, rankB] = [rankOf(a), rankOf(b)];
  return rankA - rankB || (a < b ? -1 : a > b ? 1 : 0);
}

const LETTER_BASE = 10_000;

function rankOf(size: string): number {
  const number = Number.parseFloat(size.replace(',', '.'));
  if (/^\d+(?:[.,]\d)?(?:\s?[/-]|$)/.test(size)) return number;
  const letters = /^(\d?)(x*)([sml])$/iu.exec(size);
  const words = ['small', 'medium', 'large'].indexOf(size);
  if (letters === null) return words < 0 ? 2 * LETTER_BASE : LETTER_BASE + 10 * (words - 1);
  const many = letters[1] === '' ? letters[2]!.length : Number(letters[1]);
  const side = { s: -1, m: 0, l: 1 }[letters[3]!.toLowerCase() as 's' | 'm' | 'l'];
  return LETTER_BASE + side * (10 + many);
}
