import { describe, expect, it } from 'vitest';
import type { Hide, Layout, OrderFile } from '@hidebound/leather';
import type { Job, JobFile } from '../job/job.js';
import { nextStep } from './next-step.js';
import { PLACE_NAMES } from './place.js';

const HIDE: readonly [string, JobFile] = ['side.hide.json', { kind: 'hide', hide: {} as Hide }];
const orderOf = (...articles: readonly unknown[]): readonly [string, JobFile] => [
  'bags.order.yaml',
  { kind: 'order', order: { articles } as unknown as OrderFile },
];
const layoutOf = (...states: readonly string[]): readonly [string, JobFile] => [
  'bags.layout.json',
  { kind: 'layout', layout: { placements: states.map((state) => ({ state })) } as unknown as Layout },
];
const BAGS = orderOf({ name: 'bag' });

/** What comes next, seen from each of the five places in turn. */
function seenFromAll(...files: readonly (readonly [string, JobFile])[]) {
  const job: Job = { name: 'bags', files: new Map(files) };
  const has = (path: string) => (job.files.has(path) ? path : undefined);
  return PLACE_NAMES.map((name) =>
    nextStep(job, {
      ...{ name, hide: has('side.hide.json') },
      ...{ order: has('bags.order.yaml'), layout: has('bags.layout.json') },
    }),
  );
}

describe('the step that comes next', () => {
  it('when nothing is there yet, each place asks for its own thing first', () => {
    expect(seenFromAll()).toEqual([undefined, undefined, undefined, undefined, undefined]);
    expect(seenFromAll(orderOf())).toEqual([undefined, undefined, undefined, undefined, undefined]);
  });

  it('when a hide is there, what is made of it comes next, and the other way round', () => {
    expect(seenFromAll(HIDE)).toEqual(['pieces', undefined, undefined, undefined, undefined]);
    expect(seenFromAll(BAGS)).toEqual([undefined, 'hide', undefined, undefined, undefined]);
  });

  it('when hide and pieces are there, they are laid, then printed, then cut', () => {
    expect(seenFromAll(HIDE, BAGS)).toEqual(['lay', 'lay', undefined, undefined, undefined]);
    const laid = layoutOf('planned', 'planned');
    expect(seenFromAll(HIDE, BAGS, laid)).toEqual([undefined, undefined, 'make', 'bench', undefined]);
  });

  it('when nothing lies, or cutting has begun, nobody is pushed on', () => {
    for (const layout of [layoutOf(), layoutOf('cut', 'planned'), layoutOf('planned', 'spoiled')])
      expect(seenFromAll(HIDE, BAGS, layout)).toEqual([
        undefined,
        undefined,
        undefined,
        undefined,
        undefined,
      ]);
  });
});
