import { describe, expect, it } from 'vitest';
import { freePath, pathBeside } from './job.js';
import { kindOfPath } from './kind-of-path.js';

describe('paths of a job', () => {
  it('when a file names another one, the path is seen from its own folder', () => {
    expect(pathBeside('bags.order.yaml', 'patterns/front.svg')).toBe('patterns/front.svg');
    expect(pathBeside('week/bags.order.yaml', '../hides/side.hide.json')).toBe('hides/side.hide.json');
    expect(pathBeside('week/bags.order.yaml', './side.hide.json')).toBe('week/side.hide.json');
    // Nothing lies above the job's own folder.
    expect(pathBeside('a.yaml', '../../etc/x.svg')).toBe('etc/x.svg');
  });

  it('when a name is taken, the next number is given', () => {
    const files = new Map(
      ['side.hide.json', 'side-2.hide.json'].map((path) => [path, { kind: 'text', text: '' } as const]),
    );
    expect(freePath({ name: '', files }, 'side', '.hide.json')).toBe('side-3.hide.json');
    expect(freePath({ name: '', files }, 'bend', '.hide.json')).toBe('bend.hide.json');
  });

  it('when a file is no part of a job, it has no kind', () => {
    expect(['a.hide.json', 'b.ORDER.yml', 'c.svg', 'd.JPG', 'workshop.yaml'].map(kindOfPath)).toEqual([
      'hide',
      'order',
      'pattern',
      'picture',
      'text',
    ]);
    expect(kindOfPath('letter.doc')).toBeUndefined();
  });
});
