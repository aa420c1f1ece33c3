/** As the command writes it (intake's `USUAL_JPEG_QUALITY` of 88). */
const QUALITY = 0.88;

/** Pixels as a JPEG file, which holds the picture and nothing else. */
export async function encodePixels(
  width: number,
  height: number,
  rgb: Uint8Array,
): Promise<Uint8Array<ArrayBuffer>> {
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d', { alpha: false })!;
  const rgba = new ImageData(width, height);
  const { data } = rgba;
  for (let from = 0, to = 0; to < data.length; from += 3, to += 4) {
    data[to] = rgb[from]!;
    data[to + 1] = rgb[from + 1]!;
    data[to + 2] = rgb[from + 2]!;
    data[to + 3] = 255;
  }
  pen.putImageData(rgba, 0, 0);
  return encodeCanvas(canvas);
}

export async function encodeCanvas(canvas: OffscreenCanvas): Promise<Uint8Array<ArrayBuffer>> {
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  return new Uint8Array(await blob.arrayBuffer());
}
