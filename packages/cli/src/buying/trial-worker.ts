import { nodeWorkerOwner } from '@hidebound/geometry/node';
import { serveTrials } from '@hidebound/leather';

// The script of one thread of trials; `runTrialsInThreads` starts it.
serveTrials(nodeWorkerOwner());
