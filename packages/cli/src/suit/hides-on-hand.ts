import { realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { hashHide } from '@hidebound/leather';
import type { Diagnostic, NamedHide, ResolvedOrder } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { besideFile, loadHide } from '../io/load-files.js';
import { loadStock } from '../stock/load-stock.js';

export interface HidesOnHand {
  /** The order's own first, under the names that it gives them. */
  readonly hides: readonly NamedHide[];
  /** Their paths. */
  readonly paths: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

export interface HandOptions {
  readonly stock: string | undefined;
  readonly files: readonly string[];
}

/**
 * The order's hides, those of a stock that are not cut, and those that are named, each once: a hide that is found again
 * under another path is the same one if it is equal. Fails with a CliError `bad-use` where there is none at all.
 */
export function hidesOnHand(
  order: ResolvedOrder,
  orderPath: string,
  { stock, files }: HandOptions,
): HidesOnHand {
  const names = [...new Set(order.leathers.flatMap(({ hides }) => hides))];
  const own = names.map((file) => ({ file, path: besideFile(orderPath, file) }));
  const loaded = own.map(({ file, path }) => ({ file, path, hide: loadHide(path) }));
  const stocked = stock === undefined ? undefined : loadStock(stock);
  const more = [
    ...files.map((file) => ({ file, path: file, hide: loadHide(file) })),
    ...(stocked?.hides ?? [])
      .filter(({ hide }) => hide.state !== 'cut')
      .map(({ file, hide }) => ({ file, path: file, hide })),
  ];
  const all: { file: string; path: string; hide: NamedHide['hide'] }[] = [];
  for (const each of [...loaded, ...more]) {
    if (!all.some((other) => isSame(other, each))) all.push(each);
  }
  if (all.length === 0) {
    throw new CliError(
      'bad-use',
      `${orderPath} lists no hide under its leathers, so there is nothing to choose from; give --stock with a folder of hides, or --hide with a file.`,
    );
  }
  return {
    hides: all.map(({ file, hide }) => ({ file, hide })),
    paths: all.map(({ path }) => path),
    diagnostics: stocked?.diagnostics ?? [],
  };
}

interface FoundHide {
  readonly path: string;
  readonly hide: NamedHide['hide'];
}

function isSame(a: FoundHide, b: FoundHide): boolean {
  if (realpathSync(resolve(a.path)) === realpathSync(resolve(b.path))) return true;
  return a.hide.id === b.hide.id && hashHide(a.hide) === hashHide(b.hide);
}
