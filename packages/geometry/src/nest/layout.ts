import type { FixedPlacement, NestProblem } from '../types/problem.js';
import { RASTER_COARSEST_MM, RASTER_FINEST_MM, RASTER_MOST_POINTS, MOST_VARIANTS } from './constants.js';
import type { Copy, Demand } from './demand.js';
import { buildDemand, refKey } from './demand.js';
import type { FieldCache } from './field-cache.js';
import { buildFieldCache } from './field-cache.js';
import { prepareItems } from './prepared-item.js';
import type { PreparedItem, PreparedItems } from './prepared-item.js';
import type { PairLimit } from './rules.js';
import { pairLimitOf } from './rules.js';
import { buildSheetSpace } from './sheet-space.js';
import type { Laid, Place, SheetState } from './sheet-state.js';
import { createSheetState, gapsOf, lay, layAgain, lift } from './sheet-state.js';
import { buildSoup } from './soup.js';
import type { Variant } from './variant.js';
import { buildVariant } from './variant.js';
import { regionArea } from '../shape/ring.js';

/** The problem as the search holds it, and what lies where. Only `layCopy` and its kin change it. */
export interface Layout {
  readonly problem: NestProblem;
  readonly prepared: PreparedItems;
  readonly demand: Demand;
  readonly sheets: readonly SheetState[];
  readonly fields: readonly FieldCache[];
  readonly sheetIndex: ReadonlyMap<string, number>;
  /** Sheets that each item may lie on, in the order of the problem. */
  readonly allowed: readonly (readonly number[])[];
  /** By copy. */
  readonly laid: (Laid | undefined)[];
  readonly variants: Map<string, Variant>;
  readonly pitch: number;
}

export function createLayout(problem: NestProblem): Layout {
  const prepared = prepareItems(problem);
  const pitch = pitchFor(problem, prepared.items);
  const gaps = gapsOf(problem.distances);
  const spaces = problem.sheets.map((sheet, i) =>
    buildSheetSpace(sheet, i, problem.distances, prepared.needs, pitch),
  );
  let area = 0;
  for (const space of spaces) area += space.netAreaMm2;
  const demand = buildDemand(problem, prepared.items, area);
  const sheetIndex = new Map(problem.sheets.map((sheet, i) => [sheet.id, i]));
  const layout: Layout = {
    problem,
    prepared,
    demand,
    sheets: spaces.map((space) => createSheetState(space, gaps, prepared.groups.length)),
    fields: spaces.map((space) => buildFieldCache(space.sheet, space.frame, space.region)),
    sheetIndex,
    allowed: prepared.items.map(({ item }) => allowedSheets(item.sheets, sheetIndex)),
    laid: demand.copies.map(() => undefined),
    variants: new Map(),
    pitch,
  };
  layFixed(layout);
  return layout;
}

function allowedSheets(ids: readonly string[], index: ReadonlyMap<string, number>): number[] {
  const known = ids.map((id) => index.get(id)).filter((i) => i !== undefined);
  return [...new Set(known)].sort((a, b) => a - b);
}

function layFixed(layout: Layout): void {
  const byKey = new Map(layout.demand.copies.map((copy) => [refKey(copy.ref), copy]));
  for (const fixed of layout.problem.fixed) {
    const copy = byKey.get(refKey(fixed));
    const sheet = layout.sheetIndex.get(fixed.sheet);
    if (copy === undefined || sheet === undefined) continue;
    layCopy(layout, copy.index, fixedPlace(layout, copy, fixed, sheet));
  }
}

function fixedPlace(layout: Layout, copy: Copy, fixed: FixedPlacement, sheet: number): Place {
  return {
    variant: variantOf(layout, copy.prepared, sheet, fixed.rotationDeg),
    sheet,
    x: fixed.x,
    y: fixed.y,
  };
}

/**
 * Finer for small pieces, coarser for large sheets: a third of the narrowest piece, within bounds that keep the
 * largest sheet's lattice affordable.
 */
