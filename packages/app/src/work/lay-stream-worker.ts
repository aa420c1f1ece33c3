import { serveStreams, streamFactory, webWorkerOwner } from '@hidebound/geometry/parallel';
import type { WebWorkerScopeLike } from '@hidebound/geometry/parallel';

// One worker of a search.
const scope: unknown = globalThis;
serveStreams(webWorkerOwner(scope as WebWorkerScopeLike), streamFactory());
