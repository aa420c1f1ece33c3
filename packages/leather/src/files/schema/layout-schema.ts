import type { RuleName, UnplacedReason } from '@hidebound/geometry';
import { FLAW_KINDS, ZONE_KINDS } from '../../model/hide.js';
import { hideBody } from './hide-schema.js';
import { group, listOf, optional, requiredList } from './group.js';
import {
  angleDeg,
  areaMm2,
  coordinate,
  count,
  filePath,
  flag,
  hash,
  lengthMm,
  name,
  oneOf,
  positiveMm,
  seed,
  serial,
  share,
  wholeNumber,
} from './leaves.js';
import { wholeEffect } from './marks.js';
import { layablePiece } from './piece-schema.js';
import { resolvedOrder } from './resolved-order-schema.js';
import { point, ring, unitVector } from './shapes.js';

export const RULE_NAMES = [
  'gap',
  'edge',
  'void',
  'looks',
  'strength',
  'zone',
  'angle',
  'thickness',
  'mirrored',
  'pair',
  'count',
  'set',
  'lot',
  'sheet',
  'locked',
  'lane',
  'rough-cut',
  'finite',
] as const satisfies readonly RuleName[];

export const UNPLACED_REASONS = [
  'larger-than-every-sheet',
  'no-sheet-allowed',
  'no-room',
  'no-leather-good-enough',
  'direction-unknown',
  'thickness',
  'set-incomplete',
  'not-tried',
] as const satisfies readonly UnplacedReason[];

/** Copies within a set can be many where layers multiply them. */
const copyNumber = wholeNumber(1, 1_000_000);

const COPY_FIELDS = {
  article: [name, 'The article.'],
  piece: [name, 'The piece.'],
  set: [copyNumber, 'The set, from 1.'],
  copy: [copyNumber, 'The copy, from 1 within its set; plain and mirrored ones are numbered apart.'],
  mirrored: [flag, 'True: this is a mirrored copy.'],
} as const;
const pieceCopy = group(COPY_FIELDS);

const placement = group({
  ...COPY_FIELDS,
  hide: [name, 'Id of the hide that it lies on.'],
  x: [coordinate, 'Where its origin lies on the hide, mm.'],
  y: [coordinate, 'Where its origin lies on the hide, mm.'],
  rotationDeg: [angleDeg, 'Turn about the origin, degrees clockwise as seen, six decimals.'],
  locked: [flag, 'True: it stays when the layout is done again.'],
  accepted: [listOf(oneOf(RULE_NAMES)), 'Rules that were accepted by hand to be broken here.'],
  state: [oneOf(['planned', 'cut', 'spoiled']), 'Whether it is cut already.'],
});

const lane = group({
  id: [name, 'Its own name.'],
  hide: [name, 'The hide that it lies on.'],
  from: [point, 'Start of the straight first cut; the straps lie on its right.'],
  to: [point, 'End of the first cut.'],
  openAt: [oneOf(['from', 'to', 'both']), 'The end or ends at which it runs out over the hide’s edge.'],
  kerfMm: [lengthMm, '0: neighbours share a line; more: each keeps its own, this far apart, mm.'],
  rows: [
    requiredList(
      group({
        widthMm: [positiveMm, 'Width, mm.'],
        straps: [requiredList(pieceCopy), 'Straps that lie end to end in it.'],
      }),
    ),
    'Rows from the first cut on.',
  ],
});

const roughCut = group({
  id: [name, 'Its own name.'],
  hide: [name, 'The hide that it is cut from.'],
  leather: [name, 'The leather of its pieces.'],
  preparation: [optional(name), 'The preparation of its pieces.'],
  outline: [ring, 'Its edge.'],
  marginMm: [lengthMm, 'Room around its pieces, mm.'],
  members: [requiredList(pieceCopy), 'The pieces that lie in it.'],
});

const swatch = group({
  id: [name, 'Its own name.'],
  hide: [name, 'The hide that it is cut from.'],
  roughCut: [optional(name), 'The rough cut that it belongs to.'],
  outline: [ring, 'Its edge.'],
});

const cuttingStep = group({
  number: [serial, 'Steps are numbered from 1.'],
  kind: [oneOf(['straight edge', 'lane', 'rough cut', 'block', 'piece']), 'What is cut.'],
  hide: [name, 'On which hide.'],
  of: [optional(name), 'Id of the lane or rough cut.'],
  pieces: [listOf(pieceCopy), 'The pieces that come free.'],
});

