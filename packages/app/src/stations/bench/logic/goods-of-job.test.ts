import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../../job/job.js';
import { readFiles } from '../../../work/desk/read-files.js';
import { otherGoods, piecesOfJob } from './goods-of-job.js';

const DEMO = join(import.meta.dirname, '../../../../../../fixtures/demo');
const FRONT = 'bicycle-goods.order.yaml';
const job: Job = {
  name: 'demo',
  files: new Map(
    readFiles(
      readdirSync(DEMO)
        .filter((name) => /\.(article|order)\.yaml$/.test(name))
        .map((path) => ({ path, bytes: new Uint8Array(readFileSync(join(DEMO, path))) })),
    ),
  ),
};
const without = (...paths: readonly string[]): Job => ({
  ...job,
  files: new Map([...job.files].filter(([path]) => !paths.includes(path))),
});

describe('what a job makes besides the order in front', () => {
  it('when an article is made by an order, by its file or by its name, it does not stand apart', () => {
    const [other, ...more] = otherGoods(job, FRONT);
    expect(other).toMatchObject({ path: 'bought-patterns.order.yaml', isOrder: true });
    expect(more).toEqual([]);
  });

  it('when no order makes an article, it stands for itself', () => {
    const paths = otherGoods(without(FRONT), 'bought-patterns.order.yaml').map(({ path }) => path);
    expect(paths).toEqual(['pump-strap.article.yaml', 'saddlebag.article.yaml']);
  });
});

describe('the pieces of a job', () => {
  it('when an order takes an article from a file, its pieces are there with the others, those in front first', () => {
    const pieces = piecesOfJob(job, FRONT);
    expect(pieces.find(({ article, piece }) => article === 'pump strap' && piece === 'cradle')?.path).toBe(
      FRONT,
    );
    const paths = pieces.map(({ path }) => path);
    expect(paths.lastIndexOf(FRONT)).toBeLessThan(paths.indexOf('bought-patterns.order.yaml'));
    // A reference to a file that is gone has no pieces, and breaks nothing.
    const gone = piecesOfJob(without('pump-strap.article.yaml'), FRONT);
    expect(gone.some(({ article }) => article === 'pump strap')).toBe(false);
  });
});
