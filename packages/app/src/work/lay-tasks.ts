import type { Layout, LayablePiece, PiecePlacement } from '@hidebound/leather';
import type { JobFile } from '../job/job.js';
import type { OrderRead } from './desk-tasks.js';
import type { Verdict } from './laying/found.js';

/**
 * `anew`: all that is not locked, cut or spoiled; `missing`: only what does not lie yet; `go on`: as anew, from another
 * beginning, and the present layout stays unless a better one is found.
 */
export type LayWish = 'anew' | 'missing' | 'go on';

export interface LayInput {
  readonly wish: LayWish;
  readonly orderPath: string;
  readonly read: OrderRead;
  /** Hides, layouts and texts of the job. */
  readonly files: ReadonlyMap<string, JobFile>;
  /** The present layout, of which something stays. */
  readonly layoutPath?: string;
  /** Absent: until stopped. */
  readonly seconds?: number;
  readonly workers: number;
  /** Any message on it stops the run; the best so far counts. */
  readonly stop: MessagePort;
}

/** Where a piece lies: a placement, as it is posted while the run lasts. */
export type Laid = Pick<
  PiecePlacement,
  'article' | 'piece' | 'set' | 'copy' | 'mirrored' | 'hide' | 'x' | 'y' | 'rotationDeg'
>;

export type LayProgress =
  | { readonly kind: 'begun'; readonly pieces: readonly LayablePiece[] }
  | {
      readonly kind: 'going';
      readonly elapsedMs: number;
      readonly placed: number;
      readonly asked: number;
      /** 0 before the first whole layout. */
      readonly usedUpMm2: number;
    }
  | { readonly kind: 'better'; readonly placements: readonly Laid[] };

export interface LayOutput {
  /** Undefined where going on found nothing better. */
  readonly layout: Layout | undefined;
  readonly verdict: Verdict | undefined;
  readonly elapsedMs: number;
  readonly wasStopped: boolean;
  /** A part of the search failed before its time; the best up to then counts. */
  readonly endedEarly: boolean;
}

export type LayTasks = { lay: { input: LayInput; output: LayOutput; progress: LayProgress } };