function pitchFor(problem: NestProblem, items: readonly PreparedItem[]): number {
  let narrowest = Infinity;
  for (const { rings, areaMm2 } of items) {
    const box = buildSoup(rings);
    const longest = Math.max(box.maxX - box.minX, box.maxY - box.minY);
    narrowest = Math.min(narrowest, areaMm2 / longest);
  }
  let largest = 1;
  for (const { region } of problem.sheets) largest = Math.max(largest, regionArea(region));
  const affordable = Math.sqrt(largest / RASTER_MOST_POINTS);
  const wanted = Math.min(RASTER_COARSEST_MM, Math.max(RASTER_FINEST_MM, narrowest / 3));
  return Math.max(wanted, affordable);
}

export function variantOf(
  layout: Layout,
  prepared: PreparedItem,
  sheet: number,
  rotationDeg: number,
): Variant {
  const { frame } = layout.sheets[sheet]!.space;
  const key = `${prepared.index}/${frame.fx}/${frame.fy}/${rotationDeg}`;
  const known = layout.variants.get(key);
  if (known !== undefined) return known;
  const variant = buildVariant(prepared, rotationDeg, frame, layout.pitch);
  if (layout.variants.size >= MOST_VARIANTS) {
    for (const oldest of layout.variants.keys()) {
      layout.variants.delete(oldest);
      break;
    }
  }
  layout.variants.set(key, variant);
  return variant;
}

export function layCopy(layout: Layout, copy: number, place: Place): Laid {
  const laid = lay(layout.sheets[place.sheet]!, copy, place);
  layout.laid[copy] = laid;
  return laid;
}

export function liftCopy(layout: Layout, copy: number): Laid {
  const laid = layout.laid[copy]!;
  lift(layout.sheets[laid.sheet]!, laid);
  layout.laid[copy] = undefined;
  return laid;
}

export function layCopyAgain(layout: Layout, laid: Laid): void {
  layAgain(layout.sheets[laid.sheet]!, laid);
  layout.laid[laid.copy] = laid;
}

/** What the copy has to answer if its partner lies already. */
export function pairLimitFor(layout: Layout, copy: Copy): PairLimit | undefined {
  if (copy.partner < 0) return undefined;
  const partner = layout.laid[copy.partner];
  if (partner === undefined) return undefined;
  const mirrored = copy.isMirrored ? copy : layout.demand.copies[copy.partner]!;
  return pairLimitOf(partner, layout.problem.sheets[partner.sheet]!, mirrored.prepared.item.pair!);
}

/**
 * Sheets that a copy may lie on now, given what its set must share and where the others of its set lie. A set
 * without any piece laid leaves the choice open.
 */
export function sheetsFor(layout: Layout, copy: Copy): readonly number[] {
  const allowed = layout.allowed[copy.prepared.index]!;
  const set = layout.demand.sets[copy.set]!;
  const { keep } = set.kind;
  if (keep === 'nothing' || (keep === 'faceLot' && !copy.prepared.item.isFace)) return allowed;
  const { sheets } = layout.problem;
  for (const other of set.copies) {
    const laid = other === copy.index ? undefined : layout.laid[other];
    if (laid === undefined) continue;
    if (keep === 'faceLot' && !laid.variant.prepared.item.isFace) continue;
    if (keep === 'sheet') return allowed.filter((i) => i === laid.sheet);
    if (laid.variant.prepared.item.group !== copy.prepared.item.group) continue;
    const { lot } = sheets[laid.sheet]!;
    return allowed.filter((i) => sheets[i]!.lot === lot);
  }
  return allowed;
}

/**
 * Copies of one item are alike: where nothing binds a set together, the laid ones are given to the first sets, so
 * that as many sets as possible are whole. What lies at each copy's place after that.
 */
export function assignCopies(layout: Layout, laid: readonly (Laid | undefined)[]): (Laid | undefined)[] {
  const slots = [...laid];
  const { copies, sets } = layout.demand;
  const byItem = new Map<number, Copy[]>();
  for (const copy of copies) {
    if (copy.isFixed || copy.partner >= 0 || sets[copy.set]!.kind.keep !== 'nothing') continue;
    const list = byItem.get(copy.prepared.index) ?? [];
    list.push(copy);
    byItem.set(copy.prepared.index, list);
  }
  for (const list of byItem.values()) {
    const own = list.map(({ index }) => laid[index]).filter((one) => one !== undefined);
    list.forEach(({ index }, i) => (slots[index] = own[i]));
  }
  return slots;
}
