import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { STOCK_JOURNAL_FILE, leatherError, parseStockJournal, sha256Hex } from '@hidebound/leather';
import type { StockJournal } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { SIZE_LIMIT_MB, readFileLimited } from '../io/read-file.js';
import { readText } from '../io/load-files.js';
import { readFailureWords } from '../io/system-words.js';

/** Contents of hide files before and after each step, by their sums, within the stock's folder. */
export const KEPT_FOLDER = 'stock.kept';

const HIDE_FILE = /\.hide\.json$/;

/** Hide files in one stock. A workshop has tens or hundreds; each is read whole. */
const MOST_HIDES = 5000;

/** Refuses what is no folder. Fails with a CliError. */
export function refuseNoFolder(folder: string): void {
  if (!existsSync(folder)) {
    throw new CliError('no-such-file', 'There is no such folder; correct the name.', { file: folder });
  }
  if (statSync(folder).isDirectory()) return;
  throw new CliError(
    'bad-use',
    `${folder} is a file; a stock is a folder of hide files, so give the folder that they lie in.`,
  );
}

/** Names of the hide files in the folder itself, in the order of their letters. */
export function hideFileNames(folder: string): readonly string[] {
  refuseNoFolder(folder);
  let names: readonly string[];
  try {
    names = readdirSync(folder);
  } catch (error) {
    throw new CliError('can-not-read', `It can't be read: ${readFailureWords(error)}.`, { file: folder });
  }
  const found = names.filter((name) => HIDE_FILE.test(name)).sort();
  if (found.length > MOST_HIDES) {
    throw leatherError('stock-too-many', { count: found.length, most: MOST_HIDES }, { file: folder });
  }
  return found;
}

/** The journal of a stock; an empty one where nothing was taken yet. */
export function readJournal(folder: string): StockJournal {
  const file = join(folder, STOCK_JOURNAL_FILE);
  return existsSync(file)
    ? parseStockJournal(readText(file, 'stock-journal'), { file })
    : { finished: 0, entries: [] };
}

/** SHA-256 of a file of the stock, or undefined where there is none. */
export function hashOfFile(folder: string, name: string): string | undefined {
  const path = join(folder, name);
  return existsSync(path) ? sha256Hex(textOfFile(path)) : undefined;
}

/** A file's text as it is, also one that is no good hide file. */
export function textOfFile(path: string): string {
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(readFileLimited(path, SIZE_LIMIT_MB.data));
}

/** Where the content of a sum is kept. */
export function keptPath(folder: string, hash: string): string {
  return join(folder, KEPT_FOLDER, `${hash}.json`);
}

/** A content that an earlier step kept. Fails with a LeatherError where it is gone or no longer what its sum says. */
export function keptText(folder: string, hash: string, file: string, number: number): string {
  const path = keptPath(folder, hash);
  const text = existsSync(path) ? textOfFile(path) : undefined;
  if (text !== undefined && sha256Hex(text) === hash) return text;
  throw leatherError('stock-kept-missing', { file, number }, { file: join(folder, STOCK_JOURNAL_FILE) });
}
