import { applyAffine, invertAffine } from '@hidebound/geometry';
import type { Affine, Point, Ring } from '@hidebound/geometry';
import type { Camera } from '../camera/camera.js';
import { isBeforeCamera, isInPhoto, toFloorPoint, toPhotoPx } from '../camera/places.js';
import type { SolvedReference } from '../camera/solved-floor.js';
import type { Photo } from '../photo.js';

/** How one photo sees the hide that was traced from it: plain data, so that it can be handed from a worker to a page. */
export interface PhotoView {
  /** The photo, as it was given. */
  readonly file: string;
  readonly camera: Camera;
  /** From the floor of the photos to the hide's own frame. */
  readonly frame: Affine;
  /** What gives the scale, where the photo shows it: px. */
  readonly references: readonly { readonly name: string; readonly ringPx: Ring }[];
}

export function photoViews(
  photos: readonly Photo[],
  cameras: readonly Camera[],
  references: readonly SolvedReference[],
  frame: Affine,
): readonly PhotoView[] {
  return photos.map(({ file }, i) => {
    const camera = cameras[i]!;
    const seen = references.filter(({ ring }) => ring.every((place) => isInPhoto(camera, place)));
    return {
      file,
      camera,
      frame,
      references: seen.map(({ name, ring }) => ({ name, ringPx: ring.map((at) => toPhotoPx(camera, at)) })),
    };
  });
}

/** Where a photo shows a place of the hide (mm), px; undefined where it does not show it. */
export function hideToPhoto({ camera, frame }: PhotoView, place: Point): Point | undefined {
  const floor = applyAffine(invertAffine(frame), place);
  if (!isBeforeCamera(camera, floor) || !isInPhoto(camera, floor)) return undefined;
  return toPhotoPx(camera, floor);
}

/** The place of the hide (mm) that a photo shows at a place (px). The inverse of `hideToPhoto`. */
export function photoToHide({ camera, frame }: PhotoView, px: Point): Point {
  return applyAffine(frame, toFloorPoint(camera, px));
}
