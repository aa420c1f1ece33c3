import { boxesTouch, distanceBetween, regionBox, subtractRegions } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { chain, circle, group, line } from '../drawing/build.js';
import type { DrawingElement, GroupElement } from '../drawing/model.js';
import { growLabelBox, labelBoxCorners, labelBoxMeetsRegion } from '../label/label-box.js';
import type { LabelBox } from '../label/label-box.js';
import { placeInside, roomiestPoint } from '../label/place-inside.js';
import { placeOutside } from '../label/place-outside.js';
import type { FreeSpace, Leader } from '../label/place-outside.js';
import { measureBlock, setBlock } from '../label/text-block.js';
import type { BlockLine, TextBlock } from '../label/text-block.js';
import { BARE_HIDE, FINE_LINE_MM, INK, INK_SOFT, PIECE } from '../sheet/palette.js';
import { MIRRORED_SIGN } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { wrapText } from '../text/measure-text.js';
import {
  ARROW_BREADTH_MM,
  ARROW_LENGTHS_MM,
  arrowAngleDeg,
  arrowTail,
  directionArrow,
} from './direction-arrow.js';
import { longAxis, readableDeg } from './long-axis.js';
import { drawnPunches } from './piece-layers.js';
import type { PictureStyle } from './picture-style.js';
import type { PlacedPiece } from './placed-pieces.js';

/** Kept free between a label and the cut line. */
const PADDING_MM = 0.35;

/** The same for a label of one line that runs along a narrow strap. */
const NARROW_PADDING_MM = 0.22;

/** A name is broken into lines of at most this share of the piece's extent. */
const BROKEN_NAME_SHARE = 0.7;

/** A label of more lines would be a paragraph. */
const MOST_LINES = 4;

/** From here on a shape counts as long: its label runs along it. */
const LONG_FROM = 2.4;

interface InsideLabel {
  readonly block?: { readonly text: TextBlock; readonly box: LabelBox };
  readonly arrow?: LabelBox;
}

/** What labelling needs to know and to keep. */
export interface LabelDesk {
  readonly fonts: FontBook;
  readonly style: PictureStyle;
  readonly space: FreeSpace;
  /** What lies below labels: bare leather, and pieces on it. */
  readonly leather: Region;
  readonly pieces: readonly Region[];
  /** As they are drawn; labels keep clear of them. */
  readonly flaws: readonly Region[];
  /** Straight lines of the work as thin boxes; no label's ground may break them. */
  readonly workLines: readonly LabelBox[];
  /** Marks on pieces that no label may hide. */
  readonly reserved: readonly LabelBox[];
}

/**
 * Labels and direction arrows of all pieces: within the piece as much as it has room for, the rest at the end of a
 * leader in free space. Inside labels come first, so that leaders keep clear of them.
 */
export function labelPieces(desk: LabelDesk, placed: readonly PlacedPiece[]): GroupElement[] {
  const inside = placed.map((piece) => fitInside(desk, piece));
  for (const label of inside) {
    if (label.block !== undefined) desk.space.taken.push(label.block.box);
    if (label.arrow !== undefined) desk.space.taken.push(label.arrow);
  }
  return placed.map((piece, i) => {
    const label = inside[i]!;
    const elements: DrawingElement[] = [];
    if (label.arrow !== undefined) {
      elements.push(...directionArrow(label.arrow, piece.arrow, desk.style.grow));
    }
    if (label.block === undefined) elements.push(...labelAtLeader(desk, piece, label.arrow));
    else {
      // A plain ground parts the text from lines and patterns below it.
      elements.push(
        ground(label.block.box, PIECE),
        ...setBlock(desk.fonts, label.block.text, label.block.box),
      );
    }
    return group(pieceLabelName(piece), elements);
  });
}

/** "label piece 12", by which readers of the drawing find it. */
export function pieceLabelName(piece: PlacedPiece): string {
  return `label piece ${piece.number}`;
}

