import { MOST_SHEETS, readPageNumbers } from '@hidebound/leather';
import { CliError } from './cli-error.js';

/** "1-8" or "1-4, 9" as numbers of reference sheets. Throws `bad-use`. */
export function sheetNumbers(written: string): readonly number[] {
  const numbers = numbersOrNone(written);
  if (numbers.length > 0 && numbers.every((sheet) => sheet <= MOST_SHEETS)) return numbers;
  throw new CliError(
    'bad-use',
    `--sheets can't be "${written}"; write numbers of sheets from 1 to ${MOST_SHEETS}, each once, such as "1-8" or "1-4, 9".`,
  );
}

function numbersOrNone(written: string): readonly number[] {
  try {
    return readPageNumbers(written);
  } catch {
    return [];
  }
}
