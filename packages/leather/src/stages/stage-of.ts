import { regionArea } from '@hidebound/geometry';
import { compareNumbers } from '../layout/cutting-numbers.js';
import { pieceOfPlacement } from '../layout/placed-region.js';
import type { Hide } from '../model/hide.js';
import type { Layout, PieceCopy, UnplacedCopy } from '../model/layout.js';
import { bareCopy } from '../order/item-id.js';
import { pieceList } from '../piece-list/piece-list.js';
import { currentCopies } from './current-copies.js';
import { restOfHide } from './rest-of-hide.js';
import type { RestOfHide } from './rest-of-hide.js';

/** How far the cutting of a layout is. Areas in mm², shares from 0 to 1. */
export interface CuttingStage {
  readonly hides: readonly HideStage[];
  readonly cut: number;
  readonly spoiled: number;
  readonly left: number;
  /** Copies that have no place: spoiled, taken up, or never laid. */
  readonly unlaid: readonly UnplacedCopy[];
  readonly unlaidMm2: number;
  /** Leather for these, at the yield of the layout over what it uses up; absent while nothing is laid. */
  readonly missingMm2?: number;
  /** Of all hides that something was cut from. */
  readonly begun: Pick<HideStage, 'grossMm2' | 'cutMm2' | 'spoiledMm2' | 'lostMm2' | 'restMm2'>;
  /** Good pieces over the gross area of the hides that something was cut from. */
  readonly grossYield: number;
  /** Good pieces over the leather that is gone: pieces, spoiled ones, and what fell off. */
  readonly goneYield: number;
  /** All that the order asks for is cut: the yield is the real one. */
  readonly isDone: boolean;
}

export interface HideStage extends RestOfHide {
  readonly cut: number;
  readonly spoiled: number;
  /** Still to be cut, in the order of cutting. */
  readonly left: readonly LeftPiece[];
  readonly leftMm2: number;
}

export interface LeftPiece {
  readonly number: string;
  readonly copy: PieceCopy;
  /** Along its direction arrow, and across it, mm. */
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly areaMm2: number;
}

/** What is cut, spoiled and left of a layout, hide by hide. */
export function stageOf(layout: Layout, hides: readonly Hide[]): CuttingStage {
  const stages = hides.map((hide) => hideStage(layout, hide));
  const begun = stages.filter(({ cut, spoiled }) => cut + spoiled > 0);
  const sum = (key: 'grossMm2' | 'cutMm2' | 'spoiledMm2' | 'lostMm2' | 'restMm2'): number =>
    begun.reduce((total, stage) => total + stage[key], 0);
  const areas = {
    grossMm2: sum('grossMm2'),
    cutMm2: sum('cutMm2'),
    spoiledMm2: sum('spoiledMm2'),
    lostMm2: sum('lostMm2'),
    restMm2: sum('restMm2'),
  };
  const gone = areas.cutMm2 + areas.spoiledMm2 + areas.lostMm2;
  const count = (key: 'cut' | 'spoiled'): number => stages.reduce((total, stage) => total + stage[key], 0);
  const left = stages.reduce((total, stage) => total + stage.left.length, 0);
  const unlaidMm2 = layout.unplaced.reduce(
    (total, copy) => total + regionArea(pieceOfPlacement(copy, layout.pieces).region),
    0,
  );
  const share = layout.yield.total.usedUpYield;
  return {
    hides: stages,
    cut: count('cut'),
    spoiled: count('spoiled'),
    left,
    unlaid: layout.unplaced,
    unlaidMm2,
    ...(share > 0 && unlaidMm2 > 0 ? { missingMm2: unlaidMm2 / share } : {}),
    begun: areas,
    grossYield: areas.grossMm2 > 0 ? areas.cutMm2 / areas.grossMm2 : 0,
    goneYield: gone > 0 ? areas.cutMm2 / gone : 0,
    isDone: left === 0 && layout.unplaced.length === 0 && count('cut') > 0,
  };
}

function hideStage(layout: Layout, hide: Hide): HideStage {
  const here = layout.placements.filter((placement) => placement.hide === hide.id);
  const sizes = pieceList(layout);
  const left = currentCopies(layout)
    .filter(({ placement }) => placement.hide === hide.id && placement.state === 'planned')
    .sort((a, b) => compareNumbers(a.number, b.number))
    .map(({ placement, number }): LeftPiece => {
      const size = sizes.find(
        ({ piece, article }) => piece === placement.piece && article === placement.article,
      )!;
      return {
        number,
        copy: bareCopy(placement),
        lengthMm: size.lengthMm ?? 0,
        widthMm: size.widthMm ?? 0,
        areaMm2: size.areaMm2 ?? 0,
      };
    });
  const count = (state: string): number => here.filter((placement) => placement.state === state).length;
  return {
    ...restOfHide(layout, hide),
    cut: count('cut'),
    spoiled: count('spoiled'),
    left,
    leftMm2: left.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
  };
}
