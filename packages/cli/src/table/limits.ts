const BYTES_PER_MB = 1_000_000;

/** Far above what a workshop has in one folder, and far below what fills a computer's memory. */
export const TABLE_LIMITS = {
  files: 2000,
  foldersDeep: 4,
  /** Names that are looked at until a folder counts as too full: a whole home folder given by mistake. */
  namesLookedAt: 50_000,
  fileBytes: 64 * BYTES_PER_MB,
  requestBytes: 96 * BYTES_PER_MB,
  writes: 200,
  /** Requests that are answered at the same time; a page needs about ten. */
  requests: 50,
  /** Saves whose content is taken in at the same time: each may hold a whole request in memory. */
  savesAtOnce: 4,
  keptVersions: 20,
  pathLetters: 400,
  nameBytes: 200,
} as const;

/** Times in milliseconds. */
export const TABLE_TIMES = {
  /** Until the answer "nothing changed": shorter than what stands between gives a connection. */
  longPoll: 25_000,
  /** How often the folder is looked through while somebody asks for changes and nothing was heard of any. */
  slowScan: 2_000,
  /** Several files that change together are told together. */
  settle: 60,
  headers: 10_000,
  request: 60_000,
  /** A body that stands still for so long is given up. */
  bodySilence: 15_000,
} as const;
