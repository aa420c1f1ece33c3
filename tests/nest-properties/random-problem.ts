import { createRandom, regionArea, sampleHide } from '@hidebound/geometry';
import type {
  AngleRule,
  Distances,
  Item,
  Need,
  NestProblem,
  Random,
  Region,
  SetKind,
  Sheet,
} from '@hidebound/geometry';
import { facePart, mirrorImage, randomPiece, randomStrap } from './random-pieces.js';
import { withFixed } from './random-fixed.js';

/** What a problem is about; in turn, so that any twenty in a row hold them all. */
const KINDS = [
  ...['place all', 'place all', 'sets', 'place all', 'fill', 'two streams', 'several hides', 'fixed'],
  ...['sets', 'strip', 'place all', 'lanes', 'two streams', 'several hides', 'rough cuts', 'fixed'],
  ...['sets', 'place all', 'fixed sets', 'everything'],
] as const;

export type ProblemKind = (typeof KINDS)[number];

export interface RandomProblem {
  readonly number: number;
  readonly kind: ProblemKind;
  readonly problem: NestProblem;
}

/** Share of the problems that are searched up to a first join; the others end with the first layout. */
const SHARE_WITH_JOIN = 0.3;

/** Problem of a number: the same for the same number, whoever asks; `joins` overrules its own number of joins. */
export function randomProblem(number: number, joins?: number): RandomProblem {
  const random = createRandom(number);
  const kind = KINDS[number % KINDS.length]!;
  const sheets = randomSheets(random.fork(1), kind);
  const items = randomItems(random.fork(2), kind, sheets);
  const own = random.next() < SHARE_WITH_JOIN ? 1 : 0;
  const plain: NestProblem = {
    items,
    setKinds: randomSetKinds(random.fork(3), kind, items),
    sheets,
    fixed: [],
    distances: randomDistances(random.fork(4)),
    objective: { mode: modeOf(kind), keepMm: [random.between(50, 250), random.between(50, 120)] },
    budget: { seed: number, streams: hasTwoStreams(kind) ? 2 : 1, joins: joins ?? own },
  };
  return { number, kind, problem: kind.startsWith('fixed') ? withFixed(random.fork(5), plain) : plain };
}

function hasTwoStreams(kind: ProblemKind): boolean {
  return kind === 'two streams' || kind === 'everything';
}

function modeOf(kind: ProblemKind): NestProblem['objective']['mode'] {
  if (kind === 'fill' || kind === 'strip') return kind;
  return kind === 'sets' || kind === 'fixed sets' ? 'sets' : 'placeAll';
}

const CUTS = ['side', 'hide', 'shoulder', 'bend', 'belly', 'panel'] as const;
const USE_FROM = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0.6, y: -0.8 },
];

function randomSheets(random: Random, kind: ProblemKind): Sheet[] {
  if (kind === 'strip') return [stripSheet(random)];
  const count = kind === 'several hides' || kind === 'fixed sets' ? 2 + random.integer(2) : 1;
  return Array.from({ length: count }, (_, i) =>
    sampleHide(random.integer(1_000_000), {
      id: `hide ${i + 1}`,
      cut: pick(random, CUTS),
      lengthMm: random.between(500, 1100),
      halfWidthMm: random.between(250, 500),
      corners: 30 + random.integer(170),
      flaws: random.integer(14),
      zones: random.next() < 0.7,
      strokes: random.integer(4),
      ...(random.next() < 0.5 ? { readings: random.integer(6) } : {}),
      lot: `lot ${1 + random.integer(2)}`,
      useFrom: pick(random, USE_FROM),
    }),
  );
}

function stripSheet(random: Random): Sheet {
  const width = random.between(200, 400);
  const corners = [
    { x: 0, y: 0 },
    { x: 3000, y: 0 },
    { x: 3000, y: width },
    { x: 0, y: width },
  ];
  const outer = corners.map(({ x, y }) => ({ x, y: toGrid(y) }));
  const region = { outer, openings: [] };
  return { id: 'hide 1', region, qualities: [], lot: 'lot 1', useFrom: { x: 1, y: 0 }, openLength: true };
}

/** Copies, in all, and the share of the leather that they would cover. */
const COPIES = { least: 6, most: 16 };
const SHARE = { least: 0.15, most: 0.6 };
const STRIP_SHARE = 0.08;

function randomItems(random: Random, kind: ProblemKind, sheets: readonly Sheet[]): Item[] {
  const kinds = 3 + random.integer(4);
  const share = kind === 'strip' ? STRIP_SHARE : random.between(SHARE.least, SHARE.most);
  const net = sheets.reduce((sum, { region }) => sum + regionArea(region), 0);
  const each = (share * net) / random.between(COPIES.least, COPIES.most);
  const strictness = pick(random, [0.2, 0.5, 1]);
  const items: Item[] = [];
  for (let i = 0; i < kinds; i++) {
    const isStrap = (kind === 'lanes' || kind === 'everything') && i % 2 === 0;
    const item = isStrap
      ? strapItem(random, `strap ${i + 1}`, each, sheets, strictness)
      : pieceItem(random, `piece ${i + 1}`, each, sheets, strictness);
    const blocked = (kind === 'rough cuts' || kind === 'everything') && !isStrap && random.next() < 0.6;
    items.push(blocked ? { ...item, group: 'dyed', roughMargin: random.between(4, 12) } : item);
    if (random.next() < 0.25 && !isStrap) items.push(mirrored(random, items.at(-1)!));
  }
  return items;
}

