import type { App } from '../../../../app/app.js';
import { bytesOfFile } from '../../../../shell/choose-files.js';
import type { RawPhoto } from '../../../../work/photo-tasks.js';
import { changePhotoSteps, hideDesk, photoSteps } from '../bring-in.js';
import type { PhotoSteps, Shot } from '../bring-in.js';
import { freePhotoName } from '../logic/file-names.js';
import { problemOf } from './problem-of.js';

/** As many pixels as a screen shows of a photo that is looked at closely; phones bear less. */
const MOST_PX = { phone: 2048, other: 3072 } as const;

export function mostScreenPx(): number {
  return matchMedia('(pointer: coarse)').matches ? MOST_PX.phone : MOST_PX.other;
}

const FIRST_STEPS: Omit<PhotoSteps, 'shots'> = {
  kind: 'photo',
  shown: 0,
  shows: new Map(),
  isMoved: false,
  sideUp: undefined,
  beside: 'sheets',
  stated: undefined,
  strokes: new Map(),
  pen: undefined,
  invoicedMm2: undefined,
  thicknessMm: undefined,
  working: undefined,
  problem: undefined,
};

/** A photo that is not in the job yet. */
interface ChosenPhoto extends RawPhoto {
  /** Its name where she has it, by which she is told of it. */
  readonly called?: string;
}

/** Photos that the person chose lie on the table, one more beside those that lie there already. */
export async function openPhotoFiles(app: App, files: readonly File[]): Promise<void> {
  const taken = (photoSteps(app)?.shots ?? []).map(({ file }) => file);
  const photos: ChosenPhoto[] = [];
  for (const file of files) {
    const name = freePhotoName(app.job.get(), [...taken, ...photos.map((photo) => photo.file)], file.name);
    photos.push({ file: name, bytes: await bytesOfFile(file), called: file.name });
  }
  await openRawPhotos(app, photos);
}

/** Photos by the names that they have, or will have, in the job. */
export async function openRawPhotos(app: App, photos: readonly ChosenPhoto[]): Promise<void> {
  const { bringIn } = hideDesk(app);
  if (photos.length === 0) return;
  if (photoSteps(app) === undefined) bringIn.set({ kind: 'ways', working: true });
  const opened: Shot[] = [];
  for (const { called, ...photo } of photos) {
    try {
      opened.push(await openShot(app, photo));
    } catch (error) {
      for (const { url } of opened) URL.revokeObjectURL(url);
      const problem = problemOf(app, error, called);
      if (photoSteps(app) === undefined) bringIn.set({ kind: 'ways', problem });
      else changePhotoSteps(app, { problem });
      return;
    }
  }
  const now = photoSteps(app);
  if (now === undefined) bringIn.set({ ...FIRST_STEPS, shots: opened });
  else changePhotoSteps(app, { shots: [...now.shots, ...opened], problem: undefined });
}

export async function openShot(app: App, photo: RawPhoto): Promise<Shot> {
  const { width, height, picture } = await hideDesk(app).photos.ask('look', {
    ...photo,
    mostPx: mostScreenPx(),
  });
  const blob = new Blob([picture as Uint8Array<ArrayBuffer>], { type: 'image/jpeg' });
  const shrink = Math.min(1, mostScreenPx() / Math.max(width, height));
  return { ...photo, width, height, url: URL.createObjectURL(blob), shrink };
}

/** Puts one of several photos away again. */
export function dropShot(app: App, file: string): void {
  const now = photoSteps(app);
  if (now === undefined) return;
  const shots = now.shots.filter((shot) => shot.file !== file);
  if (shots.length === 0) hideDesk(app).bringIn.set({ kind: 'ways' });
  else changePhotoSteps(app, { shots, shown: 0 });
}
