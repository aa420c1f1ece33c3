import {
  composeAffine,
  curveFromPolyline,
  flattenCurve,
  regionBox,
  rotationDeg,
  transformCurve,
  transformRegion,
} from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { seatsOf } from '@hidebound/leather';
import type { Hide, HolePlaces, LayablePiece, Layout, RoughCutBlock } from '@hidebound/leather';
import type { SeenFrom } from '../picture/hide-view.js';
import { copyKey, cuttingNumbers, pieceKey, placementTransform } from '../picture/placed-pieces.js';
import type { LengthUnit } from '../sheet/words.js';
import { cardPointLines } from './card-points.js';
import { sideTransform } from './hide-scene.js';
import { hasAllowanceLine, orderPieceOf, pieceTemplateWords } from './piece-words.js';
import { stitchHolesOf } from './stitch-holes.js';
import { sceneLine, sceneOfPiece } from './template-scene.js';
import type { SceneLine, SceneShape } from './template-scene.js';

/** One shape by itself with its lines: what a card is cut from. */
export interface CardScene {
  readonly shape: SceneShape;
  readonly lines: readonly SceneLine[];
}

/** A card that can be drawn turned by any angle about its own origin. */
export interface TemplateCard {
  readonly id: string;
  draw(turnDeg: number): CardScene;
}

export interface CardOptions {
  readonly layout: Layout;
  readonly side: SeenFrom;
  readonly units: LengthUnit;
  readonly stitchHoles: readonly HolePlaces[];
}

/** A card for each piece. */
export function pieceCards(options: CardOptions, pieces: readonly LayablePiece[]): TemplateCard[] {
  const { layout, side, units, stitchHoles } = options;
  return pieces.map((piece) => ({
    id: pieceKey(piece),
    draw: (turnDeg) => {
      const holes = stitchHolesOf(stitchHoles, piece);
      const ordered = orderPieceOf(layout, piece);
      const toScene = cardTransform(side, turnDeg);
      const scene = sceneOfPiece({
        piece,
        toScene,
        words: pieceTemplateWords(layout, piece, side, units, holes.length),
        hasAllowance: hasAllowanceLine(piece, ordered),
        stitchHoles: holes,
      });
      return withLines(scene, cardPointLines(piece, ordered?.from, toScene));
    },
  }));
}

/** The scene with more lines, of which words keep clear too. */
function withLines({ shape, lines }: CardScene, more: readonly SceneLine[]): CardScene {
  const inner = more.map(({ curve }) => flattenCurve(curve, INNER_TOLERANCE_MM));
  return { shape: { ...shape, inner: [...shape.inner, ...inner] }, lines: [...lines, ...more] };
}

function cardTransform(side: SeenFrom, turnDeg: number): Affine {
  return composeAffine(rotationDeg(turnDeg), sideTransform(side));
}

/** A card for each rough cut, with the pieces that lie in it. */
export function roughCutCards(options: CardOptions, hides: readonly Hide[]): TemplateCard[] {
  return options.layout.roughCuts.map((block) => ({
    id: `${block.hide}:${block.id}`,
    draw: (turnDeg) =>
      roughCutScene(
        options,
        block,
        hides.find(({ id }) => id === block.hide),
        turnDeg,
      ),
  }));
}

const INNER_TOLERANCE_MM = 0.3;

function roughCutScene(
  { layout, side }: CardOptions,
  block: RoughCutBlock,
  hide: Hide | undefined,
  turnDeg: number,
): CardScene {
  const toScene = cardTransform(side, turnDeg);
  const region = transformRegion(toScene, { outer: block.outline, openings: [] });
  const outline = transformCurve(toScene, curveFromPolyline(block.outline, true));
  const members = memberLines(layout, block, toScene);
  const arrow = hide === undefined ? undefined : towardsTail(hide, toScene);
  return {
    shape: {
      name: `rough cut ${block.id}`,
      region,
      box: regionBox(region),
      ...(arrow === undefined ? {} : { arrow }),
      words: {
        title: `rough cut ${block.id}`,
        short: `rough cut ${block.id}`,
        facts: blockFacts(layout, block, side),
      },
      inner: members.map(({ curve }) => flattenCurve(curve, INNER_TOLERANCE_MM)),
    },
    lines: [sceneLine('cut', outline), ...members],
  };
}

function memberLines(layout: Layout, block: RoughCutBlock, toScene: Affine): SceneLine[] {
  const pieces = new Map(layout.pieces.map((piece) => [pieceKey(piece), piece]));
  return seatsOf(layout.placements)
    .ofRoughCut(block)
    .filter((placement) => placement !== undefined)
    .flatMap((placement) => {
      const piece = pieces.get(pieceKey(placement));
      if (piece === undefined) return [];
      const onCard = composeAffine(toScene, placementTransform(placement));
      return [piece.shape.cut, ...piece.shape.cutOuts].map((curve) =>
        sceneLine('piece', transformCurve(onCard, curve)),
      );
    });
}

function blockFacts(layout: Layout, block: RoughCutBlock, side: SeenFrom): string[] {
  const numbers = cuttingNumbers(layout);
  const named = block.members.map((copy) => numbers.get(copyKey(copy)) ?? '').join(', ');
  const { order } = layout;
  return [
    `hide ${block.hide}, leather ${block.leather}`,
    block.preparation === undefined
      ? 'cut first, prepare whole'
      : `cut first, prepare whole: ${block.preparation}`,
    `pieces ${named}; ${Math.round(block.marginMm * 10) / 10} mm margin around them`,
    side === 'grain' ? 'grain side up' : 'flesh side up (mirrored drawing)',
    `${order.name}, version ${order.version}, ${order.date}`,
  ];
}

/** The way from the backbone's head to its tail, on the card. */
function towardsTail(hide: Hide, toScene: Affine): Point | undefined {
  if (hide.backbone === undefined) return undefined;
  const from = hide.backbone[0]!;
  const to = hide.backbone[hide.backbone.length - 1]!;
  const x = toScene.a * (to.x - from.x) + toScene.c * (to.y - from.y);
  const y = toScene.b * (to.x - from.x) + toScene.d * (to.y - from.y);
  const length = Math.sqrt(x * x + y * y);
  return length === 0 ? undefined : { x: x / length, y: y / length };
}
