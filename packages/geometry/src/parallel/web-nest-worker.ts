import { streamFactory } from '../nest/stream.js';
import { serveStreams } from './serve-streams.js';
import { webWorkerOwner } from './web-worker.js';
import type { WebWorkerScopeLike } from './web-worker.js';

// The script of one worker of a search in a browser; a page makes it with `new Worker(…, { type: 'module' })`.
const scope: unknown = globalThis;
serveStreams(webWorkerOwner(scope as WebWorkerScopeLike), streamFactory());
