#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { runHidebound } from './run-hidebound.js';

/** A reader that has seen enough, such as `head`, closes the pipe: that is no failure. */
function endQuietlyOnClosedPipe(error: Error & { readonly code?: string }): void {
  if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
  throw error;
}

function ownVersion(): string {
  const file = new URL('../package.json', import.meta.url);
  const content = JSON.parse(readFileSync(file, 'utf8')) as { readonly version: string };
  return content.version;
}

process.stdout.on('error', endQuietlyOnClosedPipe);
process.stderr.on('error', endQuietlyOnClosedPipe);

process.exitCode = await runHidebound(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  errIsTerminal: process.stderr.isTTY === true,
  now: () => performance.now(),
  version: ownVersion(),
});
