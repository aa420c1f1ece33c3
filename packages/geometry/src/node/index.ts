export { createNodeWorker, nodeWorkerOwner, workersOfMachine } from './node-worker.js';
export { runNestInThreads } from './run-in-threads.js';
export type { ThreadsOptions } from './run-in-threads.js';
