import type { Hide, HidePhoto } from '../model/hide.js';

/** The files that a hide names, as it names them: its straightened picture, the photos that it was traced from, hints. */
export function hideFiles({ photo }: Hide): readonly string[] {
  if (photo === undefined) return [];
  const { file, takenFrom = [], hints } = photo;
  return [file, ...takenFrom, ...(hints === undefined ? [] : [hints])];
}

/** The same hide with its files under other names. */
export function withFilesNamed(hide: Hide, nameOf: (file: string) => string): Hide {
  const { photo } = hide;
  if (photo === undefined) return hide;
  const { takenFrom, raking, otherSide, hints } = photo;
  const named: HidePhoto = {
    ...photo,
    file: nameOf(photo.file),
    ...(takenFrom === undefined ? {} : { takenFrom: takenFrom.map(nameOf) }),
    ...(raking === undefined ? {} : { raking: raking.map(nameOf) }),
    ...(otherSide === undefined ? {} : { otherSide: otherSide.map(nameOf) }),
    ...(hints === undefined ? {} : { hints: nameOf(hints) }),
  };
  return { ...hide, photo: named };
}
