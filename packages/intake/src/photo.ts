export type { Photo } from './photo/photo.js';
export type { StraightPicture } from './photo/straight/straight-picture.js';
export { toFloor, toPicture } from './photo/straight/straight-picture.js';
export { traceHide } from './photo/trace/trace-hide.js';
export { TRACE_STAGES } from './photo/trace/trace-options.js';
export type { TraceOptions, TraceRead, TraceReport, TraceStage } from './photo/trace/trace-options.js';
export { loadVision } from './photo/vision/load-vision.js';
export type { Vision } from './photo/vision/vision.js';
