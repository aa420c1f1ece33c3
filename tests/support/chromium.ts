import { execFileSync } from 'node:child_process';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import type { Browser } from 'playwright-core';
import { outsideProgram } from '../tools/outside.js';

/** Chromium would otherwise ask the network for updates at every start. */
const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const chromiumProgram = outsideProgram('chromium', ['--version']);

export function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: pathOf(chromiumProgram.name), args: CHROMIUM_FLAGS });
}

function pathOf(name: string): string {
  return execFileSync('/bin/sh', ['-c', `command -v ${name}`], { encoding: 'utf8' }).trim();
}

export interface BundleOptions {
  readonly entry: string;
  readonly format: 'iife' | 'esm';
  readonly outfile: string;
  readonly platform?: 'browser' | 'node';
  /** `source`: of the packages as they stand; `dist`, the default, as they were built. */
  readonly from?: 'source' | 'dist';
}

const REQUIRE = `import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);`;

/** One script with all that it imports, as a browser or Node would load it. */
export async function bundle(options: BundleOptions): Promise<void> {
  const { entry, format, outfile, platform = 'browser', from = 'dist' } = options;
  await build({
    entryPoints: [entry],
    bundle: true,
    format,
    platform,
    target: 'es2022',
    outfile,
    logLevel: 'silent',
    // The vision library asks for these where it finds itself in Node, and only there.
    ...(platform === 'browser' ? { external: ['fs', 'path', 'crypto'] } : {}),
    ...(from === 'source' ? { conditions: ['source'] } : {}),
    // Libraries of the older kind ask for Node's own modules by `require`.
    ...(platform === 'node' && format === 'esm' ? { banner: { js: REQUIRE } } : {}),
  });
}
