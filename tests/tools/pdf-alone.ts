import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export interface ReadAlone {
  /** A refusal's code, or how many lines were read. */
  readonly outcome: string;
  readonly seconds: number;
  readonly peakMb: number;
  /** What it printed besides: nothing. */
  readonly noise: string;
}

/** Reads PDFs each in a process of its own, from the sources; `close` takes its files away. */
export async function pdfReaderAlone(): Promise<{ read(bytes: Uint8Array): ReadAlone; close(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'pdf-alone-'));
  const script = join(folder, 'read.mjs');
  await build({
    entryPoints: [fileURLToPath(new URL('./read-pdf-alone.ts', import.meta.url))],
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    conditions: ['source'],
    outfile: script,
    logLevel: 'silent',
    // Some packages below are of the older kind and ask for Node's own modules.
    banner: {
      js: "import { createRequire as bundleRequire } from 'node:module'; const require = bundleRequire(import.meta.url);",
    },
  });
  return {
    read: (bytes) => {
      const file = join(folder, 'pattern.pdf');
      writeFileSync(file, bytes);
      const { stdout, stderr } = spawnSync(process.execPath, [script, file], { encoding: 'utf8' });
      const lines = stdout.trim().split('\n');
      const last = lines.pop() ?? '';
      const figures = last.startsWith('{')
        ? (JSON.parse(last) as Omit<ReadAlone, 'noise'>)
        : { outcome: `ended: ${last}`, seconds: 0, peakMb: 0 };
      return { ...figures, noise: [...lines, stderr].join('\n').trim() };
    },
    close: () => rmSync(folder, { recursive: true, force: true }),
  };
}
