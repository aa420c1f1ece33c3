import { cuttingNumbers, pieceCopyKey } from '@hidebound/leather';
import type { CuttingStep, Layout, PieceCopy, PiecePlacement } from '@hidebound/leather';

/** One thing that is done at the bench: a piece is cut, or a step is done before pieces can be. */
export type WorkItem =
  | {
      readonly kind: 'piece';
      readonly key: string;
      readonly number: string;
      readonly hide: string;
      readonly placement: PiecePlacement;
      /** The step that names it; absent where none does. */
      readonly step: CuttingStep | undefined;
    }
  | {
      readonly kind: 'step';
      readonly key: string;
      readonly number: string;
      readonly hide: string;
      readonly step: CuttingStep;
      /** Keys of the pieces that can't be cut before it is done. */
      readonly before: readonly string[];
    };

type OrderedLayout = Pick<Layout, 'placements' | 'cuttingOrder'>;

/**
 * All that is done at the bench, in the order of cutting. A piece stands where a step is about it alone or about its
 * lane; a rough cut, a block and a lane's first cut stand for themselves, before their pieces.
 */
export function workItems(layout: OrderedLayout): WorkItem[] {
  const numbers = cuttingNumbers(layout);
  const placements = currentPlacements(layout);
  const told = new Set<string>();
  const pieceItem = (key: string, step: CuttingStep | undefined): WorkItem[] => {
    const placement = placements.get(key);
    if (placement === undefined || told.has(key)) return [];
    told.add(key);
    return [{ kind: 'piece', key, number: numbers.get(key)!, hide: placement.hide, placement, step }];
  };
  const steps = [...layout.cuttingOrder].sort((one, other) => one.number - other.number);
  const items = steps.flatMap((step): WorkItem[] => {
    if (step.kind === 'piece' || step.kind === 'lane')
      return step.pieces.flatMap((copy) => pieceItem(pieceCopyKey(copy), step));
    const { number, hide } = step;
    const before = waitingFor(step, steps).map(pieceCopyKey);
    return [{ kind: 'step', key: `step ${number}`, number: String(number), hide, step, before }];
  });
  return [...items, ...[...placements.keys()].flatMap((key) => pieceItem(key, stepNaming(key, steps)))];
}

/** What is there of each copy now: the one that counts, or the one that was spoiled where none was laid again. */
function currentPlacements({ placements }: OrderedLayout): Map<string, PiecePlacement> {
  const found = new Map<string, PiecePlacement>();
  for (const placement of placements) {
    const key = pieceCopyKey(placement);
    const before = found.get(key);
    if (before === undefined || before.state === 'spoiled') found.set(key, placement);
  }
  return found;
}

/** A lane's first cut is made for all of the lane. */
function waitingFor(step: CuttingStep, steps: readonly CuttingStep[]): readonly PieceCopy[] {
  if (step.kind !== 'straight edge') return step.pieces;
  return (
    steps.find(({ kind, of, hide }) => kind === 'lane' && of === step.of && hide === step.hide)?.pieces ?? []
  );
}

function stepNaming(key: string, steps: readonly CuttingStep[]): CuttingStep | undefined {
  return steps.find(({ pieces }) => pieces.some((copy) => pieceCopyKey(copy) === key));
}

/** Steps that are for this piece too: the rough cut or the block that it lies in. */
export function blocksOf(layout: OrderedLayout, key: string): readonly CuttingStep[] {
  return layout.cuttingOrder.filter(
    ({ kind, pieces }) =>
      (kind === 'rough cut' || kind === 'block') && pieces.some((copy) => pieceCopyKey(copy) === key),
  );
}

/** Still to be done: a piece that is not cut, or a step of which no piece has been begun. */
export function isOpen(item: WorkItem, items: readonly WorkItem[]): boolean {
  if (item.kind === 'piece') return item.placement.state === 'planned';
  const waiting = new Set(item.before);
  const own = items.filter((each) => each.kind === 'piece' && waiting.has(each.key));
  return own.length > 0 && own.every((each) => each.kind === 'piece' && each.placement.state === 'planned');
}

/**
 * What is next after an item: the next open thing behind it, else the first piece before it that was passed over;
 * undefined where all is done. With nothing in front, the first open thing.
 */
export function nextOpen(items: readonly WorkItem[], after: string | undefined): WorkItem | undefined {
  const at = items.findIndex(({ key }) => key === after);
  const behind = items.slice(at + 1).find((item) => isOpen(item, items));
  return (
    behind ?? items.slice(0, Math.max(0, at)).find((item) => item.kind === 'piece' && isOpen(item, items))
  );
}

/** The neighbour in the order, whether it is done or not; undefined at the ends. */
export function neighbour(
  items: readonly WorkItem[],
  of: string | undefined,
  by: 1 | -1,
): WorkItem | undefined {
  const at = items.findIndex(({ key }) => key === of);
  return at < 0 ? undefined : items[at + by];
}

export interface Progress {
  readonly cut: number;
  readonly all: number;
  /** Pieces that lie nowhere: spoiled and not laid again, taken up, or never laid. */
  readonly unlaid: number;
  /** Still to be cut where they lie. */
  readonly left: number;
}

export function progressOf({ placements, unplaced }: Pick<Layout, 'placements' | 'unplaced'>): Progress {
  const count = (state: PiecePlacement['state']): number =>
    placements.filter((placement) => placement.state === state).length;
  // What was just spoiled is not among the unplaced yet.
  const lying = new Set(placements.filter(({ state }) => state !== 'spoiled').map(pieceCopyKey));
  const missing = new Set([...unplaced, ...placements].map(pieceCopyKey).filter((key) => !lying.has(key)));
  const [cut, left, unlaid] = [count('cut'), count('planned'), missing.size];
  return { cut, left, unlaid, all: cut + left + unlaid };
}
