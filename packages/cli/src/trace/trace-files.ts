import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, extname, join, relative, resolve } from 'node:path';
import { parsePhotoHints, writePhotoHints } from '@hidebound/leather';
import type { HintedPhoto, PhotoHints, StatedReference } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { textOption, textsOption } from '../command-context.js';
import type { OptionValues } from '../command-context.js';
import { readText } from '../io/load-files.js';
import { ensureWritable } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';
import { rectangleFrom } from './rectangle-option.js';

/** Names of what is read and written; all are known before the long work. */
export interface TraceFiles {
  readonly photos: readonly string[];
  readonly raking: readonly string[];
  readonly otherSide: readonly string[];
  readonly hide: string;
  readonly straight: string;
  readonly picture?: string;
  /** Told of in the hide file, relative to it. */
  readonly hints?: string;
}

const HIDE_ENDING = '.hide.json';

/**
 * What a run will write. A hide file that lies there already holds what a person decided, so it is written over only
 * where it is named. Fails with a CliError `bad-use` or `can-not-write`.
 */
export function traceFiles(photos: readonly string[], options: OptionValues): TraceFiles {
  const named = textOption(options, 'out');
  const hide = named ?? `${withoutEnding(photos[0]!)}${HIDE_ENDING}`;
  if (named !== undefined && !named.endsWith('.json')) {
    throw new CliError('bad-use', `--out ${named} must be named .hide.json, which is what is written.`);
  }
  if (named === undefined && existsSync(hide)) {
    throw new CliError(
      'bad-use',
      `${hide} is there already, with what was decided of it; give --out ${hide} to write it anew, or another name.`,
    );
  }
  const picture = textOption(options, 'picture');
  const files = {
    photos,
    raking: textsOption(options, 'raking'),
    otherSide: textsOption(options, 'otherSide'),
    hide,
    straight: `${hideStem(hide)}.straight.jpg`,
    ...(picture === undefined ? {} : { picture }),
  };
  const read = [...photos, ...files.raking, ...files.otherSide];
  refuseTwice(read);
  for (const path of [hide, files.straight, ...(picture === undefined ? [] : [picture])]) {
    ensureWritable(path, read);
  }
  return files;
}

/** One photo given twice would count as two that agree. */
function refuseTwice(paths: readonly string[]): void {
  const seen = new Set<string>();
  for (const path of paths) {
    const whole = resolve(path);
    if (seen.has(whole)) throw new CliError('bad-use', `${path} is given twice; give each photo once.`);
    seen.add(whole);
  }
}

/** "shelf/side" of "shelf/side.hide.json". */
export function hideStem(hide: string): string {
  return hide.endsWith(HIDE_ENDING) ? hide.slice(0, -HIDE_ENDING.length) : withoutEnding(hide);
}

export function withoutEnding(path: string): string {
  return path.slice(0, path.length - extname(path).length);
}

/** A file as the hide file names it: relative to its own folder, with "/" on every system. */
export function besideHide(hide: string, path: string): string {
  return relative(dirname(hide), path).replaceAll('\\', '/');
}

/** What a person says of the photos, and where it will lie beside the hide. */
export interface HintsInUse {
  readonly hints: PhotoHints;
  /** As the hide file names it. */
  readonly name: string;
  /** A copy to be written beside the hide; absent where it lies there already. */
  readonly copy?: FileToWrite;
}

/**
 * The hints that `--hints` and `--rectangle` give. What was used is kept beside the hide; a file of hints that lies
 * there already and says something else is never written over. Fails with a CliError `bad-use`.
 */
export function hintsInUse(files: TraceFiles, options: OptionValues): HintsInUse | undefined {
  const from = textOption(options, 'hints');
  const rectangle = textOption(options, 'rectangle');
  if (from === undefined && rectangle === undefined) return undefined;
  const said =
    from === undefined ? { photos: [] } : parsePhotoHints(readText(from, 'photo-hints'), { file: from });
  const folder = from === undefined ? '' : dirname(from);
  const photo = relative(folder, files.photos[0]!);
  const hints = rectangle === undefined ? said : withReference(said, photo, rectangleFrom(rectangle));
  const target = `${hideStem(files.hide)}.hints.yaml`;
  const name = basename(target);
  const isThere = from !== undefined && rectangle === undefined && relative(from, target) === '';
  if (isThere) return { hints, name };
  const content = writePhotoHints(namedFrom(hints, folder, dirname(files.hide)));
  if (existsSync(target)) {
    if (readFileSync(target, 'utf8') === content) return { hints, name };
    throw new CliError(
      'bad-use',
      `${target} holds other hints and is not written over; move it away, or give the hide another name with --out.`,
    );
  }
  return { hints, name, copy: { path: target, content } };
}

function withReference({ photos }: PhotoHints, photo: string, reference: StatedReference): PhotoHints {
  const isSame = (hinted: HintedPhoto) => basename(hinted.photo) === basename(photo);
  const found = photos.find(isSame);
  if (found?.reference !== undefined) {
    throw new CliError('bad-use', `The hints on ${photo} give it a scale already; leave out --rectangle.`);
  }
  const empty = { photo, hideStrokes: [], floorStrokes: [], edgePoints: [] };
  return { photos: [...photos.filter((each) => each !== found), { ...(found ?? empty), reference }] };
}

/** The same photos, named from another folder. */
function namedFrom({ photos }: PhotoHints, from: string, to: string): PhotoHints {
  const rename = (photo: string) => relative(to, join(from, photo)).replaceAll('\\', '/');
  return { photos: photos.map((hinted) => ({ ...hinted, photo: rename(hinted.photo) })) };
}
