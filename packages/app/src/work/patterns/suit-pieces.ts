import { suitOrder } from '@hidebound/leather';
import type { HideFit, NamedHide } from '@hidebound/leather';
import { readOrder, resolvedOrder } from '../desk/read-order.js';
import type { OrderInput, ReadPatternFile } from '../desk/read-order.js';
import type { ShownFit, ShownSuit } from '../patterns-tasks.js';
import { namedFrom } from './named-from.js';

/** Each piece of the order against each hide of the job. Throws where the order can't be read. */
export async function suitPieces(input: OrderInput, read: ReadPatternFile): Promise<readonly ShownSuit[]> {
  const { written, order, workshop } = resolvedOrder(input);
  const { pieces } = await readOrder(input, read);
  const hides = hidesOf(input);
  const suit = suitOrder({ written, order, pieces, hides, workshop });
  const fileOf = new Map(suit.hides.map(({ id, file }) => [id, file]));
  return suit.pieces.map(({ article, piece, fits }) => ({
    article,
    piece,
    fits: fits.map((fit) => shownFit(fit, fileOf.get(fit.hide)!)),
  }));
}

/** Under the names that the order gives them. */
function hidesOf({ path, files }: OrderInput): NamedHide[] {
  return [...files].flatMap(([at, file]) =>
    file.kind === 'hide' ? [{ file: namedFrom(path, at), hide: file.hide }] : [],
  );
}

function shownFit({ hide, kind, work, reasons, remarks }: HideFit, file: string): ShownFit {
  const allOver = work.find((each) => each.kind === 'all over');
  return {
    hide,
    file,
    kind,
    ...(allOver?.kind === 'all over' ? { skiveTo: allOver.to } : {}),
    remarks: [...reasons, ...remarks],
  };
}
