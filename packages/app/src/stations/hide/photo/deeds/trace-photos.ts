import { REFERENCE_SHEETS_FILE } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import type { Edits, JobFile } from '../../../../job/job.js';
import { hideAt, pathBeside } from '../../../../job/job.js';
import type { RawPhoto, TraceAsked, TraceDone, TraceStep } from '../../../../work/photo-tasks.js';
import {
  NO_MARKS,
  changeMendSteps,
  changePhotoSteps,
  countMarks,
  hideDesk,
  mendSteps,
  photoSteps,
  shotsShowing,
  wasMoved,
} from '../bring-in.js';
import type { PhotoSteps, Shows } from '../bring-in.js';
import { freeHideStem, nameBeside, stemOf, stemOfHide } from '../logic/file-names.js';
import { hintsOf, referenceOf } from '../logic/stated-reference.js';
import { isStopped, problemOf } from './problem-of.js';

/** The photos on the table become a hide of the job. */
export async function tracePhotos(app: App): Promise<void> {
  const steps = photoSteps(app);
  if (steps?.sideUp === undefined || steps.working !== undefined) return;
  const stem = freeHideStem(app.job.get(), stemOf(steps.shots[0]!.file));
  const asked = askedOf(app, steps, stem);
  const done = await ask(app, asked, (change) => changePhotoSteps(app, change));
  if (done === undefined) return;
  const path = `${stem}.hide.json`;
  const photos = steps.shots.map(({ file, bytes }): [string, JobFile] => [
    file,
    keptPicture(app, file) ?? { kind: 'picture', bytes },
  ]);
  takeOver(app, app.say('hide.undo.traced'), path, done, photos);
  hideDesk(app).bringIn.set(undefined);
}

function askedOf(app: App, steps: PhotoSteps, stem: string): TraceAsked {
  const { shots, beside, stated, strokes, thicknessMm, invoicedMm2 } = steps;
  const showing = (what: Shows): RawPhoto[] =>
    shotsShowing(steps, what).map(({ file, bytes }) => ({ file, bytes }));
  const reference = stated === undefined ? undefined : referenceOf(beside, stated);
  const said = stated === undefined || reference === undefined ? undefined : { file: stated.file, reference };
  return {
    photos: showing('as it lies'),
    raking: showing('raking'),
    otherSide: showing('other side'),
    isMoved: wasMoved(steps),
    id: stem,
    sideUp: steps.sideUp!,
    pictureFile: `${stem}.straight.jpg`,
    hintsFile: `${stem}.hints.yaml`,
    hints: hintsOf(
      shots.map(({ file }) => file),
      strokes,
      said,
    ),
    ...sheetsOf(app),
    ...(invoicedMm2 === undefined ? {} : { invoicedMm2 }),
    ...(thicknessMm === undefined
      ? {}
      : { leather: { thickness: { minMm: thicknessMm, maxMm: thicknessMm } } }),
  };
}

/** Traces a hide of the job anew, with the strokes that were drawn on it. */
export async function traceAgain(app: App): Promise<void> {
  const steps = mendSteps(app);
  if (steps === undefined || steps.working !== undefined || countMarks(steps.marks) === 0) return;
  const { path } = steps;
  const hide = hideAt(app.job.get(), path);
  if (hide?.photo === undefined) return;
  try {
    const asked = againOf(app, path, hide);
    const done = await ask(app, { ...asked, marks: steps.marks }, (change) => changeMendSteps(app, change));
    if (done === undefined) return;
    takeOver(app, app.say('hide.undo.edgeMended'), path, done, []);
    changeMendSteps(app, { marks: NO_MARKS, working: undefined, problem: undefined });
  } catch (error) {
    changeMendSteps(app, { problem: problemOf(app, error), working: undefined });
  }
}

