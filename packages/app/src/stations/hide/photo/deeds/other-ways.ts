import type { App } from '../../../../app/app.js';
import { bytesOfFile } from '../../../../shell/choose-files.js';
import { countMarks, hideDesk } from '../bring-in.js';
import { freeHideStem, stemOf } from '../logic/file-names.js';
import { panelHide } from '../logic/panel-hide.js';
import type { PanelAsked } from '../logic/panel-hide.js';
import { bringHideFile } from './bring-hide-file.js';
import { openPhotoFiles } from './open-photos.js';
import { problemOf } from './problem-of.js';
import { settleHide } from './settle-hide.js';

/** Files that were chosen or dropped: photos, traced drawings, hide files with what they name. */
export async function bringFiles(app: App, files: readonly File[]): Promise<void> {
  if (files.length === 0 || isTakenUp(app, files)) return;
  const hides = files.filter(({ name }) => HIDE.test(name));
  const drawings = files.filter(({ name }) => DRAWING.test(name));
  const patterns = files.filter(({ name }) => PATTERN.test(name));
  const photos = files.filter((file) => ![...hides, ...drawings, ...patterns].includes(file));
  try {
    const named = new Set<string>();
    for (const file of hides) for (const name of await bringHideFile(app, file, files)) named.add(name);
    for (const file of drawings) await bringDrawing(app, file);
    if (patterns.length > 0) sendToPieces(app, patterns[0]!.name);
    if (hides.length === 0) await openPhotoFiles(app, photos);
    else
      tellLeftOut(
        app,
        photos.filter(({ name }) => !named.has(name)),
      );
  } catch (error) {
    hideDesk(app).bringIn.set({ kind: 'ways', problem: problemOf(app, error) });
  }
}

const HIDE = /\.json$/i;
const DRAWING = /\.svg$/i;
const PATTERN = /\.(pdf|dxf)$/i;

/** Photos on the table and strokes for mending are finished or left first: nothing that was done is thrown away. */
function isTakenUp(app: App, files: readonly File[]): boolean {
  const now = hideDesk(app).bringIn.get();
  const isPhotos = files.every(({ name }) => !HIDE.test(name) && !DRAWING.test(name));
  const isBusy =
    now?.kind === 'photo'
      ? now.working !== undefined || !isPhotos
      : now?.kind === 'mend' && (now.working !== undefined || countMarks(now.marks) > 0);
  if (isBusy) app.tell({ tone: 'warning', text: app.say('hide.finishFirst', { file: files[0]!.name }) });
  return isBusy;
}

/** What comes with a hide file is its own: another hide's photos are brought in by themselves. */
function tellLeftOut(app: App, [first, ...others]: readonly File[]): void {
  if (first === undefined) return;
  const text = app.say('hide.leftOut', { n: others.length + 1, file: first.name });
  app.tell({ tone: 'warning', text });
}

function sendToPieces(app: App, file: string): void {
  app.tell({
    tone: 'warning',
    text: app.say('hide.isPattern', { file }),
    action: { label: app.say('place.pieces'), run: () => app.goTo('pieces') },
  });
}

async function bringDrawing(app: App, file: File): Promise<void> {
  const stem = freeHideStem(app.job.get(), stemOf(file.name));
  const { photos, found } = hideDesk(app);
  const asked = { file: file.name, bytes: await bytesOfFile(file), id: stem };
  const { hide, findings } = await photos.ask('drawn', asked);
  const path = `${stem}.hide.json`;
  settleHide(app, path, hide);
  found.set(new Map([...found.get(), [path, { hide, findings, views: [] }]]));
}

export function bringPanel(app: App, asked: Omit<PanelAsked, 'id'>): void {
  const stem = freeHideStem(app.job.get(), app.say('hide.panelStem'));
  settleHide(app, `${stem}.hide.json`, panelHide({ ...asked, id: stem }));
}
