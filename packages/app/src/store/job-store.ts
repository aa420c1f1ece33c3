/** A file as a store knows it. */
export interface StoredFile {
  readonly path: string;
  /** In bytes. */
  readonly size: number;
  /** Another one for another content. */
  readonly revision: string;
}

export interface StoreWrite {
  readonly path: string;
  /** The revision that the change was made from; null: there must be no such file. */
  readonly base: string | null;
  /** Absent: the file is taken away. */
  readonly bytes?: Uint8Array;
}

/** A file that is not as a change took it to be; `revision` is null where there is none now. */
export interface Conflict {
  readonly path: string;
  readonly revision: string | null;
}

/** "not written": the store does not take one of the files, whoever asks. */
export type FailureReason = 'no room' | 'out of reach' | 'not allowed' | 'too large' | 'not written';

export type SaveOutcome =
  /** Each written file as it is now; those taken away are not among them. */
  | { readonly kind: 'saved'; readonly files: readonly StoredFile[] }
  /** Somebody else changed these meanwhile; nothing was written. */
  | { readonly kind: 'conflict'; readonly conflicts: readonly Conflict[] }
  /** Why nothing was written. Only after "out of reach" it may have been written all the same: the answer got lost. */
  | { readonly kind: 'failed'; readonly reason: FailureReason; readonly sentence?: string };

export interface FileRead {
  readonly bytes: Uint8Array;
  readonly revision: string;
}

/** Where the files of jobs are kept: a folder on the computer behind `hidebound table`, or the browser's own storage. */
export interface JobStore {
  readonly kind: 'folder' | 'browser';
  /** @throws StoreError */
  list(): Promise<{ readonly name: string; readonly files: readonly StoredFile[] }>;
  /**
   * Undefined where there is no such file (any more).
   * @throws StoreError
   */
  read(path: string): Promise<FileRead | undefined>;
  /** All of it or nothing. Never throws. */
  save(writes: readonly StoreWrite[]): Promise<SaveOutcome>;
  /** Calls back when something may have changed: by another tab, another program, or by a save of one's own. */
  watch(listener: () => void): () => void;
}
