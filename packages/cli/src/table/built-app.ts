import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { CliError } from '../cli-error.js';
import { revisionOf } from './revision.js';

/** A file of the built app, as it is sent. */
export interface AppFile {
  readonly bytes: Uint8Array;
  readonly type: string;
  readonly etag: string;
  /** True if its name changes with its content. */
  readonly isHashed: boolean;
  /** Its content packed, made when it is first asked for; undefined for what packing does not make smaller. */
  readonly packed: (() => Promise<Uint8Array>) | undefined;
}

/** By the path that is asked for: "/", "/assets/…". Nothing else is served. */
export type BuiltApp = ReadonlyMap<string, AppFile>;

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.webp': 'image/webp',
  '.jpg': 'image/jpeg',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

const PACKED_ALREADY = new Set(['.png', '.webp', '.jpg', '.woff2']);

/** Beside the command's own package, compiled or not. */
export const SITE = fileURLToPath(new URL('../../../app/dist/site', import.meta.url));

/** Reads the built app, all of it, so that a build that goes on meanwhile does not mix two. Fails with a CliError. */
export function readBuiltApp(site: string = SITE): BuiltApp {
  if (!existsSync(join(site, 'index.html'))) {
    throw new CliError(
      'no-such-file',
      'The browser app is not built yet; run "npm run build" in the checkout first.',
    );
  }
  const names = (readdirSync(site, { recursive: true }) as string[]).filter((name) =>
    statSync(join(site, name)).isFile(),
  );
  const files = new Map(names.map((name) => [`/${name.replaceAll('\\', '/')}`, appFile(site, name)]));
  const page = appFile(site, 'index.html', markedPage);
  return files.set('/index.html', page).set('/', page);
}

/** As the build names what never changes: "name-a1B2c3D4.js". */
const HASHED = /^assets[\\/].*-[\w-]{8}\.\w+$/;

/** By this the page knows that a table serves it, and need not ask a plain web host for a folder. */
const MARK = '<meta name="hidebound-table" content="folder" />';

function markedPage(bytes: Uint8Array): Uint8Array {
  const page = new TextDecoder().decode(bytes);
  return new TextEncoder().encode(page.replace(/<head[^>]*>/, (head) => `${head}${MARK}`));
}

function appFile(
  site: string,
  name: string,
  change: (bytes: Uint8Array) => Uint8Array = (bytes) => bytes,
): AppFile {
  const bytes = change(readFileSync(join(site, name)));
  const ending = extname(name).toLowerCase();
  return {
    bytes,
    type: TYPES[ending] ?? 'application/octet-stream',
    etag: `"${revisionOf(bytes)}"`,
    isHashed: HASHED.test(name),
    packed: PACKED_ALREADY.has(ending) ? undefined : packedOnce(bytes),
  };
}

function packedOnce(bytes: Uint8Array): () => Promise<Uint8Array> {
  let packed: Promise<Uint8Array> | undefined;
  return () => (packed ??= promisify(gzip)(bytes, { level: 9 }));
}