function fitInside(desk: LabelDesk, piece: PlacedPiece): InsideLabel {
  const near = roomiestPoint(piece.region);
  const punches = [...punchBoxes(piece), ...desk.reserved];
  // A label that hides a flaw is worse than a short one: flawless leather first, then all of the piece.
  const own = regionBox(piece.region);
  const over = desk.flaws.filter((flaw) => boxesTouch(regionBox(flaw), own));
  const whole = [piece.region];
  for (const regions of over.length === 0 ? [whole] : [subtractRegions(whole, over), whole]) {
    for (const lines of labelOptions(desk, piece)) {
      const label = fitBlock(desk, piece, measureBlock(desk.fonts, lines), { regions, near, punches });
      if (label !== undefined) return label;
    }
  }
  const arrow = fitArrow(desk, piece, near, punches) ?? fitArrow(desk, piece, near, []);
  return arrow === undefined ? {} : { arrow };
}

/** The block and an arrow beside it, if there is room for both. */
function fitBlock(
  desk: LabelDesk,
  piece: PlacedPiece,
  text: TextBlock,
  room: { readonly regions: readonly Region[]; readonly near: Point; readonly punches: readonly LabelBox[] },
): InsideLabel | undefined {
  const { near, punches } = room;
  for (const angleDeg of labelAngles(piece)) {
    for (const region of room.regions) {
      const padding = isLineAlong(piece, text) ? NARROW_PADDING_MM : PADDING_MM;
      const box = placeInside(region, { ...padded(text, padding), angleDeg, near, avoid: punches });
      const arrow = box === undefined ? undefined : fitArrow(desk, piece, box.center, [...punches, box]);
      if (box !== undefined && arrow !== undefined) return { block: { text, box }, arrow };
    }
  }
  return undefined;
}

/** What the punches take up: no label covers them. */
function punchBoxes(piece: PlacedPiece): LabelBox[] {
  return drawnPunches(piece).map(({ at, radiusMm }) => {
    const side = 2 * radiusMm + PUNCH_CLEAR_MM;
    return { center: at, widthMm: side, heightMm: side, angleDeg: 0 };
  });
}

const PUNCH_CLEAR_MM = 0.3;

function fitArrow(
  desk: LabelDesk,
  piece: PlacedPiece,
  near: Point,
  avoid: readonly LabelBox[],
): LabelBox | undefined {
  const { grow } = desk.style;
  for (const length of ARROW_LENGTHS_MM) {
    const box = placeInside(piece.region, {
      widthMm: length * grow,
      heightMm: ARROW_BREADTH_MM * grow,
      angleDeg: arrowAngleDeg(piece.arrow),
      near,
      avoid: avoid.map((other) => growLabelBox(other, PADDING_MM)),
    });
    if (box !== undefined) return box;
  }
  return undefined;
}

function labelAngles(piece: PlacedPiece): number[] {
  const axis = longAxis(piece.region);
  const along = readableDeg(axis.angleDeg);
  const angles = axis.slenderness >= LONG_FROM ? [along, 0, -90] : [0, along, -90];
  return angles.filter((angle, i) => angles.indexOf(angle) === i);
}

/** What the label says, from all of it in large letters to the bare number. */
function labelOptions(desk: LabelDesk, piece: PlacedPiece): BlockLine[][] {
  const { smallMm, nameMm } = desk.style;
  const { placement, number } = piece;
  const mark = placement.mirrored ? ` ${MIRRORED_SIGN}` : '';
  const bold = (text: string, sizeMm: number): BlockLine => ({
    text,
    face: 'narrow bold',
    sizeMm,
    colour: INK,
  });
  const plain = (text: string): BlockLine => ({ text, face: 'narrow', sizeMm: smallMm, colour: INK });
  const short = `${placement.set}/${placement.copy}`;
  if (desk.style.labels === 'number and name') {
    return [
      [bold(`${number}${mark}`, nameMm), plain(placement.piece)],
      [bold(`${number}${mark}`, nameMm)],
      [bold(`${number}${mark}`, smallMm)],
    ];
  }
  const long = `set ${placement.set}, copy ${placement.copy}${placement.mirrored ? `, mirrored ${MIRRORED_SIGN}` : ''}`;
  const box = regionBox(piece.region);
  const extent = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const broken = (sizeMm: number): BlockLine[] =>
    wrapText(
      desk.fonts,
      'narrow bold',
      sizeMm,
      `${number}  ${placement.piece}`,
      extent * BROKEN_NAME_SHARE,
    ).map((text) => bold(text, sizeMm));
  const options = [
    [bold(`${number}  ${placement.piece}`, nameMm), plain(long)],
    [...broken(nameMm), plain(long)],
    [bold(`${number}  ${placement.piece}`, smallMm), plain(long)],
    [bold(`${number}  ${placement.piece}`, smallMm), plain(`${short}${mark}`)],
    [bold(`${number}  ${placement.piece} ${short}${mark}`, smallMm)],
    [...broken(smallMm), plain(`${short}${mark}`)],
    [bold(number, smallMm), plain(`${short}${mark}`)],
    [bold(`${number}  ${short}${mark}`, smallMm)],
    ...(placement.mirrored ? [[bold(number, smallMm), bold(MIRRORED_SIGN, smallMm)]] : []),
    [bold(`${number}${mark}`, smallMm)],
  ];
  // A name is broken between words or not at all.
  return options.filter(
    (lines) => lines.length <= MOST_LINES && !lines.some((each) => each.text.endsWith('…')),
  );
}

