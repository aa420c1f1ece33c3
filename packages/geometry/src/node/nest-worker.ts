import { streamFactory } from '../nest/stream.js';
import { serveStreams } from '../parallel/serve-streams.js';
import { nodeWorkerOwner } from './node-worker.js';

// The script of one thread of a search; `runNestInThreads` starts it.
serveStreams(nodeWorkerOwner(), streamFactory());
