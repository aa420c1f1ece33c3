import { withFolderLock } from '../io/folder-lock.js';
import type { LockName, LockOptions } from '../io/folder-lock.js';

export type { LockOptions };

const STOCK_LOCK: LockName = { lock: 'stock.lock', what: 'this stock' };

/** Does something while no other command changes the same stock. Fails with a CliError where another one keeps it too long. */
export function withStockLock<Result>(
  folder: string,
  action: () => Result | Promise<Result>,
  options: LockOptions = {},
): Promise<Result> {
  return withFolderLock(folder, STOCK_LOCK, action, options);
}
