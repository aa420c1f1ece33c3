import { ROOT } from '../../cli-support.js';
import { encodePhoto } from '../../camera/index.js';

export const RED = [200, 30, 30] as const;
const GREY = [150, 150, 150] as const;

/**
 * A JPEG photo as a phone writes it that is held upright: its rows are stored turned, and the Exif orientation 6 says so,
 * "the 0th row is the visual right-hand side of the image, and the 0th column is the visual top" (CIPA DC-008, Exif,
 * tag 274). Seen upright it is grey, and red in its upper left quarter.
 */
export async function turnedPhoto(size: {
  readonly width: number;
  readonly height: number;
}): Promise<Buffer> {
  const [storedWidth, storedHeight] = [size.height, size.width];
  const rgb = new Uint8Array(storedWidth * storedHeight * 3);
  for (let row = 0; row < storedHeight; row++)
    for (let column = 0; column < storedWidth; column++) {
      const seen = { x: size.width - 1 - row, y: column };
      const colour = seen.x < size.width / 2 && seen.y < size.height / 2 ? RED : GREY;
      rgb.set(colour, (row * storedWidth + column) * 3);
    }
  const jpeg = await encodePhoto({ width: storedWidth, height: storedHeight, rgb }, 90, ROOT);
  // Right behind the first two bytes, as Exif asks for it.
  return Buffer.concat([jpeg.subarray(0, 2), orientationSegment(6), jpeg.subarray(2)]);
}

/** The APP1 segment of Exif with one entry, in TIFF 6.0's little-endian layout. */
function orientationSegment(orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write('II', 0, 'latin1');
  tiff.writeUInt16LE(42, 2);
  tiff.writeUInt32LE(8, 4); // The first directory,
  tiff.writeUInt16LE(1, 8); // with one entry:
  tiff.writeUInt16LE(274, 10); // orientation,
  tiff.writeUInt16LE(3, 12); // a short,
  tiff.writeUInt32LE(1, 14); // of which there is one.
  tiff.writeUInt16LE(orientation, 18);
  const content = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}
