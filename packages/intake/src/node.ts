export { decodePhoto } from './node/decode-photo.js';
export { USUAL_JPEG_QUALITY, encodeJpeg } from './node/encode-jpeg.js';
export { faintHidePicture } from './node/hide-picture.js';
export type { FaintPicture } from './node/hide-picture.js';
export { statedDpi } from './node/stated-dpi.js';
export { photoMegapixels } from './node/open-picture.js';
export type { RgbPixels } from './node/rgb-pixels.js';
