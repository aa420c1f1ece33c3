import { hideFiles, withFilesNamed } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import type { Job } from '../../../../job/job.js';
import { freePhotoName, nameBeside } from './file-names.js';

/** A hide that came in with files that it names. */
export interface HideParts {
  readonly hide: Hide;
  /** The given files that it names, by the names that they get beside it. */
  readonly parts: ReadonlyMap<string, string>;
  /** Its straightened picture is not among what was given, so that it lies there without its photo. */
  readonly isWithoutPhoto: boolean;
}

/**
 * A hide file is known here by a stem that nothing of the job has; of the files that were given beside it, those that it
 * names come along under names that are free, too. `given`: their names, without folders.
 */
export function hideParts(job: Job, hide: Hide, stem: string, given: readonly string[]): HideParts {
  const { photo } = hide;
  if (photo === undefined) return { hide, parts: new Map(), isWithoutPhoto: false };
  const there = new Set(given);
  const names = new Map<string, string>();
  for (const file of hideFiles(hide)) {
    const bare = nameBeside(file);
    const taken = [...names.values()];
    if (file === photo.file) names.set(file, `${stem}.straight.jpg`);
    else if (file === photo.hints) names.set(file, `${stem}.hints.yaml`);
    else names.set(file, there.has(bare) ? freePhotoName(job, taken, bare) : bare);
  }
  const parts = [...names].filter(([file]) => there.has(nameBeside(file)));
  return {
    hide: withFilesNamed(hide, (file) => names.get(file) ?? file),
    parts: new Map(parts.map(([file, name]) => [nameBeside(file), name])),
    isWithoutPhoto: !there.has(nameBeside(photo.file)),
  };
}

/** The hide under an id that no other hide of the job has, so that layouts know them apart. */
export function withFreeId(hide: Hide, taken: ReadonlySet<string>): Hide {
  let { id } = hide;
  for (let number = 2; taken.has(id); number++) id = `${hide.id}-${number}`;
  return id === hide.id ? hide : { ...hide, id };
}
