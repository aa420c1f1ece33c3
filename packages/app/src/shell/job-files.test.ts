import { describe, expect, it } from 'vitest';
import type { Job, JobFile } from '../job/job.js';
import { fileWord } from './download.js';
import { underFreeNames } from './job-files.js';

const text: JobFile = { kind: 'text', text: '' };

describe('files that come into a folder', () => {
  it('when a name is taken, the file comes beside it and keeps its kind', () => {
    const job: Job = {
      name: '',
      files: new Map([
        ['side.hide.json', text],
        ['patterns/front.svg', text],
      ]),
    };
    const added = underFreeNames(job, [
      ['side.hide.json', text],
      ['patterns/front.svg', text],
      ['bend.hide.json', text],
      ['letter.doc', text],
    ]);
    expect(added.map(([path]) => path)).toEqual([
      'side-2.hide.json',
      'patterns/front-2.svg',
      'bend.hide.json',
    ]);
  });
});

describe('the name of a file that is saved', () => {
  // Source: characters that file names may not hold, by the documentation of the common file systems (from memory).
  it('when a job’s name holds what disks don’t take, it is left out', () => {
    expect(fileWord('Week 10: "bags" / straps?.job.json')).toBe('Week 10 bags straps .job.json');
    expect(fileWord('..\u0000')).toBe('hidebound');
    expect(fileWord('Sättel.pdf')).toBe('Sättel.pdf');
  });
});
