import type { ChildProcess } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parseJobBundle } from '@hidebound/leather';
import { startHidebound } from '../../cli-support.js';
import { chromiumProgram } from '../../support/chromium.js';
import { SITE } from './static-host.js';

/** What tests of the whole table need: Chromium and the built app. */
export const TABLE = {
  name: `${chromiumProgram.name} and the built app`,
  isThere: chromiumProgram.isThere && existsSync(join(SITE, 'index.html')),
};

/** A running `hidebound table` of a process of its own. */
export interface RealTable {
  /** Its address without the key. */
  readonly url: string;
  /** The whole address that it prints, with the key. */
  readonly address: string;
  /** SIGKILL, by its id; settled once it is gone. */
  kill(): Promise<void>;
}

/** Starts the real command on a folder and waits for the address that it prints. */
export async function startTable(folder: string): Promise<RealTable> {
  const child = startHidebound(['table', folder], folder);
  const [address, url] = await printedAddress(child);
  return {
    address,
    url,
    kill: async () => {
      if (child.exitCode !== null || child.signalCode !== null) return;
      const ended = new Promise((done) => child.once('exit', done));
      child.kill('SIGKILL');
      await ended;
    },
  };
}

function printedAddress(child: ChildProcess): Promise<readonly [address: string, url: string]> {
  return new Promise((found, failed) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const [address, url] = /(http:\/\/127\.0\.0\.1:\d+\/)#key=[\w-]+/.exec(said) ?? [];
      if (address !== undefined && url !== undefined) found([address, url]);
    };
    child.stdout!.on('data', hear);
    child.stderr!.on('data', hear);
    child.once('exit', () => failed(new Error(`the table ended: ${said}`)));
  });
}

/** Lays the files of a job file out in a folder. */
export function unpackJob(text: string, folder: string): void {
  for (const { path, encoding, content } of parseJobBundle(text, { file: 'job' }).files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), Buffer.from(content, encoding));
  }
}

/** The demo's job as the app itself ships it. */
export function unpackDemo(folder: string): void {
  unpackJob(readFileSync(join(SITE, 'demo.job.json'), 'utf8'), folder);
}
