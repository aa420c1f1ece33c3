import type { PhotoTasks } from './photo-tasks.js';
import { lookAtPhoto } from './photo/look-at-photo.js';
import { readDrawnHide } from './photo/read-drawn-hide.js';
import { traceFromPhotos } from './photo/trace-from-photos.js';
import { serveTasks } from './serve-tasks.js';

serveTasks<PhotoTasks>({
  look: (asked, { handOver }) => lookAtPhoto(asked, handOver),
  drawn: readDrawnHide,
  trace: (asked, { progress, handOver }) => traceFromPhotos(asked, progress, handOver),
});
