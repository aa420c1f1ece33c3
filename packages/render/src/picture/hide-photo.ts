import { transformCurve } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import { group } from '../drawing/build.js';
import type { DrawingElement, ImageFile } from '../drawing/model.js';
import type { HideView } from './hide-view.js';

/** The straightened photo of a hide, light enough to draw on. */
export interface HidePicture {
  readonly file: ImageFile;
  /** The place of the whole picture in the hide's frame, mm, as seen from the grain side. */
  readonly box: Box;
}

/** Pictures by the ids of their hides; a hide without one is drawn plain. */
export type HidePictures = ReadonlyMap<string, HidePicture>;

/** Over pieces, these and the bare leather between them stay apart; without them, scars and grain can be plainer. */
const OPACITY = { pieces: 0.48, bare: 0.7 } as const;

/** The photo where leather is, and nowhere else; over the leather of pieces as over the bare one. */
export function hidePhoto(
  hide: Hide,
  picture: HidePicture | undefined,
  view: HideView,
  over: keyof typeof OPACITY,
): DrawingElement[] {
  if (picture === undefined) return [];
  const { file, box } = picture;
  const leather = [hide.outline, ...hide.openings].map((curve) => transformCurve(view.toDrawing, curve));
  const image = { kind: 'image', file, box, opacity: OPACITY[over] } as const;
  return [
    group(`photo of hide ${hide.id}`, [group('photo', [image], { transform: view.toDrawing })], {
      clip: leather,
    }),
  ];
}
