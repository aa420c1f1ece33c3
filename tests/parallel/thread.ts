import { workerData } from 'node:worker_threads';
import { nodeWorkerOwner } from '@hidebound/geometry/node';
import { serveStreams } from '@hidebound/geometry/parallel';
import { mischiefBetweenUnits } from './mischief.js';
import type { Mischief } from './mischief.js';
import { createStream } from './streams-under-test.js';

const pause = mischiefBetweenUnits(workerData as Mischief, () => process.exit(3));
serveStreams(nodeWorkerOwner(), createStream, { pause });