function againOf(app: App, path: string, hide: NonNullable<ReturnType<typeof hideAt>>): TraceAsked {
  const photo = hide.photo!;
  const found = hideDesk(app).found.get().get(path);
  const isChanged = found?.hide !== hide;
  const { lot } = hide;
  const { takenFrom = [], raking = [], otherSide = [] } = photo;
  const pictures = (files: readonly string[]): RawPhoto[] =>
    files.flatMap((file) => {
      const picture = app.job.get().files.get(pathBeside(path, file));
      return picture?.kind === 'picture' ? [{ file, bytes: picture.bytes }] : [];
    });
  return {
    photos: pictures(takenFrom.filter((file) => ![...raking, ...otherSide].includes(file))),
    raking: pictures(raking),
    otherSide: pictures(otherSide),
    id: hide.id,
    sideUp: photo.sideUp ?? 'grain',
    pictureFile: photo.file,
    hintsFile: photo.hints ?? nameBeside(`${stemOfHide(path)}.hints.yaml`),
    hints: keptHints(app, path, photo.hints),
    ...(isChanged ? { changed: hide } : {}),
    ...(found === undefined || found.views.length === 0 ? {} : { views: found.views }),
    ...sheetsOf(app),
    ...(hide.area.invoicedMm2 === undefined ? {} : { invoicedMm2: hide.area.invoicedMm2 }),
    ...(hide.leather.thickness === undefined ? {} : { leather: { thickness: hide.leather.thickness } }),
    ...(lot === undefined ? {} : { lot }),
  };
}

/**
 * True where the photos that the hide was traced from lie in the job, so that its edge can be traced anew. Of a hide that
 * was dragged along, nobody knows which photo shows a stroke.
 */
export function canTraceAgain(app: App, path: string): boolean {
  const photo = hideAt(app.job.get(), path)?.photo;
  const files = photo?.takenFrom ?? [];
  return (
    photo?.isMoved !== true &&
    files.length > 0 &&
    files.every((file) => keptPicture(app, pathBeside(path, file)) !== undefined)
  );
}

function keptPicture(app: App, path: string): JobFile | undefined {
  const file = app.job.get().files.get(path);
  return file?.kind === 'picture' ? file : undefined;
}

function keptHints(app: App, path: string, named: string | undefined): TraceAsked['hints'] {
  const file = named === undefined ? undefined : app.job.get().files.get(pathBeside(path, named));
  return file?.kind === 'text' ? { file: named!, text: file.text } : { photos: [] };
}

function sheetsOf(app: App): Pick<TraceAsked, 'sheets'> {
  const file = app.job.get().files.get(REFERENCE_SHEETS_FILE);
  return file?.kind === 'text' ? { sheets: file.text } : {};
}

type Tell = (change: Pick<PhotoSteps, 'working' | 'problem'>) => void;

/** Undefined where it was stopped or refused, which is told then. */
async function ask(app: App, asked: TraceAsked, tell: Tell): Promise<TraceDone | undefined> {
  const end = new AbortController();
  const working = (step: TraceStep): void =>
    tell({ working: { step, stop: () => end.abort() }, problem: undefined });
  working('open');
  try {
    return await hideDesk(app).photos.ask('trace', asked, { onProgress: working, signal: end.signal });
  } catch (error) {
    tell({ working: undefined, problem: isStopped(error) ? undefined : problemOf(app, error) });
    return undefined;
  }
}

/** The hide and all that belongs to it, as one change. */
function takeOver(
  app: App,
  label: string,
  path: string,
  { hide, picture, hintsText, findings, report, views }: TraceDone,
  more: readonly (readonly [string, JobFile])[],
): void {
  const photo = hide.photo!;
  const edits = new Map<string, JobFile>([
    ...more,
    [pathBeside(path, photo.file), { kind: 'picture', bytes: picture }],
    [path, { kind: 'hide', hide }],
  ]);
  if (photo.hints !== undefined) edits.set(pathBeside(path, photo.hints), { kind: 'text', text: hintsText });
  app.change(label, edits satisfies Edits);
  const desk = hideDesk(app);
  desk.found.set(new Map([...desk.found.get(), [path, { hide, findings, report, views }]]));
  app.place.update((place) => ({ ...place, hide: path }));
}
