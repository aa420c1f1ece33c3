import { hideAreas } from '../hide/hide-region.js';
import type { Hide } from '../model/hide.js';
import type { QuantitySpan } from '../costing/cost-span.js';
import { suitOrder } from '../suit/suit-order.js';
import type { SuitInput } from '../suit/suit-order.js';
import type { SuitPiece } from '../suit/suit-model.js';

/** What of the stock can be used for one leather. */
export interface StockChoice {
  /** Hides that suit all pieces of the leather, those to be used up first in front. */
  readonly hides: readonly StockHide[];
  /** Whether these are enough, by their area. */
  readonly enough: 'yes' | 'likely' | 'perhaps' | 'no';
}

export interface StockHide {
  readonly id: string;
  readonly file: string;
  readonly cut: Hide['cut'];
  readonly usableMm2: number;
  readonly thickness?: Hide['leather']['thickness'];
  readonly colour?: string;
  readonly lot?: string;
  readonly storedAt?: string;
  /** Somebody has reserved it; it is not taken. */
  readonly isReserved: boolean;
  /** Its thickness or tannage must be measured or asked for first. */
  readonly mustMeasure: boolean;
  /** It is among those that are taken for the order. */
  readonly isTaken: boolean;
}

/**
 * Hides on hand for each leather of an order: those that suit every piece of it in tannage, thickness, colour and all
 * else that `suitOrder` looks at. Offcuts come first, the largest in front, then the smallest whole hides; hides are taken
 * until their usable area is the most that the leather may need. What one leather takes, another one does not get.
 */
export function chooseFromStock(
  input: SuitInput,
  needs: ReadonlyMap<string, QuantitySpan>,
): ReadonlyMap<string, StockChoice> {
  const suit = input.hides.length === 0 ? undefined : suitOrder(input);
  const usable = new Map(
    input.hides.map(({ hide }) => [hide.id, hideAreas(hide, { workshop: input.workshop }).usableMm2]),
  );
  const left = new Map(usable);
  const choices = new Map<string, StockChoice>();
  for (const [leather, need] of needs) {
    const own = (suit?.pieces ?? []).filter((piece) => piece.leather === leather);
    const suiting = input.hides.filter(
      ({ hide }) => own.length > 0 && hide.state !== 'cut' && suitsAll(hide.id, own),
    );
    suiting.sort((a, b) => compareHides(a.hide, b.hide, usable));
    const taken = takeFor(
      need,
      suiting.map(({ hide }) => hide),
      left,
    );
    const hides = suiting.map(({ file, hide }): StockHide => ({
      id: hide.id,
      file,
      cut: hide.cut,
      usableMm2: usable.get(hide.id)!,
      ...qualitiesOf(hide),
      isReserved: hide.state === 'reserved',
      mustMeasure: own.some((piece) => kindOf(piece, hide.id) === 'measure'),
      isTaken: taken.has(hide.id),
    }));
    choices.set(leather, { hides, enough: enoughOf(need, taken) });
  }
  return choices;
}

function kindOf(piece: SuitPiece, hide: string): string {
  return piece.fits.find((fit) => fit.hide === hide)?.kind ?? 'no';
}

function suitsAll(hide: string, pieces: readonly SuitPiece[]): boolean {
  return pieces.every((piece) => kindOf(piece, hide) !== 'no');
}

function compareHides(a: Hide, b: Hide, usable: ReadonlyMap<string, number>): number {
  const isOffcut = (hide: Hide): boolean => hide.cut === 'offcut';
  if (isOffcut(a) !== isOffcut(b)) return isOffcut(a) ? -1 : 1;
  const difference = usable.get(a.id)! - usable.get(b.id)!;
  return isOffcut(a) ? -difference : difference;
}

/** How much is taken of which hide; `left` is what other leathers still find. */
function takeFor(
  need: QuantitySpan,
  hides: readonly Hide[],
  left: Map<string, number>,
): ReadonlyMap<string, number> {
  const taken = new Map<string, number>();
  let open = need.high;
  for (const { id, state } of hides) {
    const area = Math.min(open, left.get(id) ?? 0);
    if (state !== 'on hand' || area <= 0) continue;
    taken.set(id, area);
    left.set(id, left.get(id)! - area);
    open -= area;
  }
  return taken;
}

/** Areas that differ by less are the same, mm². */
const SAME_MM2 = 1;

function enoughOf(need: QuantitySpan, taken: ReadonlyMap<string, number>): StockChoice['enough'] {
  const area = [...taken.values()].reduce((sum, each) => sum + each, 0) + SAME_MM2;
  if (area >= need.high) return 'yes';
  if (area >= need.likely) return 'likely';
  return area >= need.low && taken.size > 0 ? 'perhaps' : 'no';
}

function qualitiesOf({
  leather,
  lot,
  storedAt,
}: Hide): Pick<StockHide, 'thickness' | 'colour' | 'lot' | 'storedAt'> {
  const { thickness, colour } = leather;
  return {
    ...(thickness === undefined ? {} : { thickness }),
    ...(colour === undefined ? {} : { colour }),
    ...(lot === undefined ? {} : { lot }),
    ...(storedAt === undefined ? {} : { storedAt }),
  };
}
