import type { Preparation } from '../model/order.js';
import type { Span } from '../model/workshop-rules.js';
import type { Coverage, Workshop } from '../model/workshop.js';
import { figureOf } from '../workshop/figures.js';
import { dyeBaseOf, dyeCoverage, finishKindOf } from './kinds.js';
import { dyeCoats, feedingOf, finishCoats } from './recipe.js';
import type { LeatherState } from './recipe.js';

/** What a liquid is for, in the order of work. */
export type LiquidUse = 'condition' | 'dye' | 'condition again' | 'resist' | 'finish';

/** One liquid of a preparation: how much of it is mixed or poured. */
export interface LiquidNeed {
  readonly product: string;
  readonly use: LiquidUse;
  readonly coats: Span;
  /** What one coat goes over: both sides where both are treated. */
  readonly areaMm2: number;
  /** What it was reckoned with; absent: nobody knows how far it goes, so that no quantity is told. */
  readonly coverage?: Coverage;
  /** Of all coats together, as it is put on, with what edges and spill take. */
  readonly ml?: Span;
  /** Where it is thinned: so much of each. */
  readonly mix?: DyeMix;
}

/** One part of dye and so many parts of thinner. */
export interface DyeMix {
  readonly thinnerParts: number;
  /** By the dye’s own label; absent: the order does not say. */
  readonly thinner?: string;
  readonly dyeMl?: Span;
  readonly thinnerMl?: Span;
}

const MM2_PER_M2 = 1e6;
const PERCENT = 100;

/**
 * How much of each liquid a preparation takes on an area (one side, mm²): area × sides × coats × coverage, and what
 * edges and spill take on top. A resist goes on places only, so that its figure is the most that it can be.
 */
export function liquidNeeds(
  preparation: Preparation,
  areaMm2: number,
  workshop: Workshop,
  state: LeatherState = {},
): LiquidNeed[] {
  const area = areaMm2 * (preparation.bothSides ? 2 : 1);
  const { dye, finish, resist, condition } = preparation;
  const need = (product: string, use: LiquidUse, kind: string | undefined, coats: Span): LiquidNeed => {
    const coverage = coverageFor(workshop, product, kind);
    const base = { product, use, coats, areaMm2: area };
    return coverage === undefined
      ? base
      : { ...base, coverage, ml: quantity(coverage, area, coats, workshop) };
  };
  const fed = condition === undefined ? undefined : finishKindOf(condition);
  const again = figureOf(workshop, 'second conditioning').value;
  const feeding = feedingOf(preparation, state);
  const [coats, lastCoats] = [dyeCoats(preparation, workshop), finishCoats(preparation, workshop)];
  const needs: LiquidNeed[] = [];
  if (condition !== undefined && feeding.before) needs.push(need(condition, 'condition', fed, ONCE));
  if (dye !== undefined && coats.max > 0) {
    needs.push(thinned(need(dye, 'dye', dyeCoverage(dyeBaseOf(preparation)), coats), preparation));
  }
  if (condition !== undefined && feeding.after) {
    // The first and only time it takes as much as before the dye.
    const times = feeding.before ? { min: again.min / PERCENT, max: again.max / PERCENT } : ONCE;
    needs.push(need(condition, 'condition again', fed, times));
  }
  if (resist !== undefined) needs.push(need(resist, 'resist', 'wax or resin finish', ONCE));
  if (finish !== undefined && lastCoats.max > 0) {
    needs.push(need(finish, 'finish', finishKindOf(finish), lastCoats));
  }
  return needs;
}

const ONCE: Span = { min: 1, max: 1 };

/** The figure for the product itself, else for its kind: "chestnut", else "spirit dye". */
export function coverageFor(
  workshop: Pick<Workshop, 'coverages'>,
  product: string,
  kind?: string,
): Coverage | undefined {
  const named = (name: string): Coverage | undefined =>
    workshop.coverages.find((line) => line.product.toLowerCase() === name.trim().toLowerCase());
  return named(product) ?? (kind === undefined ? undefined : named(kind));
}

function quantity(coverage: Coverage, areaMm2: number, coats: Span, workshop: Workshop): Span {
  const extra = figureOf(workshop, 'extra for edges and spill').value;
  const ml = (perM2: number, times: number, percent: number): number =>
    (areaMm2 / MM2_PER_M2) * perM2 * times * (1 + percent / PERCENT);
  return {
    min: ml(coverage.minMlPerM2, coats.min, extra.min),
    max: ml(coverage.maxMlPerM2, coats.max, extra.max),
  };
}

function thinned(need: LiquidNeed, { thinnerParts, thinner }: Preparation): LiquidNeed {
  if (thinnerParts === undefined || thinnerParts === 0) return need;
  const named = thinner === undefined ? {} : { thinner };
  if (need.ml === undefined) return { ...need, mix: { thinnerParts, ...named } };
  const least = mixOf(need.ml.min, thinnerParts);
  const most = mixOf(need.ml.max, thinnerParts);
  return {
    ...need,
    mix: {
      thinnerParts,
      ...named,
      dyeMl: { min: least.dyeMl, max: most.dyeMl },
      thinnerMl: { min: least.thinnerMl, max: most.thinnerMl },
    },
  };
}

/** So much of each for a mixture of `ml`: one part of dye and `thinnerParts` parts of thinner. */
export function mixOf(
  ml: number,
  thinnerParts: number,
): { readonly dyeMl: number; readonly thinnerMl: number } {
  const dyeMl = ml / (1 + thinnerParts);
  return { dyeMl, thinnerMl: ml - dyeMl };
}
