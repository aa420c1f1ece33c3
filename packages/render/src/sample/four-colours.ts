import type { ImageFile } from '../drawing/model.js';

/** A PNG of 32 × 32 pixels in four quarters: red and green above, blue and black below. */
const PNG =
  'iVBORw0KGgoAAAANSUhEUgAAACAAAAAgCAIAAAD8GO2jAAAACXBIWXMAAAPoAAAD6AG1e1JrAAAAMElEQVRIx+3NwQkAQAgDwfTftFeDgpyPCfsNk0papZYDAAAAwBdg8mgOAAAAAPeBB/qV/R9aRTjYAAAAAElFTkSuQmCC';

/** A picture of which every turn and mirror image is another one. */
export function fourColours(): ImageFile {
  return { type: 'image/png', bytes: Uint8Array.from(atob(PNG), (letter) => letter.charCodeAt(0)) };
}
