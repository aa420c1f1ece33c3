import { webWorkerOwner } from '@hidebound/geometry/parallel';
import type { WebWorkerScopeLike } from '@hidebound/geometry/parallel';
import { serveTrials } from '@hidebound/leather';

// The script of one worker of trial layouts on hides of chance.
const scope: unknown = globalThis;
serveTrials(webWorkerOwner(scope as WebWorkerScopeLike));
