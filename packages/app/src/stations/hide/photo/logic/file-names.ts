import type { Job } from '../../../../job/job.js';

/** "IMG 0042.final" of "photos/IMG 0042.final.JPG", without what a disk or a shell would stumble over. */
export function stemOf(name: string): string {
  const bare = name.replace(/^.*[\\/]/, '').replace(/(\.hide)?\.[^.]*$/, '');
  const plain = bare
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} _-]+/gu, '-')
    .replace(/\s+/g, ' ')
    .replace(/^[- ]+|[- ]+$/g, '');
  return plain === '' ? 'hide' : plain.slice(0, 60);
}

const HIDE_ENDINGS = ['.hide.json', '.straight.jpg', '.hints.yaml'] as const;

/** "side", "side-2": the first stem under which all files of a hide are free. */
export function freeHideStem({ files }: Job, wanted: string): string {
  for (let number = 1; ; number++) {
    const stem = number === 1 ? wanted : `${wanted}-${number}`;
    if (HIDE_ENDINGS.every((ending) => !files.has(`${stem}${ending}`))) return stem;
  }
}

/** A name for a photo that neither a file of the job nor another photo has. */
export function freePhotoName({ files }: Job, taken: readonly string[], name: string): string {
  const ending = /\.(jpe?g|png|webp)$/i.exec(name)?.[0].toLowerCase() ?? '.jpg';
  const stem = stemOf(name);
  for (let number = 1; ; number++) {
    const file = `${stem}${number === 1 ? '' : `-${number}`}${ending}`;
    if (!files.has(file) && !taken.includes(file)) return file;
  }
}

/** "photos/side" of "photos/side.hide.json". */
export function stemOfHide(path: string): string {
  return path.replace(/(\.hide)?\.json$/i, '');
}

/** The last part of a path: what a file beside it calls it. */
export function nameBeside(path: string): string {
  return path.replace(/^.*\//, '');
}

/** A file of the job as another one in it names it. */
export function namedFrom(file: string, path: string): string {
  const depth = file.split('/').length - 1;
  return `${'../'.repeat(depth)}${path}`;
}
