import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Plugin } from 'vite';

const DEMO = join(import.meta.dirname, '../../../fixtures/demo');

/** Files of the demo's folder that are about making it, not part of the job. */
const NOT_OF_THE_JOB = /^make\/|bought-patterns/;

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/\.hide\.json$/, 'hide'],
  [/\.layout\.json$/, 'layout'],
  [/\.order\.yaml$/, 'order'],
  [/\.article\.yaml$/, 'article'],
  [/^workshop\.yaml$/, 'workshop'],
  [/\.svg$/, 'pattern'],
];

/** The demo's files as one job file, which a first start opens. */
export function demoJob(): Plugin {
  return {
    name: 'demo-job',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: 'demo.job.json', source: writeDemoJob() });
    },
  };
}

function writeDemoJob(): string {
  const paths = (readdirSync(DEMO, { recursive: true }) as string[])
    .filter((name) => statSync(join(DEMO, name)).isFile())
    .map((name) => relative(DEMO, join(DEMO, name)).replaceAll('\\', '/'))
    .filter((path) => !NOT_OF_THE_JOB.test(path))
    .sort();
  const files = paths.flatMap((path) => {
    const kind = KINDS.find(([pattern]) => pattern.test(path))?.[1];
    if (kind === undefined) return [];
    return [{ path, kind, encoding: 'utf8', content: readFileSync(join(DEMO, path), 'utf8') }];
  });
  return `${JSON.stringify({ format: 'hidebound/job@1', name: 'Bicycle goods', files })}\n`;
}
