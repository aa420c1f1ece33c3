import * as v from 'valibot';
import type { JobBundle } from '../model/stock.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { group, requiredList } from './schema/group.js';
import { exactly, filePath, name, oneOf } from './schema/leaves.js';
import { LONGEST_JSON } from './text/text-tree.js';
import type { WhereOf } from './validate-hide.js';
import { writeStored } from './write-stored.js';
import { JSON_SYNTAX } from './text/json-text.js';

export const JOB_FORMAT = 'hidebound/job@1';

const CONTENT_WORDS = 'the content of a file as text';
const KINDS = ['hide', 'order', 'article', 'layout', 'workshop', 'pattern', 'picture', 'journal'] as const;

const bundledFile = group({
  path: [filePath, 'Its path within the job, with "/" between folders and without "..".'],
  kind: [oneOf(KINDS), 'What it is.'],
  encoding: [oneOf(['utf8', 'base64']), 'How its content is written: as text, or as base64 for pictures.'],
  content: [
    v.pipe(v.string(CONTENT_WORDS), v.maxLength(LONGEST_JSON, CONTENT_WORDS)),
    'The file’s own content.',
  ],
});

export const jobFileSchema = group({
  format: [exactly(JOB_FORMAT), 'What this file is.'],
  name: [name, 'The job’s name.'],
  files: [requiredList(bundledFile), 'All files of the job.'],
});

const format: FileFormat<typeof jobFileSchema> = {
  kind: 'job',
  syntax: JSON_SYNTAX,
  schema: jobFileSchema,
  upgrades: [],
};

/**
 * Reads a job bundle (`*.job.json`). Its paths stay within the folder that it is unpacked to.
 * @throws LeatherError
 */
export function parseJobBundle(text: string, options: { readonly file: string }): JobBundle {
  const opened = openFile(text, options.file, format);
  const { format: _, ...bundle } = opened.value;
  validateBundle(bundle, (path) => placeOf(opened, path));
  return bundle;
}

function validateBundle(bundle: JobBundle, where: WhereOf): void {
  const seen = new Set<string>();
  bundle.files.forEach((file, i) => {
    const path = quoteValue(file.path);
    const at = where(['files', i, 'path']);
    if (!isPathWithin(file.path)) throw leatherError('bundle-path', { path }, at);
    // Some disks don't tell letter case apart.
    const key = file.path.toLowerCase();
    if (seen.has(key)) throw leatherError('bundle-duplicate', { path }, at);
    seen.add(key);
    if (file.encoding === 'base64' && !isBase64(file.content)) {
      throw leatherError('bundle-content', { path }, where(['files', i, 'content']));
    }
  });
}

function isPathWithin(path: string): boolean {
  if (/[\\:]/.test(path)) return false;
  return path.split('/').every((step) => step !== '' && step !== '.' && step !== '..');
}

function isBase64(text: string): boolean {
  return text.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(text);
}

export function writeJobBundle(bundle: JobBundle): string {
  return writeStored(jobFileSchema, { format: JOB_FORMAT, ...bundle });
}
