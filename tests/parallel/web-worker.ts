import { serveStreams, webWorkerOwner } from '@hidebound/geometry/parallel';
import type { WebWorkerScopeLike } from '@hidebound/geometry/parallel';
import { mischiefBetweenUnits } from './mischief.js';
import type { Mischief } from './mischief.js';
import { createStream } from './streams-under-test.js';

/** The name that the page gave it says what it is to do. */
const scope = globalThis as unknown as WebWorkerScopeLike & { readonly name: Mischief };
const pause = mischiefBetweenUnits(scope.name, () => undefined);
serveStreams(webWorkerOwner(scope), createStream, { pause });
