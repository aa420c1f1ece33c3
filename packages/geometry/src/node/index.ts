export { createNodeWorker, nodeWorkerOwner, workersOfMachine } from './node-worker.js';
