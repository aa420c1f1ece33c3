import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, realpathSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import type { IncomingHttpHeaders } from 'node:http';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { readBuiltApp } from '../packages/cli/src/table/built-app.js';
import { openTable } from '../packages/cli/src/table/table-server.js';

export const KEY = 'a-key-of-twenty-two-le';

/** Revisions as anybody can reckon them: SHA-256 (FIPS 180-4) by Node's own crypto. */
export function sum(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

export interface TestTable {
  readonly folder: string;
  readonly port: number;
  readonly ask: (path: string, options?: Asked) => Promise<Answer>;
  readonly save: (writes: readonly object[]) => Promise<Answer>;
  readonly close: () => Promise<void>;
  readonly unforeseen: unknown[];
}

export interface Asked {
  readonly method?: string;
  /** Undefined takes a header away. */
  readonly headers?: Readonly<Record<string, string | undefined>>;
  readonly body?: string | Uint8Array;
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly bytes: Buffer;
  readonly json: () => Record<string, unknown>;
}

/** A folder with these files, links followed in its own path. */
export function jobFolder(at: string, files: Readonly<Record<string, string>>): string {
  const folder = realpathSync(mkdtempSync(join(at, 'table-')));
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

/** A built app of a few small files. */
export function smallSite(at: string): string {
  return jobFolder(at, {
    'index.html': '<!doctype html><title>Table</title>',
    'app.webmanifest': '{}',
    'assets/index-a1B2c3D4.js': `export const words = "${'leather '.repeat(200)}";`,
    'assets/photo-worker-a1B2c3D4.js': 'export {};',
  });
}

/** Serves a folder within this process. Closed when the tests of the file are done. */
export async function testTable(folder: string, site: string): Promise<TestTable> {
  const unforeseen: unknown[] = [];
  const table = await openTable({
    folder,
    key: KEY,
    app: readBuiltApp(site),
    ports: [0],
    tell: (error) => unforeseen.push(error),
  });
  let open: Promise<void> | undefined;
  const close = (): Promise<void> => (open ??= table.close());
  afterAll(close);
  const { port } = table;
  const ask = (path: string, asked?: Asked): Promise<Answer> => askAt(port, path, asked);
  const save = (writes: readonly object[]): Promise<Answer> =>
    ask('/api/save', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ writes }),
    });
  return { folder, port, ask, save, close, unforeseen };
}

/** Asks as any program can: the path goes out letter by letter, and every header can be forged. */
export function askAt(port: number, path: string, { method, headers, body }: Asked = {}): Promise<Answer> {
  const all = { Host: `127.0.0.1:${port}`, 'X-Hidebound-Key': KEY, ...headers };
  const sent = Object.fromEntries(
    Object.entries(all).filter((each): each is [string, string] => each[1] !== undefined),
  );
  return new Promise((resolve, reject) => {
    const asking = request(
      { host: '127.0.0.1', port, path, method: method ?? 'GET', headers: sent, agent: false },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('error', reject);
        response.on('end', () => {
          const bytes = Buffer.concat(chunks);
          resolve({
            status: response.statusCode!,
            headers: response.headers,
            bytes,
            json: () => JSON.parse(bytes.toString()) as Record<string, unknown>,
          });
        });
      },
    );
    asking.on('error', reject);
    asking.end(body);
  });
}

/** Every file of a folder that a person sees, with its content. */
export function contentsOf(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((path) => !path.startsWith('.hidebound/'))
    .sort();
  return Object.fromEntries(names.map((path) => [path, readFileSync(join(folder, path), 'utf8')]));
}
