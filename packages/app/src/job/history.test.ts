import { createRandom } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { NO_HISTORY, changeJob, redoStep, undoStep } from './history.js';
import type { History } from './history.js';
import { NO_FILES } from './job.js';
import type { Edits, Job, JobFile } from './job.js';

const text = (content: string): JobFile => ({ kind: 'text', text: content });
const edit = (path: string, content: string | undefined): Edits =>
  new Map([[path, content === undefined ? undefined : text(content)]]);

describe('the history of a job', () => {
  it('when a change is taken back and done again, the job is as it was after it', () => {
    const changed = changeJob(NO_FILES, NO_HISTORY, 'a', edit('a.yaml', 'one'))!;
    const undone = undoStep(changed.job, changed.history)!;
    expect(undone.job.files.size).toBe(0);
    expect(undone.edits).toEqual(new Map([['a.yaml', undefined]]));
    const redone = redoStep(undone.job, undone.history)!;
    expect(redone.job.files).toEqual(changed.job.files);
    expect(redone.history).toEqual(changed.history);
  });

  it('when a change changes nothing, there is no step', () => {
    const file = text('same');
    const job: Job = { name: 'x', files: new Map([['a.yaml', file]]) };
    expect(changeJob(job, NO_HISTORY, 'again', new Map([['a.yaml', file]]))).toBeUndefined();
    expect(undoStep(job, NO_HISTORY)).toBeUndefined();
    expect(redoStep(job, NO_HISTORY)).toBeUndefined();
  });

  it('when any changes are made and all taken back, the job is what it was, and done again what it became', () => {
    const random = createRandom(5);
    let [job, history]: [Job, History] = [{ name: 'x', files: new Map([['f0', text('first')]]) }, NO_HISTORY];
    const first = job.files;
    for (let i = 0; i < 300; i++) {
      const path = `f${Math.floor(random.next() * 6)}`;
      const content = random.next() < 0.2 ? undefined : `content ${i}`;
      const changed = changeJob(job, history, `step ${i}`, edit(path, content));
      if (changed !== undefined) ({ job, history } = changed);
      const back = random.next() < 0.25 ? undoStep(job, history) : undefined;
      if (back !== undefined) ({ job, history } = back);
    }
    const [last, steps] = [job.files, history.done.length];
    for (let step = undoStep(job, history); step !== undefined; step = undoStep(job, history))
      ({ job, history } = step);
    expect(job.files).toEqual(first);
    for (let i = 0; i < steps; i++) ({ job, history } = redoStep(job, history)!);
    expect(job.files).toEqual(last);
  });
});
