import type { Diagnostic, LayablePiece, ResolvedOrder } from '@hidebound/leather';
import type { JobFile } from '../job/job.js';

export interface RawFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** An order with all that it names, as the CLI has it too. */
export interface OrderRead {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly diagnostics: readonly Diagnostic[];
}

/** What the desk does: reading and writing files, and what follows from an order. */
export type DeskTasks = {
  /** Content as the app holds it. What can't be read comes back as `unread`, with the sentence that says why. */
  readFiles: { input: readonly RawFile[]; output: readonly (readonly [string, JobFile])[] };
  writeFile: { input: { readonly path: string; readonly file: JobFile }; output: Uint8Array };
  /** A whole job as one file, and back. */
  writeBundle: {
    input: { readonly name: string; readonly files: ReadonlyMap<string, JobFile> };
    output: Uint8Array;
  };
  readBundle: {
    input: RawFile;
    output: { readonly name: string; readonly files: readonly RawFile[] };
  };
  /** An order with its pieces; `files` are all that it may name. Rejected where it can't be resolved. */
  readOrder: {
    input: { readonly path: string; readonly files: ReadonlyMap<string, JobFile> };
    output: OrderRead;
  };
};
