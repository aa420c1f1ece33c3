import {
  applyAffine,
  invertAffine,
  transformRing,
  translation,
  composeAffine,
  scaling,
} from '@hidebound/geometry';
import type { Affine, Box, Ring } from '@hidebound/geometry';
import type { StraightPicture } from '../../straight/straight-picture.js';
import { withMats } from '../../vision/mats.js';
import { rgbMat } from '../../vision/picture-mats.js';
import type { Vision } from '../../vision/vision.js';
import { fillRings } from '../map/fill-rings.js';

/** A straightened picture and what of the floor in it does not move with the leather, such as sheets. */
export interface JoinablePicture {
  readonly picture: StraightPicture;
  /** Left out of the joined picture where another one shows the place; floor mm of this picture. */
  readonly covered?: readonly Ring[];
}

/** A joined picture has no more pixels than this; a larger one is made coarser. */
const MOST_PIXELS = 40_000_000;

/** Towards the edge of a photo it sees things most slantwise; the seam is blended over this width. */
const BLEND_MM = 20;

/**
 * One picture of a hide from several that show parts of it, each brought into the first one's frame. Each place is
 * taken from the picture in which it lies farthest from what that one does not show.
 */
export function joinPictures(
  pictures: readonly JoinablePicture[],
  motions: readonly Affine[],
  vision: Vision,
): StraightPicture {
  const frame = frameOf(pictures, motions);
  const pixels = frame.width * frame.height;
  const rgb = new Uint8Array(3 * pixels);
  const seen = new Uint8Array(pixels);
  const depth = new Float32Array(pixels);
  pictures.forEach((one, i) => lay(one, motions[i]!, frame, { rgb, seen, depth }, vision));
  return { ...frame, rgb, seen };
}

type Frame = Pick<StraightPicture, 'width' | 'height' | 'pxPerMm' | 'origin'>;

/** What has been laid so far; `depth` is how far, in pixels, a place lies from what its picture does not show. */
interface Laid {
  readonly rgb: Uint8Array;
  readonly seen: Uint8Array;
  readonly depth: Float32Array;
}

function frameOf(pictures: readonly JoinablePicture[], motions: readonly Affine[]): Frame {
  const box = pictures.reduce<Box>((sum, { picture }, i) => widened(sum, picture, motions[i]!), {
    minX: Infinity,
    minY: Infinity,
    maxX: -Infinity,
    maxY: -Infinity,
  });
  const widthMm = box.maxX - box.minX;
  const heightMm = box.maxY - box.minY;
  const finest = Math.max(...pictures.map(({ picture }) => picture.pxPerMm));
  const pxPerMm = Math.min(finest, Math.sqrt(MOST_PIXELS / (widthMm * heightMm)));
  return {
    width: Math.max(1, Math.floor(widthMm * pxPerMm)),
    height: Math.max(1, Math.floor(heightMm * pxPerMm)),
    pxPerMm,
    origin: { x: box.minX, y: box.minY },
  };
}

function widened(box: Box, { origin, width, height, pxPerMm }: StraightPicture, motion: Affine): Box {
  const right = origin.x + width / pxPerMm;
  const low = origin.y + height / pxPerMm;
  const corners = [origin, { x: right, y: origin.y }, { x: right, y: low }, { x: origin.x, y: low }];
  return corners
    .map((corner) => applyAffine(motion, corner))
    .reduce(
      (sum, { x, y }) => ({
        minX: Math.min(sum.minX, x),
        minY: Math.min(sum.minY, y),
        maxX: Math.max(sum.maxX, x),
        maxY: Math.max(sum.maxY, y),
      }),
      box,
    );
}

function lay(one: JoinablePicture, motion: Affine, frame: Frame, laid: Laid, vision: Vision): void {
  const { picture } = one;
  withMats((keep) => {
    const matrix = keep(new vision.Mat(2, 3, vision.CV_64FC1));
    const { a, b, c, d, e, f } = pixelMotion(picture, motion, frame);
    matrix.data64F.set([a, c, e, b, d, f]);
    const size = new vision.Size(frame.width, frame.height);
    const colour = keep(new vision.Mat());
    vision.warpAffine(keep(rgbMat(picture, vision)), colour, matrix, size, vision.INTER_LINEAR);
    const shown = keep(new vision.Mat(picture.height, picture.width, vision.CV_8UC1));
    shown.data.set(shownOf(one));
    const moved = keep(new vision.Mat());
    vision.warpAffine(shown, moved, matrix, size, vision.INTER_NEAREST);
    const depth = keep(new vision.Mat());
    vision.distanceTransform(moved, depth, vision.DIST_L2, 3);
    blendIn(laid, colour.data, depth.data32F, BLEND_MM * frame.pxPerMm);
  });
}

/** From the picture's pixels to the frame's; pixel middles are whole numbers in both. */
function pixelMotion(picture: StraightPicture, motion: Affine, frame: Frame): Affine {
  const toMm = composeAffine(
    translation(picture.origin.x, picture.origin.y),
    composeAffine(scaling(1 / picture.pxPerMm), translation(0.5, 0.5)),
  );
  const frameToMm = composeAffine(
    translation(frame.origin.x, frame.origin.y),
    composeAffine(scaling(1 / frame.pxPerMm), translation(0.5, 0.5)),
  );
  return composeAffine(invertAffine(frameToMm), composeAffine(motion, toMm));
}

function shownOf({ picture, covered = [] }: JoinablePicture): Uint8Array {
  const shown = picture.seen.slice();
  const toPx: Affine = composeAffine(
    scaling(picture.pxPerMm),
    translation(-picture.origin.x, -picture.origin.y),
  );
  const rings = covered.map((ring) => transformRing(toPx, ring));
  const hidden = fillRings(rings, picture.width, picture.height, 'any');
  for (let i = 0; i < shown.length; i++) if (hidden[i] !== 0) shown[i] = 0;
  return shown;
}

/** The deeper picture is taken; near where they are equally deep, both by shares. */
function blendIn({ rgb, seen, depth }: Laid, colour: Uint8Array, deep: Float32Array, blendPx: number): void {
  for (let i = 0; i < deep.length; i++) {
    const here = deep[i]!;
    if (here <= 0) continue;
    const share = depth[i]! <= 0 ? 1 : Math.min(1, Math.max(0, 0.5 + (here - depth[i]!) / blendPx));
    for (let k = 3 * i; k < 3 * i + 3; k++) rgb[k] = Math.round(rgb[k]! + share * (colour[k]! - rgb[k]!));
    if (here > depth[i]!) depth[i] = here;
    seen[i] = 255;
  }
}
