import {
  boxesTouch,
  composeAffine,
  createRandom,
  MIRROR_X,
  pointInRegion,
  regionArea,
  regionBox,
  regionDistance,
  regionInRegion,
  rotationDeg,
  subtractRegions,
  transformRegion,
  translation,
} from '@hidebound/geometry';
import type { Random, Region } from '@hidebound/geometry';
import { hideQualities, hideRegion } from '@hidebound/leather';
import type {
  AreaBalance,
  CuttingStep,
  Hide,
  Layout,
  PieceCopy,
  PiecePlacement,
  UnplacedCopy,
} from '@hidebound/leather';
import { SAMPLE_KINDS, samplePiece } from './sample-pieces.js';
import type { SampleKind } from './sample-pieces.js';

export interface SampleLayout {
  readonly hides: readonly Hide[];
  readonly sets: number;
  readonly seed: number;
  /** Names drawn out to this many characters. */
  readonly longNames?: boolean;
  readonly kinds?: readonly SampleKind[];
  /** Pieces are kept to the left of this, so that an offcut is left. */
  readonly freeingCutX?: number;
  readonly orderName?: string;
}

/** A believable layout for tests: pieces thrown at each hide until they lie apart. Invented, and far from tight. */
export function sampleLayout(options: SampleLayout): Layout {
  const random = createRandom(options.seed);
  const kinds = (options.kinds ?? SAMPLE_KINDS).map((kind) =>
    options.longNames === true ? { ...kind, name: `${kind.name} with a long and winding name` } : kind,
  );
  const grounds = options.hides.map((hide) => groundOf(hide, options.freeingCutX));
  const placements: PiecePlacement[] = [];
  const unplaced: UnplacedCopy[] = [];
  for (const { kind, copy } of copiesOf(kinds, options.sets)) {
    const placed = throwPiece(random, grounds, kind, copy);
    if (placed === undefined) unplaced.push({ ...copy, reason: 'no-room' });
    else placements.push(placed);
  }
  const balances = grounds.map((ground) => balanceOf(ground));
  return {
    order: {
      name: options.orderName ?? 'Spring batch for the co-operative',
      version: '3',
      date: '2026-03-02',
      articles: [],
      leathers: [],
      patterns: [],
      useFrom: 'head',
      mode: 'place all',
      cutting: { method: 'hand knife', gapMm: 3, edgeMm: 10, voidMm: 3, kerfMm: 0 },
      keepMm: [80, 80],
      threads: [],
      hardware: [],
    },
    hides: options.hides.map((hide) => ({ id: hide.id, hash: '0'.repeat(64), file: `${hide.id}.hide.json` })),
    pieces: kinds.map(samplePiece),
    placements,
    lanes: [],
    roughCuts: [],
    swatches: [],
    cuttingOrder: cuttingOrder(options.hides, placements),
    unplaced,
    yield: {
      hides: options.hides.map((hide, i) => ({
        hide: hide.id,
        ...balances[i]!,
        ...(options.freeingCutX === undefined
          ? {}
          : {
              freeingCut: {
                from: { x: options.freeingCutX, y: 0 },
                to: { x: options.freeingCutX, y: 100 },
                towards: { x: 1, y: 0 },
              },
            }),
      })),
      total: sumOf(balances),
    },
    offcuts:
      options.freeingCutX === undefined
        ? []
        : options.hides.slice(0, 1).map(sampleOffcut(options.freeingCutX)),
    origin: { version: '0.1.0', seed: 1, streams: 4, joins: 3 },
  };
}

interface Ground {
  readonly hide: Hide;
  readonly region: Region;
  readonly never: readonly Region[];
  readonly placed: Region[];
}

function groundOf(hide: Hide, freeingCutX: number | undefined): Ground {
  const region = hideRegion(hide);
  const never = hideQualities(hide)
    .filter((quality) => quality.isVoid)
    .flatMap((quality) => quality.areas);
  if (freeingCutX === undefined) return { hide, region, never, placed: [] };
  return { hide, region, never: [...never, halfPlane(freeingCutX)], placed: [] };
}

function halfPlane(x: number): Region {
  const far = 1e4;
  return {
    outer: [
      { x, y: -far },
      { x: far, y: -far },
      { x: far, y: far },
      { x, y: far },
    ],
    openings: [],
  };
}

function copiesOf(kinds: readonly SampleKind[], sets: number): { kind: SampleKind; copy: PieceCopy }[] {
  const copies: { kind: SampleKind; copy: PieceCopy }[] = [];
  for (const kind of kinds) {
    for (let set = 1; set <= sets; set++) {
      for (let k = 1; k <= kind.count; k++) {
        const mirrored = k > kind.count - kind.mirrored;
        const copy = mirrored ? k - (kind.count - kind.mirrored) : k;
        copies.push({ kind, copy: { article: kind.article, piece: kind.name, set, copy, mirrored } });
      }
    }
  }
  const size = (kind: SampleKind): number => regionArea(samplePiece(kind).region);
  return copies.sort((a, b) => size(b.kind) - size(a.kind));
}

const THROWS = 260;

