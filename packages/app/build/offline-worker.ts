import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** What the offline worker keeps from the first visit on; the few larger parts are kept when there is time, or when used. */
const KEPT_AT_ONCE_BYTES = 2_000_000;

/** Writes the service worker: its list of files, and a name that changes when one of them does. */
export function offlineWorker(): Plugin {
  return {
    name: 'offline-worker',
    apply: 'build',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const parts = Object.values(bundle).map((part) => ({
          name: part.fileName,
          content: part.type === 'chunk' ? part.code : part.source,
        }));
        const hash = createHash('sha256');
        for (const { name, content } of parts) hash.update(name).update(content);
        const kept = parts.filter(({ name }) => !name.endsWith('.map'));
        const namesOf = (some: typeof kept) => some.map(({ name }) => `./${name}`);
        const atOnce = namesOf(kept.filter(({ content }) => content.length <= KEPT_AT_ONCE_BYTES));
        const later = namesOf(kept.filter(({ content }) => content.length > KEPT_AT_ONCE_BYTES));
        const draft = readFileSync(join(import.meta.dirname, 'offline.js'), 'utf8');
        const named = filledIn(draft, "'NAME'", hash.digest('hex').slice(0, 16));
        const first = filledIn(named, "['FILES']", ['./', './icon.svg', './app.webmanifest', ...atOnce]);
        const second = filledIn(first, "['LATER']", later);
        const sizes = Object.fromEntries(kept.map(({ name, content }) => [`./${name}`, content.length]));
        const script = filledIn(second, "'SIZES'", sizes);
        this.emitFile({ type: 'asset', fileName: 'offline.js', source: script });
      },
    },
  };
}

/** Exported for its test. Throws where the place to fill in is gone: a cache with the draft's name would never be renewed. */
export function filledIn(draft: string, place: string, value: unknown): string {
  if (draft.split(place).length !== 2) throw new Error(`The offline worker needs ${place} exactly once.`);
  return draft.replace(place, () => JSON.stringify(value));
}
