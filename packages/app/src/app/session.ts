import type { Database } from '../store/database.js';
import type { Watched } from './cell.js';

/** Where the open job is kept, and what can be done with it as a whole. */
export interface Session {
  readonly kind: 'folder' | 'browser';
  readonly database: Database;
  /** The job's number in the browser's storage; undefined for a folder's. */
  readonly browserJob: number | undefined;
  /** Of several tabs on one job one holds the pen; the others look on. */
  readonly penHeld: Watched<boolean>;
  takePen(): void;
  /** Tries again now what could not be saved. */
  retry(): void;
}
