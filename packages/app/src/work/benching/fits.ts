import { tryPiece } from '@hidebound/leather';
import type { PieceTrial } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import { readOrder, resolvedOrder } from '../desk/read-order.js';
import { asOrder, hidesOf } from './cards.js';

export interface FitsAsked {
  /** Of an order, or of an article file. */
  readonly path: string;
  readonly files: ReadonlyMap<string, JobFile>;
  readonly article: string;
  readonly piece: string;
  readonly count: number;
}

/** A hide that was tried, by its name and path. */
export interface StockFit extends Pick<
  PieceTrial,
  'file' | 'fits' | 'isFull' | 'isEnough' | 'usableMm2' | 'remarks'
> {
  readonly id: string;
  readonly isOffcut: boolean;
  readonly storedAt?: string;
}

/**
 * What a piece can be cut from, the smallest leather that is enough first; leather on which none fits is left out.
 * @throws LeatherError where the order can't be read
 */
export async function whatFits({
  path,
  files,
  article,
  piece,
  count,
}: FitsAsked): Promise<readonly StockFit[]> {
  const input = asOrder(path, files);
  const { order, workshop } = resolvedOrder(input);
  const { pieces } = await readOrder(input);
  return tryPiece({ order, pieces, article, piece, count, hides: hidesOf(files), workshop })
    .filter(({ fits }) => fits > 0)
    .map(({ hide: { id, cut, storedAt }, file, fits, isFull, isEnough, usableMm2, remarks }) => ({
      ...{ id, file, fits, isFull, isEnough, usableMm2, remarks, isOffcut: cut === 'offcut' },
      ...(storedAt === undefined ? {} : { storedAt }),
    }));
}
