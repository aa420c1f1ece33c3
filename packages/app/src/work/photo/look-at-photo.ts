import type { LookedAt, RawPhoto } from '../photo-tasks.js';
import { openPhoto } from './decode-photo.js';
import { encodeCanvas } from './encode-picture.js';

/**
 * A photo, small enough for the screen.
 * @throws IntakeError as `checkPhoto`
 */
export async function lookAtPhoto(
  asked: RawPhoto & { readonly mostPx: number },
  handOver: (buffers: readonly ArrayBuffer[]) => void,
): Promise<LookedAt> {
  const photo = await openPhoto(asked);
  try {
    const { width, height } = photo;
    const shrink = Math.min(1, asked.mostPx / Math.max(width, height));
    const canvas = new OffscreenCanvas(Math.round(width * shrink), Math.round(height * shrink));
    const pen = canvas.getContext('2d', { alpha: false })!;
    pen.imageSmoothingQuality = 'high';
    pen.drawImage(photo, 0, 0, canvas.width, canvas.height);
    const picture = await encodeCanvas(canvas);
    handOver([picture.buffer]);
    return { width, height, picture };
  } finally {
    photo.close();
  }
}
