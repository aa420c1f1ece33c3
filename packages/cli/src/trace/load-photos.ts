import type { Photo } from '@hidebound/intake/photo';
import { SIZE_LIMIT_MB, readFileLimited } from '../io/read-file.js';

/** Photos of any kind that is read, upright and in plain colours, in the order given. */
export async function loadPhotos(files: readonly string[]): Promise<readonly Photo[]> {
  const { decodePhoto } = await import('@hidebound/intake/node');
  const photos: Photo[] = [];
  for (const file of files) photos.push(await decodePhoto(readFileLimited(file, SIZE_LIMIT_MB.photo), file));
  return photos;
}
