import { parseJobBundle, writeJobBundle } from '@hidebound/leather';
import { inBundle } from '../../job/in-bundle.js';
import type { JobFile } from '../../job/job.js';
import type { RawFile } from '../desk-tasks.js';
import { writeFile } from './write-file.js';

/** All files of a job in one. */
export function writeBundle(job: {
  readonly name: string;
  readonly files: ReadonlyMap<string, JobFile>;
}): Uint8Array {
  const files = [...job.files].sort(([one], [other]) => (one < other ? -1 : 1));
  const bundled = files.map(([path, file]) => inBundle(path, writeFile(file), file.kind));
  return new TextEncoder().encode(writeJobBundle({ name: job.name, files: bundled }));
}

export function readBundle({ path, bytes }: RawFile): {
  readonly name: string;
  readonly files: readonly RawFile[];
} {
  const { name, files } = parseJobBundle(new TextDecoder().decode(bytes), { file: path });
  return {
    name,
    files: files.map(({ path, encoding, content }) => ({
      path,
      bytes: encoding === 'base64' ? fromBase64(content) : new TextEncoder().encode(content),
    })),
  };
}

function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
