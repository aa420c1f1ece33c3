/** Squares in a row. */
export const JOIN_SQUARES = 16;

/** Places that hold a number's binary digits, the least first; the others (0, 1, 2, 4, 8) hold checks. */
const DIGIT_PLACES: readonly number[] = [3, 5, 6, 7, 9, 10, 11, 12, 13, 14, 15];

/** So many rows differ from each other: eleven binary digits, without the row that is all open. */
export const MOST_JOINS = 2047;

/** Odd, so that each number keeps a word of its own; large, so that the next number looks quite different. */
const SPREAD = 1357;

/**
 * Which squares of a row are filled: a word of the extended Hamming code of 16 binary digits (R. W. Hamming, Error
 * detecting and error correcting codes, Bell System Technical Journal 29, 1950), so that any two rows differ in at
 * least four squares, and one square that is misread can be set right. In a row that is read well the number of filled
 * squares is even, and so is, for each k from 0 to 3, the number of filled squares in whose place the binary digit k is
 * set. With another seed, a whole number from 0, the same numbers have other rows.
 */
export function joinCode(number: number, seed = 0): boolean[] {
  const turned = ((number - 1 + seed) % MOST_JOINS) + 1;
  const word = (turned * SPREAD) % (MOST_JOINS + 1);
  const filled = new Array<boolean>(JOIN_SQUARES).fill(false);
  let checks = 0;
  DIGIT_PLACES.forEach((place, digit) => {
    if (((word >> digit) & 1) === 0) return;
    filled[place] = true;
    checks ^= place;
  });
  for (const place of [1, 2, 4, 8]) filled[place] = (checks & place) !== 0;
  filled[0] = filled.filter(Boolean).length % 2 === 1;
  return filled;
}
