import { traceJob } from './trace-job.js';
import type { TraceJob } from './trace-job.js';

/** What a dedicated worker offers of itself; the DOM's types describe a window. */
interface WorkerScope {
  onmessage: ((event: { readonly data: TraceJob }) => void) | null;
  postMessage(message: { readonly hide?: string; readonly failure?: string }): void;
}
const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data }) => {
  traceJob(data).then(
    (hide) => scope.postMessage({ hide }),
    (error: unknown) =>
      scope.postMessage({
        failure: error instanceof Error ? `${error.message}\n${error.stack}` : String(error),
      }),
  );
};
