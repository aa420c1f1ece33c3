import { hideFiles, writeHide } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { filesOfKind, pathBeside } from '../../../../job/job.js';
import type { JobFile } from '../../../../job/job.js';
import { bytesOfFile } from '../../../../shell/choose-files.js';
import { hideDesk } from '../bring-in.js';
import { freeHideStem, nameBeside, stemOf } from '../logic/file-names.js';
import { hideParts, withFreeId } from '../logic/hide-parts.js';
import { settleHide } from './settle-hide.js';

/** A hide file comes in, with its picture, photos and hints where they were given, too. Gives back what it names of them. */
export async function bringHideFile(
  app: App,
  file: File,
  given: readonly File[],
): Promise<readonly string[]> {
  const stem = freeHideStem(app.job.get(), stemOf(file.name));
  const path = `${stem}.hide.json`;
  const read = await app.desk.ask('readFiles', [{ path, bytes: await bytesOfFile(file) }]);
  const [, content] = read[0]!;
  if (content.kind !== 'hide') {
    const words = (): string =>
      content.kind === 'unread' ? app.sentence(content) : app.say('hide.refused.no-hide-file');
    hideDesk(app).bringIn.set({ kind: 'ways', problem: { code: 'no-hide-file', words } });
    return [];
  }
  const known = sameHide(app, content.hide);
  if (known !== undefined) {
    app.place.update((place) => ({ ...place, hide: known }));
    hideDesk(app).bringIn.set(undefined);
    app.tell({ tone: 'calm', text: app.say('hide.thereAlready', { name: content.hide.id }) });
    return hideFiles(content.hide).map(nameBeside);
  }
  const ids = new Set(filesOfKind(app.job.get(), 'hide').map(([, { hide }]) => hide.id));
  const own = withFreeId(content.hide, ids);
  const { hide, parts, isWithoutPhoto } = hideParts(
    app.job.get(),
    own,
    stem,
    given.map(({ name }) => name),
  );
  settleHide(app, path, hide, await partFiles(path, parts, given));
  if (own !== content.hide)
    app.tell({ tone: 'warning', text: app.say('hide.renamed', { name: content.hide.id, other: own.id }) });
  if (isWithoutPhoto) app.tell({ tone: 'calm', text: app.say('hide.withoutPhoto', { name: hide.id }) });
  return [...parts.keys()];
}

/** The path of a hide of the job that says the same. */
function sameHide(app: App, hide: Hide): string | undefined {
  const text = writeHide(hide);
  return filesOfKind(app.job.get(), 'hide').find(
    ([, file]) => file.hide.id === hide.id && writeHide(file.hide) === text,
  )?.[0];
}

async function partFiles(
  path: string,
  parts: ReadonlyMap<string, string>,
  given: readonly File[],
): Promise<[string, JobFile][]> {
  const files: [string, JobFile][] = [];
  for (const file of given) {
    const name = parts.get(file.name);
    if (name === undefined) continue;
    const content: JobFile = /\.ya?ml$/i.test(name)
      ? { kind: 'text', text: await file.text() }
      : { kind: 'picture', bytes: await bytesOfFile(file) };
    files.push([pathBeside(path, name), content]);
  }
  return files;
}
