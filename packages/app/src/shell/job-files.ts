import type { App } from '../app/app.js';
import { kindOfPath } from '../job/kind-of-path.js';
import { freePath } from '../job/job.js';
import type { Job, JobFile } from '../job/job.js';
import { createJob } from '../store/browser-jobs.js';
import { chooseJob, readDemo } from '../store/find-browser-job.js';
import type { DeskTasks, RawFile } from '../work/desk-tasks.js';
import { WorkError } from '../work/task.js';
import { bytesOfFile, chooseFiles } from './choose-files.js';
import { download } from './download.js';

/** The job as one file that holds all of it. */
export async function saveJobFile(app: App): Promise<void> {
  const { name, files } = app.job.get();
  const bytes = await app.desk.ask('writeBundle', { name, files });
  download(`${name}.job.json`, bytes, 'application/json');
}

/** A job file becomes a job of its own in this browser; a folder takes its files in, under names that are free. */
export async function openJobFile(app: App): Promise<void> {
  const [file] = await chooseFiles('.json,application/json');
  if (file === undefined) return;
  const bundle = await readJobFile(app, file);
  if (bundle === undefined) return;
  if (app.session.kind === 'browser') await beginJob(app, bundle.name, bundle.files);
  else await addFiles(app, bundle.files);
}

async function readJobFile(app: App, file: File): Promise<DeskTasks['readBundle']['output'] | undefined> {
  try {
    return await app.desk.ask('readBundle', { path: file.name, bytes: await bytesOfFile(file) });
  } catch (error) {
    if (!(error instanceof WorkError && error.failure.isRefusal)) throw error;
    app.tell({ tone: 'error', text: app.say('job.notOpened', { sentence: error.failure.sentence }) });
    return undefined;
  }
}

export function newJob(app: App): Promise<void> {
  return beginJob(app, app.say('job.newName'), []);
}

export async function demoJob(app: App): Promise<void> {
  const { name, files } = await readDemo({ desk: app.desk, at: document.baseURI });
  await beginJob(app, name, files);
}

/** The page is loaded anew with the chosen job: what was open is saved already. */
export function goToJob(id: number): void {
  chooseJob(id);
  location.reload();
}

async function beginJob(app: App, name: string, files: readonly RawFile[]): Promise<void> {
  const { id } = await createJob(app.session.database, name, files);
  goToJob(id);
}

async function addFiles(app: App, files: readonly RawFile[]): Promise<void> {
  const read = await app.desk.ask('readFiles', files);
  const edits = new Map(underFreeNames(app.job.get(), read));
  app.change(app.say('job.addedLabel'), edits);
  app.tell({ tone: 'calm', text: app.say('job.added', { n: edits.size }) });
}

/** Files that are to be added, none over one that is there; the same file again is left out. */
export function underFreeNames(
  job: Job,
  files: readonly (readonly [string, JobFile])[],
): (readonly [string, JobFile])[] {
  return files.flatMap(([path, file]) => {
    if (kindOfPath(path) === undefined) return [];
    if (!job.files.has(path)) return [[path, file] as const];
    const [, stem = path, ending = ''] =
      /^(.*?)((?:\.(?:hide|layout|order|article))?\.\w+)$/.exec(path) ?? [];
    return [[freePath(job, stem, ending), file] as const];
  });
}
