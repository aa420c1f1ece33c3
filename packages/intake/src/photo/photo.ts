/**
 * A decoded photo: 8 bits each of red, green and blue, row by row, turned upright as its metadata asks.
 *
 * Places on a photo are in pixels, x to the right, y down, and **the middle of the first pixel is (0, 0)**, as OpenCV
 * has it; the picture reaches from -0.5 to width - 0.5.
 */
export interface Photo {
  readonly file: string;
  readonly width: number;
  readonly height: number;
  /** width × height × 3 bytes. */
  readonly rgb: Uint8Array;
}