function labelAtLeader(desk: LabelDesk, piece: PlacedPiece, arrow: LabelBox | undefined): DrawingElement[] {
  const { fonts, style, space } = desk;
  const options = labelOptions(desk, piece);
  const text = measureBlock(fonts, options[options.length - 1]!);
  const target = arrow === undefined ? roomiestPoint(piece.region) : arrowTail(arrow, piece.arrow);
  const arrowRoom = arrow === undefined ? ARROW_LENGTHS_MM[4]! * style.grow : 0;
  const size = { ...padded(text), widthMm: text.widthMm + 2 * PADDING_MM + arrowRoom };
  // Where leather and margin are full, the label lies over other pieces, on a ground of its own.
  const found = placeOutside(space, size, target) ?? placeOutside({ ...space, shapes: [] }, size, target);
  if (found === undefined) return [];
  space.taken.push(found.box);
  space.leaders.push(found.leader);
  const textBox = { ...found.box, center: { x: found.box.center.x - arrowRoom / 2, y: found.box.center.y } };
  const elements = [
    ...drawLeader(found.leader, style),
    ...plainGround(desk, found.box),
    ...setBlock(fonts, text, textBox),
  ];
  if (arrow === undefined) {
    const at = { x: found.box.center.x + (found.box.widthMm - arrowRoom) / 2, y: found.box.center.y };
    const box: LabelBox = { center: at, widthMm: found.box.heightMm * 0.9, heightMm: 1, angleDeg: 0 };
    elements.push(...directionArrow(box, piece.arrow, Math.min(style.grow, 1)));
  }
  return elements;
}

/** A thin line with a dot at the end that lies on what is named. */
export function drawLeader(leader: Leader, style: PictureStyle): DrawingElement[] {
  const dot = circle(leader.to, 0.35 * style.pen, { fill: INK_SOFT });
  if (distanceBetween(leader.from, leader.to) < 1e-6) return [dot];
  return [line(leader.from, leader.to, { colour: INK_SOFT, widthMm: FINE_LINE_MM * style.pen }), dot];
}

/**
 * A plain ground under text, in the colour of what lies below it, so that no line or pattern runs through the letters;
 * none off the hide.
 */
export function plainGround(desk: LabelDesk, box: LabelBox): DrawingElement[] {
  if (desk.pieces.some((region) => labelBoxMeetsRegion(box, region))) return [ground(box, PIECE)];
  return labelBoxMeetsRegion(box, desk.leather) ? [ground(box, BARE_HIDE)] : [];
}

function ground(box: LabelBox, colour: string): DrawingElement {
  return chain(labelBoxCorners(box), true, { fill: colour });
}

function isLineAlong(piece: PlacedPiece, text: TextBlock): boolean {
  return text.lines.length === 1 && longAxis(piece.region).slenderness >= LONG_FROM;
}

function padded(block: TextBlock, by = PADDING_MM): { readonly widthMm: number; readonly heightMm: number } {
  return { widthMm: block.widthMm + 2 * by, heightMm: block.heightMm + 2 * by };
}
