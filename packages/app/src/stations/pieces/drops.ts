import type { App } from '../../app/app.js';
import { bringFiles } from './take.js';

/** Files may be dropped anywhere on the drawing. */
export function receiveDrops(app: App, element: HTMLElement): () => void {
  const end = new AbortController();
  const { signal } = end;
  element.addEventListener(
    'dragover',
    (event) => {
      if (event.dataTransfer?.types.includes('Files') !== true) return;
      event.preventDefault();
      element.classList.add('takes-files');
    },
    { signal },
  );
  element.addEventListener('dragleave', () => element.classList.remove('takes-files'), { signal });
  element.addEventListener(
    'drop',
    (event) => {
      event.preventDefault();
      element.classList.remove('takes-files');
      bringFiles(app, [...(event.dataTransfer?.files ?? [])]).catch((error: unknown) =>
        app.tellFailure(error),
      );
    },
    { signal },
  );
  return () => end.abort();
}
