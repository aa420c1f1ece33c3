import type { Hide } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import type { Stage } from '../../../../drawing/stage.js';
import { hideAt, pathBeside } from '../../../../job/job.js';
import { hideDesk } from '../bring-in.js';
import { mostScreenPx } from '../deeds/open-photos.js';

/** Pictures up to this size are shown as they are; larger ones would cost a phone its memory when decoded. */
const AS_IT_IS_BYTES = 3e6;

/** The straightened picture below the chosen hide, as large as the device bears; gives back what takes it away. */
export function openHidePicture(app: App, stage: Stage): () => void {
  let shown: Uint8Array | undefined;
  let url: string | undefined;
  let isClosed = false;
  const away = (): void => {
    if (url !== undefined) URL.revokeObjectURL(url);
    url = undefined;
    stage.setPhoto(undefined);
  };
  const show = async (): Promise<void> => {
    const path = app.place.get().hide;
    const photo = hideAt(app.job.get(), path)?.photo;
    const file = photo === undefined ? undefined : app.job.get().files.get(pathBeside(path!, photo.file));
    const bytes = file?.kind === 'picture' ? file.bytes : undefined;
    if (bytes === shown) return;
    shown = bytes;
    away();
    if (bytes === undefined || photo === undefined) return;
    const { picture, shrink } = await forScreen(app, photo.file, bytes);
    if (isClosed || shown !== bytes) return;
    url = URL.createObjectURL(new Blob([picture as Uint8Array<ArrayBuffer>]));
    stage.setPhoto({ url, pxPerMm: photo.pxPerMm * shrink, origin: photo.origin });
  };
  const showSoon = (): void => {
    show().catch((error: unknown) => app.tellFailure(error));
  };
  const ends = [app.job.watch(showSoon), app.place.watch(showSoon)];
  showSoon();
  return () => {
    isClosed = true;
    for (const end of ends) end();
    away();
  };
}

/** Whether the job holds the straightened picture of the hide at this path. */
export function hasPicture(app: App, path: string | undefined, { photo }: Hide): boolean {
  if (path === undefined || photo === undefined) return false;
  return app.job.get().files.get(pathBeside(path, photo.file))?.kind === 'picture';
}

async function forScreen(app: App, file: string, bytes: Uint8Array) {
  if (bytes.length <= AS_IT_IS_BYTES && !matchMedia('(pointer: coarse)').matches) {
    return { picture: bytes, shrink: 1 };
  }
  const { width, height, picture } = await hideDesk(app).photos.ask('look', {
    file,
    bytes,
    mostPx: mostScreenPx(),
  });
  return { picture, shrink: Math.min(1, mostScreenPx() / Math.max(width, height)) };
}
