import type { JobFile } from './job.js';

const KINDS: readonly (readonly [RegExp, JobFile['kind']])[] = [
  [/\.hide\.json$/i, 'hide'],
  [/\.layout\.json$/i, 'layout'],
  [/\.order\.(ya?ml|json)$/i, 'order'],
  [/\.article\.(ya?ml|json)$/i, 'article'],
  [/\.(svg|pdf|dxf)$/i, 'pattern'],
  [/\.(jpe?g|png|webp)$/i, 'picture'],
  [/\.(ya?ml|json)$/i, 'text'],
];

/** What a file is by its name; undefined for one that is no part of a job. */
export function kindOfPath(path: string): JobFile['kind'] | undefined {
  return KINDS.find(([pattern]) => pattern.test(path))?.[1];
}
