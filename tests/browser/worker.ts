import { layJob } from './lay-job.js';
import type { LayJob } from './lay-job.js';

/** What a dedicated worker offers of itself; the DOM's types describe a window. */
interface WorkerScope {
  onmessage: ((event: { readonly data: LayJob }) => void) | null;
  postMessage(message: { readonly layout?: string; readonly failure?: string }): void;
}
const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data }) => {
  try {
    scope.postMessage({ layout: layJob(data) });
  } catch (error) {
    scope.postMessage({
      failure: error instanceof Error ? `${error.message}\n${error.stack}` : String(error),
    });
  }
};
