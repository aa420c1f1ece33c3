import { createRandom } from '../number/random.js';
import type { Random } from '../number/random.js';
import { regionArea } from '../shape/ring.js';
import type { AngleRule, Item, ItemPart, Need, NestProblem, SetKind, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { sampleHide } from './sample-hide.js';
import type { SampleHideOptions } from './sample-hide.js';
import { samplePieces } from './sample-pieces.js';
import type { SamplePiece } from './sample-pieces.js';
import { mirrored } from './sample-shapes.js';

/** What a random problem is to be like. */
export interface SampleProblemOptions {
  /** Copies that are asked for, about. */
  readonly pieces?: number;
  /** Different pieces; default a quarter of the copies. */
  readonly kinds?: number;
  readonly hides?: number;
  /** Area of all copies over the net area of all hides: sizes of pieces follow. Default 0.4. */
  readonly share?: number;
  /** `all`: directions, needs, zones, thickness, pairs, sets and groups in play. `plain`: shapes alone. */
  readonly rules?: 'plain' | 'all';
  readonly mode?: 'placeAll' | 'sets';
  readonly hide?: SampleHideOptions;
  readonly joins?: number;
}

/** A random problem, the same for the same seed and options. */
export function sampleProblem(seed: number, options: SampleProblemOptions = {}): NestProblem {
  const random = createRandom(seed);
  const sheets = sampleSheets(random, options);
  const count = options.pieces ?? 20;
  const kinds = options.kinds ?? Math.max(1, Math.round(count / 4));
  const pieces = scaledPieces(random, kinds, count, sheets, options.share ?? 0.4);
  const rules = options.rules ?? 'all';
  const { items, setKinds } =
    rules === 'plain' ? plainItems(pieces, count, sheets) : ruledItems(random.fork(3), pieces, count, sheets);
  const sets =
    options.mode === 'sets' ? setKinds.map((kind) => ({ ...kind, sets: 'many' as const })) : setKinds;
  return {
    items,
    setKinds: sets,
    sheets,
    fixed: [],
    distances:
      rules === 'plain'
        ? { gap: 2, edge: 5, void: 2 }
        : { gap: 2, edge: 4, void: 3, ...(random.next() < 0.4 ? { betweenGroups: 8 } : {}) },
    objective: { mode: options.mode ?? 'placeAll', keepMm: [200, 100] },
    budget: { seed, streams: 1, joins: options.joins ?? 0 },
  };
}

function sampleSheets(random: Random, options: SampleProblemOptions): Sheet[] {
  return Array.from({ length: options.hides ?? 1 }, (_, i) =>
    sampleHide(1000 + random.integer(1_000_000), {
      ...options.hide,
      id: `hide ${i + 1}`,
      lot: `lot ${1 + (i % 2)}`,
    }),
  );
}

/** Scaled so that so many copies cover the share of the hides. */
function scaledPieces(
  random: Random,
  kinds: number,
  count: number,
  sheets: readonly Sheet[],
  share: number,
): SamplePiece[] {
  const seed = random.integer(1_000_000);
  let net = 0;
  for (const { region } of sheets) net += regionArea(region);
  const drawn = samplePieces(seed, kinds);
  let area = 0;
  for (let i = 0; i < count; i++) area += regionArea(drawn[i % kinds]!.region);
  return samplePieces(seed, kinds, Math.sqrt((share * net) / area));
}

const ANY: Need = { maxGrade: 9, strong: false };
const FREE: AngleRule = { frame: 'free', arrowDeg: 0, targetsDeg: [], toleranceDeg: 0, modulo: 360 };

function baseItem(id: string, region: Region, sheets: readonly Sheet[]): Item {
  return {
    id,
    region,
    need: ANY,
    parts: [],
    angleRule: FREE,
    value: 1,
    priority: 0,
    sheets: sheets.map((sheet) => sheet.id),
    isFace: false,
  };
}

function plainItems(
  pieces: readonly SamplePiece[],
  count: number,
  sheets: readonly Sheet[],
): { items: Item[]; setKinds: SetKind[] } {
  const items = pieces.map(({ region, kind }, i) => baseItem(`${kind} ${i + 1}`, region, sheets));
  const members = items.map((item, i) => ({
    item: item.id,
    count: Math.floor(count / items.length) + (i < count % items.length ? 1 : 0),
  }));
  const kind: SetKind = {
    id: 'all',
    sets: 1,
    members,
    value: 1,
    priority: 0,
    keep: 'nothing',
    beside: [],
  };
  return { items, setKinds: [kind] };
}

/** Pieces dealt out to two set kinds, each piece with rules of its own; some come as mirrored pairs. */
function ruledItems(
  random: Random,
  pieces: readonly SamplePiece[],
  count: number,
  sheets: readonly Sheet[],
): { items: Item[]; setKinds: SetKind[] } {
  const items: Item[] = [];
  const kinds = Math.min(2, pieces.length);
  const members: { item: string; count: number }[][] = Array.from({ length: kinds }, () => []);
  pieces.forEach((piece, i) => {
    const item = ruledItem(random, `${piece.kind} ${i + 1}`, piece, sheets);
    const own = members[i % kinds]!;
    items.push(item);
    own.push({ item: item.id, count: 1 });
    if (item.angleRule.frame !== 'local' || random.next() > 0.3) return;
    const twin: Item = {
      ...item,
      id: `${item.id} mirrored`,
      region: mirrored(item.region),
      parts: item.parts.map((part) => ({ ...part, areas: part.areas.map(mirrored) })),
      angleRule: { ...item.angleRule, arrowDeg: 180 - item.angleRule.arrowDeg },
      mirrorOf: item.id,
      pair: { toleranceDeg: 10, distanceMm: 150 },
    };
    items.push(twin);
    own.push({ item: twin.id, count: 1 });
  });
  const perSet = items.length / kinds;
  const setKinds = members.map((own, k): SetKind => {
    const keep = (['nothing', 'lot', 'faceLot', 'sheet'] as const)[random.integer(4)]!;
    const sets = Math.max(1, Math.round(count / kinds / perSet));
    return { id: `kind ${k + 1}`, sets, members: own, value: 10, priority: k, keep, beside: [] };
  });
  return { items, setKinds };
}

function ruledItem(random: Random, id: string, piece: SamplePiece, sheets: readonly Sheet[]): Item {
  const base = baseItem(id, piece.region, sheets);
  const hasReadings = sheets.some((sheet) => sheet.thickness !== undefined);
  const zones = random.next() < 0.15 ? { zones: ['bend', 'shoulder'] } : {};
  const need: Need = { maxGrade: random.integer(4), strong: random.next() < 0.3, ...zones };
  return {
    ...base,
    need,
    parts: random.next() < 0.3 ? [facePart(piece.region, need)] : [],
    angleRule: sampleAngleRule(random),
    priority: random.integer(2),
    isFace: random.next() < 0.5,
    ...(random.next() < 0.5 ? { group: `group ${1 + random.integer(2)}` } : {}),
    ...(hasReadings && random.next() < 0.4
      ? { thickness: { minMm: 1.8, maxMm: 2.8, tooThick: random.next() < 0.5 ? 'skive' : 'refuse' } }
      : {}),
    sheets: sheets.filter((_, i) => i === 0 || random.next() < 0.9).map((sheet) => sheet.id),
  };
}

/** The part of a piece that is seen: it scaled down about its origin, which lies within for all but frames. */
function facePart(region: Region, need: Need): ItemPart {
  const outer = region.outer.map(({ x, y }) => ({
    x: Math.round(x * 900) / 1000 + 0,
    y: Math.round(y * 900) / 1000 + 0,
  }));
  return { name: 'face', areas: [{ outer, openings: region.openings }], need: { ...need, maxGrade: 0 } };
}

function sampleAngleRule(random: Random): AngleRule {
  const draw = random.next();
  const modulo = random.next() < 0.5 ? 180 : 360;
  if (draw < 0.35) return FREE;
  const toleranceDeg = [0, 5, 15][random.integer(3)]!;
  const targetsDeg = [random.next() < 0.7 ? 0 : 90];
  return { frame: draw < 0.5 ? 'sheet' : 'local', arrowDeg: 0, targetsDeg, toleranceDeg, modulo };
}
