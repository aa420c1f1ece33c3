import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect } from 'vitest';
// @ts-expect-error: plain JavaScript, run by hand as bench/numbers-from-json.mjs
import * as judge from './tools/numbers.mjs';
import { outsideProgram, testWith } from './tools/outside.js';

interface Page {
  readonly name: string;
}

interface Job {
  readonly at: string;
}

interface Judged {
  readonly numbers: readonly unknown[];
  readonly open: readonly { readonly text: string; readonly cell: string }[];
  readonly off: readonly { readonly what: string }[];
}

interface Judge {
  readonly demoJob: () => Job;
  readonly judgeCommand: (page: Page, job: Job) => Judged;
  readonly blindness: (judged: Judged) => { readonly changed: number; readonly unseen: number };
  readonly PAGES: readonly Page[];
}

const { demoJob, judgeCommand, blindness, PAGES } = judge as Judge;
const poppler = outsideProgram('pdftotext');

// Judge: poppler's reading of the PDF, and arithmetic and units of its own in bench/numbers, without the project's code.
describe('when a command prints pages', () => {
  let job: Job | undefined;
  beforeAll(() => {
    if (poppler.isThere) job = demoJob();
  });
  afterAll(() => {
    if (job !== undefined) rmSync(job.at, { recursive: true, force: true });
  });

  for (const page of PAGES) {
    testWith(poppler, `each number on the pages of ${page.name} follows from its JSON`, () => {
      const judged = judgeCommand(page, job!);
      expect(judged.numbers.length).toBeGreaterThan(10);
      expect(judged.open.map(({ text, cell }) => `${text} in "${cell}"`)).toEqual([]);
      expect(judged.off).toEqual([]);
      // The judge is no rubber stamp: of numbers that are off by one in the last place it notices most.
      const { changed, unseen } = blindness(judged);
      expect(unseen / changed).toBeLessThan(MOST_UNSEEN);
    });
  }
});

/** Small counts stand beside each other in a row, so that some changed ones are another count of that row. */
const MOST_UNSEEN = 1 / 3;
