import type { App } from '../../../../app/app.js';
import type { JobFile } from '../../../../job/job.js';
import { bytesOfFile } from '../../../../shell/choose-files.js';
import { hideDesk } from '../bring-in.js';
import { freeHideStem, stemOf } from '../logic/file-names.js';
import { panelHide } from '../logic/panel-hide.js';
import type { PanelAsked } from '../logic/panel-hide.js';
import { openPhotoFiles } from './open-photos.js';
import { problemOf } from './problem-of.js';

/** Files that were chosen or dropped: photos, a traced drawing, or a hide file. */
export async function bringFiles(app: App, files: readonly File[]): Promise<void> {
  const [first] = files;
  if (first === undefined) return;
  try {
    if (/\.json$/i.test(first.name)) await bringHideFile(app, first);
    else if (/\.svg$/i.test(first.name)) await bringDrawing(app, first);
    else await openPhotoFiles(app, files);
  } catch (error) {
    hideDesk(app).bringIn.set({ kind: 'ways', problem: problemOf(app, error) });
  }
}

async function bringHideFile(app: App, file: File): Promise<void> {
  const stem = freeHideStem(app.job.get(), stemOf(file.name));
  const path = `${stem}.hide.json`;
  const read = await app.desk.ask('readFiles', [{ path, bytes: await bytesOfFile(file) }]);
  const [, content] = read[0]!;
  if (content.kind === 'hide') settle(app, path, content);
  else {
    const sentence = content.kind === 'unread' ? content.sentence : app.say('hide.refused.no-hide-file');
    hideDesk(app).bringIn.set({ kind: 'ways', problem: { code: 'no-hide-file', sentence } });
  }
}

async function bringDrawing(app: App, file: File): Promise<void> {
  const stem = freeHideStem(app.job.get(), stemOf(file.name));
  const { photos, found } = hideDesk(app);
  const asked = { file: file.name, bytes: await bytesOfFile(file), id: stem };
  const { hide, findings } = await photos.ask('drawn', asked);
  const path = `${stem}.hide.json`;
  settle(app, path, { kind: 'hide', hide });
  found.set(new Map([...found.get(), [path, { hide, findings, views: [] }]]));
}

export function bringPanel(app: App, asked: Omit<PanelAsked, 'id'>): void {
  const stem = freeHideStem(app.job.get(), app.say('hide.panelStem'));
  settle(app, `${stem}.hide.json`, { kind: 'hide', hide: panelHide({ ...asked, id: stem }) });
}

function settle(app: App, path: string, file: JobFile): void {
  app.change(app.say('hide.undo.added'), new Map([[path, file]]));
  app.place.update((place) => ({ ...place, hide: path }));
  hideDesk(app).bringIn.set(undefined);
}
