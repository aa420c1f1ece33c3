import { curveBox, flattenCurve, regionBox, transformCurve, transformRegion } from '@hidebound/geometry';
import type { Affine, Box, Curve, Point, Polyline, Region, Ring } from '@hidebound/geometry';
import type { LayablePiece, TileContent } from '@hidebound/leather';
import { arrowOnDrawing } from '../picture/placed-pieces.js';
import { pieceHoles, stitchHole } from './piece-holes.js';
import type { TemplateLine } from './template-style.js';

/** What is drawn at full scale, in one frame, before it is divided among pages; mm, y down. */
export interface TemplateScene {
  readonly shapes: readonly SceneShape[];
  readonly lines: readonly SceneLine[];
  /** Words beside what they name: flaws, rough cuts, lanes. */
  readonly notes: readonly SceneNote[];
  /** Edge of the hide: pages are needed along it. */
  readonly edges: readonly Ring[];
}

/** A piece or a rough cut. */
export interface SceneShape {
  readonly name: string;
  readonly region: Region;
  readonly box: Box;
  /** Unit vector towards the tail. */
  readonly arrow?: Point;
  /** All that the template says of it, the name first; and what stands on pages that hold only a part of it. */
  readonly words: ShapeWords;
  /** Lines and punches within: text keeps clear of them. */
  readonly inner: readonly Polyline[];
}

export interface ShapeWords {
  readonly title: string;
  readonly facts: readonly string[];
  /** Where only a part of the shape lies on a page. */
  readonly short: string;
}

/** A line, with its box so that pages far from it pass it over. */
export interface SceneLine {
  readonly kind: TemplateLine;
  readonly curve: Curve;
  readonly box: Box;
}

export interface SceneNote {
  readonly text: string;
  readonly at: Point;
  /** No leader is needed where the words stand wholly in this. */
  readonly home?: Region;
}

export function sceneLine(kind: TemplateLine, curve: Curve): SceneLine {
  return { kind, curve, box: curveBox(curve) };
}

/** Long solid lines are cut into runs of so many segments, so that a page holds only what it shows. */
const RUN_SEGMENTS = 12;

/** A long line in short runs. */
export function sceneRuns(kind: TemplateLine, curve: Curve): SceneLine[] {
  const runs: SceneLine[] = [];
  let start = curve.start;
  for (let i = 0; i < curve.segments.length; i += RUN_SEGMENTS) {
    const segments = curve.segments.slice(i, i + RUN_SEGMENTS);
    runs.push(sceneLine(kind, { start, segments, closed: false }));
    start = segments[segments.length - 1]!.to;
  }
  return runs;
}

/** How closely text keeps clear of curved lines. */
const INNER_TOLERANCE_MM = 0.3;

export interface PieceInScene {
  readonly piece: LayablePiece;
  readonly toScene: Affine;
  readonly words: ShapeWords;
  /** The dotted line is the cut line before an allowance was added. */
  readonly hasAllowance: boolean;
  /** Centres of the stitch holes, in the piece's frame. */
  readonly stitchHoles: readonly Point[];
}

/** A piece with all its lines. */
export function sceneOfPiece(placed: PieceInScene): {
  readonly shape: SceneShape;
  readonly lines: readonly SceneLine[];
} {
  const { piece, toScene } = placed;
  const lines = pieceLines(placed);
  const region = transformRegion(toScene, piece.region);
  return {
    shape: {
      name: piece.piece,
      region,
      box: regionBox(region),
      arrow: arrowOnDrawing(toScene, piece.arrowDeg),
      words: placed.words,
      inner: lines
        .filter(({ kind }) => kind !== 'cut' && kind !== 'stitch hole')
        .map(({ curve }) => flattenCurve(curve, INNER_TOLERANCE_MM)),
    },
    lines,
  };
}

function pieceLines({ piece, toScene, hasAllowance, stitchHoles }: PieceInScene): SceneLine[] {
  const { shape } = piece;
  const moved = (kind: TemplateLine, curve: Curve): SceneLine =>
    sceneLine(kind, transformCurve(toScene, curve));
  return [
    moved('cut', shape.cut),
    ...shape.cutOuts.map((curve) => moved('cut', curve)),
    ...pieceHoles(shape).map((curve) => moved('hole', curve)),
    ...stitchHoles.flatMap(stitchHole).map((curve) => moved('stitch hole', curve)),
    ...shape.stitchLines.map(({ curve }) => moved('stitch', curve)),
    ...shape.foldLines.map(({ curve }) => moved('fold', curve)),
    ...shape.skiveLines.map(({ curve }) => moved('skive', curve)),
    ...shape.cementLines.map(({ curve }) => moved('cement', curve)),
    ...shape.face.map((curve) => moved(hasAllowance ? 'allowance' : 'face', curve)),
  ];
}

/** What is to be divided among pages, and what marks had better not lie on. */
export function contentOfScene({ shapes, edges, lines }: TemplateScene): TileContent {
  return {
    shapes: shapes.map(({ region }) => region),
    edges,
    lines: [
      ...shapes.flatMap(({ inner }) => inner),
      ...lines
        .filter(({ kind }) => STRONG_LINES.has(kind))
        .map(({ curve }) => flattenCurve(curve, INNER_TOLERANCE_MM)),
    ],
  };
}

const STRONG_LINES: ReadonlySet<TemplateLine> = new Set(['lane', 'rough cut', 'freeing cut', 'flaw never']);
