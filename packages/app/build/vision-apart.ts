import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Plugin } from 'vite';

/** The library's name in imports, and a stand-in for its file's address, which a chunk learns when it is written. */
const LIBRARY = '@techstark/opencv-js';
const STAND_IN = 'hidebound-vision';

/**
 * Keeps the vision library out of the bundler, which would take minutes over its ten megabytes: its file becomes a module
 * of its own beside the chunks. `page` is for the app's own plugins and writes that file, `worker` is for those of its
 * workers; both let chunks import it.
 */
export function visionApart(): { readonly page: Plugin; readonly worker: () => Plugin } {
  const require = createRequire(new URL('../../intake/package.json', import.meta.url));
  const source = asModule(readFileSync(require.resolve(LIBRARY), 'utf8'));
  const name = `vision-${createHash('sha256').update(source).digest('hex').slice(0, 8)}.js`;
  const importing = (): Plugin => ({
    name: 'vision-apart',
    apply: 'build',
    enforce: 'pre',
    resolveId: (id) => (id === LIBRARY ? { id: STAND_IN, external: true } : undefined),
    renderChunk: (code) =>
      code.includes(STAND_IN) ? { code: code.replaceAll(STAND_IN, `./${name}`), map: null } : null,
  });
  const page: Plugin = {
    ...importing(),
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: `assets/${name}`, source });
    },
  };
  return { page, worker: importing };
}

/** A script that gives itself to `module.exports`, as a module with a default export. */
function asModule(script: string): string {
  return `var module={exports:{}},exports=module.exports;${script}\nexport default module.exports;\n`;
}
