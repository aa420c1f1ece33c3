import type { Desk } from '../work/desk.js';
import { createFirstJob, createJob, listJobs } from './browser-jobs.js';
import type { Database } from './database.js';
import { keepHere, keptHere } from './kept-here.js';

const KEPT_AS = 'hidebound-job';

export interface DemoJob {
  readonly desk: Pick<Desk, 'ask'>;
  /** The page's address; the demo's job file lies beside it. */
  readonly at: string;
}

/** Which job of this browser is opened: the wanted one, this tab's, the last; on a first start the demo. */
export async function findBrowserJob(database: Database, demo: DemoJob, wanted?: number): Promise<number> {
  const job = (await jobThatIsThere(database, wanted)) ?? (await firstJob(database, demo));
  chooseJob(job);
  return job;
}

/** The job that this tab, and the next new one, opens. */
export function chooseJob(job: number): void {
  keepHere(KEPT_AS, String(job));
}

async function jobThatIsThere(database: Database, wanted?: number): Promise<number | undefined> {
  const jobs = (await listJobs(database)).map(({ id }) => id);
  const wishes = [...(wanted === undefined ? [] : [wanted]), ...keptHere(KEPT_AS).map(Number)];
  return wishes.find((id) => jobs.includes(id)) ?? jobs[0];
}

async function firstJob(database: Database, demo: DemoJob): Promise<number> {
  const { name, files } = await readDemo(demo);
  const first = await createFirstJob(database, name, files);
  if (first !== undefined) return first.id;
  // Another tab was quicker, or all that is there lies in the bin.
  return (await listJobs(database))[0]?.id ?? (await createJob(database, name, files)).id;
}

export async function readDemo({ desk, at }: DemoJob): ReturnType<typeof bundleOf> {
  return bundleOf(desk, await fetch(new URL('demo.job.json', at)));
}

async function bundleOf(desk: DemoJob['desk'], response: Response) {
  if (!response.ok) throw new Error(`The demo could not be loaded (status ${response.status}).`);
  const bytes = new Uint8Array(await response.arrayBuffer());
  return desk.ask('readBundle', { path: 'demo.job.json', bytes });
}
