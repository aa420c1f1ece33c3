import type { App } from '../../app/app.js';
import type { JobFile } from '../../job/job.js';
import type { MakeChoices, MakeJob, SheetName } from '../../work/make-tasks.js';

/** As much of the job as a sheet needs: pictures are large, and only one sheet shows them. */
export function jobFor(
  { job, place }: Pick<App, 'job' | 'place'>,
  { sheet, choices }: { readonly sheet: SheetName; readonly choices: MakeChoices },
): MakeJob {
  const withPictures = sheet === 'cutting' && choices.photo;
  const isNeeded = ({ kind }: JobFile): boolean => kind !== 'unread' && (kind !== 'picture' || withPictures);
  const { order, layout } = place.get();
  return { files: new Map([...job.get().files].filter(([, file]) => isNeeded(file))), order, layout };
}