function throwPiece(
  random: Random,
  grounds: readonly Ground[],
  kind: SampleKind,
  copy: PieceCopy,
): PiecePlacement | undefined {
  const region = samplePiece(kind).region;
  for (const ground of grounds) {
    const box = regionBox(ground.region);
    const along = box.maxX - box.minX >= box.maxY - box.minY ? 0 : 90;
    for (let i = 0; i < THROWS; i++) {
      const rotation = kind.anyAngle === true ? random.between(-180, 180) : along + random.between(-8, 8);
      const x = random.between(box.minX, box.maxX);
      const y = random.between(box.minY, box.maxY);
      const turned = composeAffine(rotationDeg(rotation), copy.mirrored ? MIRROR_X : rotationDeg(0));
      const moved = transformRegion(composeAffine(translation(x, y), turned), region);
      if (!isFree(ground, moved)) continue;
      ground.placed.push(moved);
      return {
        ...copy,
        hide: ground.hide.id,
        x,
        y,
        rotationDeg: rotation,
        locked: false,
        accepted: [],
        state: 'planned',
      };
    }
  }
  return undefined;
}

function isFree(ground: Ground, region: Region): boolean {
  const box = regionBox(region);
  const inner = regionBox(ground.region);
  if (
    box.minX < inner.minX + 8 ||
    box.maxX > inner.maxX - 8 ||
    box.minY < inner.minY + 8 ||
    box.maxY > inner.maxY - 8
  ) {
    return false;
  }
  if (pointInRegion(region.outer[0]!, ground.region) !== 'inside') return false;
  return (
    [...ground.never, ...ground.placed].every(
      (other) => !boxesTouch(regionBox(other), box, 3) || regionDistance(other, region) >= 3,
    ) && regionInRegion(region, ground.region, { atLeastMm: 8 })
  );
}

function cuttingOrder(hides: readonly Hide[], placements: readonly PiecePlacement[]): CuttingStep[] {
  const steps: CuttingStep[] = [];
  for (const hide of hides) {
    const own = placements.filter((placement) => placement.hide === hide.id);
    const straps = own.filter((placement) => placement.piece.includes('strap'));
    const rest = own.filter((placement) => !placement.piece.includes('strap')).sort((a, b) => a.x - b.x);
    steps.push({ number: steps.length + 1, kind: 'straight edge', hide: hide.id, pieces: [] });
    if (straps.length > 0)
      steps.push({ number: steps.length + 1, kind: 'block', hide: hide.id, pieces: straps });
    for (const placement of rest) {
      steps.push({ number: steps.length + 1, kind: 'piece', hide: hide.id, pieces: [placement] });
    }
  }
  return steps;
}

function balanceOf(ground: Ground): AreaBalance {
  const gross = regionArea({ outer: ground.region.outer, openings: [] });
  const net = regionArea(ground.region);
  const usable = subtractRegions([ground.region], ground.never).reduce(
    (sum, region) => sum + regionArea(region),
    0,
  );
  const pieces = ground.placed.reduce((sum, region) => sum + regionArea(region), 0);
  const edge = gross * 0.05;
  const flaws = net - usable > gross * 0.3 ? gross * 0.02 : net - usable;
  const offcut = net - usable > gross * 0.3 ? net - usable - flaws : 0;
  return {
    grossMm2: gross,
    netMm2: net,
    usableMm2: net - flaws,
    piecesMm2: pieces,
    openingsMm2: gross - net,
    flawsMm2: flaws,
    edgeMm2: edge,
    betweenMm2: net - pieces - flaws - edge - offcut,
    offcutMm2: offcut,
    usedUpMm2: net - offcut,
    grossYield: pieces / gross,
    usableYield: pieces / (net - flaws),
    usedUpYield: pieces / (net - offcut),
  };
}

function sumOf(balances: readonly AreaBalance[]): AreaBalance {
  const sum = (key: keyof AreaBalance): number => balances.reduce((total, each) => total + each[key], 0);
  const pieces = sum('piecesMm2');
  return {
    grossMm2: sum('grossMm2'),
    netMm2: sum('netMm2'),
    usableMm2: sum('usableMm2'),
    piecesMm2: pieces,
    openingsMm2: sum('openingsMm2'),
    flawsMm2: sum('flawsMm2'),
    edgeMm2: sum('edgeMm2'),
    betweenMm2: sum('betweenMm2'),
    offcutMm2: sum('offcutMm2'),
    usedUpMm2: sum('usedUpMm2'),
    grossYield: pieces / sum('grossMm2'),
    usableYield: pieces / sum('usableMm2'),
    usedUpYield: pieces / sum('usedUpMm2'),
  };
}

function sampleOffcut(x: number): (hide: Hide) => Hide {
  return (hide) => {
    const rest = subtractRegions([hideRegion(hide)], [halfPlaneLeft(x)]);
    const ring = rest[0]!.outer;
    return {
      ...hide,
      id: `${hide.id}-1`,
      parent: hide.id,
      cut: 'offcut',
      openings: [],
      zones: [],
      flaws: [],
      outline: {
        start: ring[0]!,
        segments: [...ring.slice(1), ring[0]!].map((to) => ({ kind: 'line', to })),
        closed: true,
      },
    };
  };
}

function halfPlaneLeft(x: number): Region {
  const far = 1e4;
  return {
    outer: [
      { x: -far, y: -far },
      { x, y: -far },
      { x, y: far },
      { x: -far, y: far },
    ],
    openings: [],
  };
}
