export type { Photo } from './photo/photo.js';
export type { StraightPicture } from './photo/straight/straight-picture.js';
export { toFloor, toPicture } from './photo/straight/straight-picture.js';
export { loadVision } from './photo/vision/load-vision.js';
export type { Vision } from './photo/vision/vision.js';