const AREA_FIELDS = {
  grossMm2: [areaMm2, 'Within the outline, mm².'],
  netMm2: [areaMm2, 'Gross less openings, mm².'],
  usableMm2: [areaMm2, 'Net less what is never to be used, mm².'],
  piecesMm2: [areaMm2, 'Area of the pieces, cut-outs not counted, mm².'],
  openingsMm2: [areaMm2, 'Openings, mm².'],
  flawsMm2: [areaMm2, 'Used up by flaws, mm².'],
  edgeMm2: [areaMm2, 'Used up along outline and openings, mm².'],
  betweenMm2: [areaMm2, 'Used up between the pieces, mm².'],
  offcutMm2: [areaMm2, 'Worth keeping, mm².'],
  usedUpMm2: [areaMm2, 'Used up over all, mm².'],
  grossYield: [share, 'Pieces over gross area.'],
  usableYield: [share, 'Pieces over usable area.'],
  usedUpYield: [share, 'Pieces over used-up area.'],
} as const;

const yieldReport = group({
  hides: [
    requiredList(
      group({
        hide: [name, 'Id of the hide.'],
        ...AREA_FIELDS,
        freeingCut: [
          optional(
            group({
              from: [point, 'One point on it.'],
              to: [point, 'Another point on it.'],
              towards: [unitVector, 'Unit vector that points into the rest.'],
            }),
          ),
          'The straight cut that frees the rest.',
        ],
      }),
    ),
    'Hide by hide.',
  ],
  total: [group(AREA_FIELDS), 'All hides together.'],
});

export const LAYOUT_FIELDS = {
  order: [resolvedOrder, 'The order with everything filled in.'],
  hides: [
    requiredList(
      group({
        id: [name, 'Id of the hide.'],
        hash: [hash, 'SHA-256 of the hide’s file as Hidebound writes it.'],
        file: [filePath, 'Its file, relative to the layout.'],
      }),
    ),
    'The hides that it lies on.',
  ],
  pieces: [requiredList(layablePiece), 'The pieces, each in its own frame.'],
  placements: [
    requiredList(placement),
    'Where each copy lies. A point goes: x to -x if mirrored, turned clockwise about the origin, moved by x, y.',
  ],
  lanes: [listOf(lane), 'Straps side by side.'],
  roughCuts: [listOf(roughCut), 'Blocks that are cut out first.'],
  swatches: [listOf(swatch), 'Test pieces in the waste.'],
  cuttingOrder: [listOf(cuttingStep), 'What is cut when.'],
  unplaced: [
    listOf(group({ ...COPY_FIELDS, reason: [oneOf(UNPLACED_REASONS), 'Why it was not laid.'] })),
    'What did not fit.',
  ],
  yield: [yieldReport, 'Areas.'],
  offcuts: [listOf(hideBody), 'Leftovers worth keeping, as hides.'],
  origin: [
    group({
      version: [name, 'Version of Hidebound.'],
      seed: [seed, 'Seed of the search.'],
      effort: [optional(wholeNumber(0, 1_000_000_000)), 'Joins that were asked for; absent: until stopped.'],
      streams: [count, 'Streams of the search.'],
      joins: [
        wholeNumber(0, 1_000_000_000),
        'Joins that were done; with the seed they give the same layout again.',
      ],
    }),
    'What made it.',
  ],
  marks: [
    optional(
      group({
        flawDefaults: [
          listOf(
            group({ kind: [oneOf(FLAW_KINDS), 'Kind of flaw.'], effect: [wholeEffect, 'What it does.'] }),
          ),
          'What flaws of a kind do.',
        ],
        zoneDefaults: [
          listOf(
            group({ kind: [oneOf(ZONE_KINDS), 'Kind of zone.'], effect: [wholeEffect, 'What it does.'] }),
          ),
          'What zones of a kind are worth.',
        ],
        avoidCandidates: [flag, 'True: flaws that nobody has confirmed yet were kept clear of, too.'],
      }),
    ),
    'What marks mean where a hide’s file does not say; absent: the built-in meanings.',
  ],
} as const;

export const layoutBody = group(LAYOUT_FIELDS);