function pieceItem(
  random: Random,
  id: string,
  areaMm2: number,
  sheets: readonly Sheet[],
  strictness: number,
): Item {
  const size = Math.sqrt(areaMm2) * random.between(0.4, 1);
  return ruledItem(random, id, randomPiece(random, size), sheets, strictness);
}

function strapItem(
  random: Random,
  id: string,
  areaMm2: number,
  sheets: readonly Sheet[],
  strictness: number,
): Item {
  // Half of it is on the grid too, and so are its corners.
  const widthMm = 2 * toGrid(random.between(8, 20));
  const length = Math.min(600, Math.max(60, areaMm2 / widthMm));
  const item = ruledItem(random, id, randomStrap(random, length, widthMm), sheets, strictness);
  return { ...item, lane: { widthMm, firmEnd: pick(random, [-1, 0, 1] as const) } };
}

/** The stricter (up to 1), the more rules it has. */
function ruledItem(
  random: Random,
  id: string,
  region: Region,
  sheets: readonly Sheet[],
  strictness: number,
): Item {
  const need = randomNeed(random, strictness);
  const hasReadings = sheets.some(({ thickness }) => thickness !== undefined);
  const face = { name: 'face', areas: facePart(region, random.between(0.4, 0.9)) };
  return {
    id,
    region,
    need,
    parts: random.next() < 0.35 * strictness ? [{ ...face, need: { ...need, maxGrade: 0 } }] : [],
    angleRule: randomAngleRule(random, strictness),
    ...(hasReadings && random.next() < 0.4 * strictness
      ? {
          thickness: {
            minMm: random.between(1.4, 2.2),
            maxMm: random.between(2.6, 3.6),
            tooThick: random.next() < 0.5 ? 'skive' : 'refuse',
          },
        }
      : {}),
    value: 1 + random.integer(20),
    priority: random.integer(3),
    sheets: sheets.filter((_, i) => i === 0 || random.next() < 0.85).map((sheet) => sheet.id),
    ...(random.next() < 0.5 ? { group: `group ${1 + random.integer(2)}` } : {}),
    isFace: random.next() < 0.5,
  };
}

function randomNeed(random: Random, strictness: number): Need {
  const zones =
    random.next() < 0.12 * strictness ? { zones: ['bend', pick(random, ['shoulder', 'neck'])] } : {};
  const maxGrade = random.next() < 0.6 * strictness ? random.integer(3) : 3;
  return { maxGrade, strong: random.next() < 0.25 * strictness, ...zones };
}

function randomAngleRule(random: Random, strictness: number): AngleRule {
  const isFree = random.next() > 0.6 * strictness;
  const frame = isFree ? 'free' : random.next() < 0.4 ? 'sheet' : 'local';
  const arrowDeg = pick(random, [0, 0, 90, random.between(-180, 180)]);
  const target = pick(random, [0, 90, random.between(0, 360)]);
  return {
    frame,
    arrowDeg,
    targetsDeg: frame === 'free' ? [] : random.next() < 0.3 ? [target, target + 45] : [target],
    toleranceDeg: pick(random, [0, 1, 5, 20, 45]),
    modulo: random.next() < 0.6 ? 180 : 360,
  };
}

function mirrored(random: Random, item: Item): Item {
  return {
    ...item,
    id: `${item.id} mirrored`,
    region: mirrorImage(item.region),
    parts: item.parts.map((part) => ({ ...part, areas: part.areas.map(mirrorImage) })),
    angleRule: { ...item.angleRule, arrowDeg: 180 - item.angleRule.arrowDeg },
    mirrorOf: item.id,
    ...(random.next() < 0.6
      ? { pair: { toleranceDeg: pick(random, [2, 10, 30]), distanceMm: pick(random, [40, 150]) } }
      : {}),
  };
}

function randomSetKinds(random: Random, kind: ProblemKind, items: readonly Item[]): SetKind[] {
  const count = 1 + random.integer(2);
  const groups: Item[][] = Array.from({ length: count }, () => []);
  let own = groups[0]!;
  for (const item of items) {
    if (item.mirrorOf === undefined) own = pick(random, groups);
    own.push(item);
  }
  return groups
    .filter((group) => group.length > 0)
    .map((group, i) => ({
      id: `kind ${i + 1}`,
      sets: modeOf(kind) === 'sets' && random.next() < 0.6 ? 'many' : 1 + random.integer(3),
      members: group.map(({ id, mirrorOf }) => ({
        item: id,
        count: mirrorOf === undefined && random.next() < 0.3 ? 2 : 1,
      })),
      value: 1 + random.integer(30),
      priority: random.integer(2),
      keep: pick(random, ['nothing', 'nothing', 'sheet', 'lot', 'faceLot']),
      beside: group.length > 1 && random.next() < 0.3 ? [[group[0]!.id, group[1]!.id]] : [],
    }));
}

function randomDistances(random: Random): Distances {
  return {
    gap: pick(random, [0, 0.5, 2, 2, 3.7]),
    edge: pick(random, [0, 2, 5]),
    void: pick(random, [0, 2, 4]),
    ...(random.next() < 0.3 ? { betweenGroups: pick(random, [1, 6]) } : {}),
  };
}

function pick<T>(random: Random, list: readonly T[]): T {
  return list[random.integer(list.length)]!;
}

function toGrid(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
