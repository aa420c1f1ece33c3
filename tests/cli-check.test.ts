import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT, hidebound, hideboundHere, testFolder } from './cli-support.js';
import type { Run } from './cli-support.js';

const folder = testFolder();
const FIXTURES = join(ROOT, 'fixtures', 'layouts');
const HAND_WRITTEN = 'hand-written.layout.json';
for (const name of ['side-one.hide.json', 'shoulder-two.hide.json']) {
  copyFileSync(join(FIXTURES, name), join(folder, name));
}

interface EditedLayout {
  readonly order: { readonly cutting: { gapMm: number } };
  readonly placements: {
    piece: string;
    x: number;
    y: number;
    rotationDeg: number;
    accepted: string[];
    mirrored: boolean;
  }[];
  readonly pieces: { hash: string }[];
  readonly hides: { hash: string }[];
  readonly yield: { readonly total: { grossYield: number } };
}

/** Checks a copy of the hand-written layout after some edits. */
function checkEdited(name: string, edit: (layout: EditedLayout) => void): Promise<Run> {
  const layout = JSON.parse(readFileSync(join(FIXTURES, HAND_WRITTEN), 'utf8')) as EditedLayout;
  edit(layout);
  const path = join(folder, `${name}.layout.json`);
  writeFileSync(path, JSON.stringify(layout, null, 2));
  return hideboundHere(['check', path]);
}

const ZEROS = '0'.repeat(64);

describe('hidebound check on the hand-written layout', () => {
  it('when nothing is changed, it is proven, and what is locked is counted', () => {
    const run = hidebound(['check', join(FIXTURES, HAND_WRITTEN)]);
    expect(run.status, run.stdout + run.stderr).toBe(0);
    expect(run.stdout).toMatch(/proven\. 16 pieces on 2 hides keep every rule \(1 locked in place\)\./);
    expect(run.stdout).not.toMatch(/^(error|warning)/m);
  });

  it('when a gap is broken and accepted by hand, it is proven and every such place is listed', async () => {
    const run = await checkEdited('accepted', (layout) => {
      layout.order.cutting.gapMm = 30;
      for (const placement of layout.placements) placement.accepted = ['gap'];
    });
    expect(run.status, run.stdout + run.stderr).toBe(0);
    const notes = run.stdout.split('\n').filter((line) => line.startsWith('note: '));
    expect(notes.length).toBeGreaterThan(0);
    for (const note of notes) {
      expect(note).toMatch(
        /"\w+" of \w+, set \d, copy \d breaks a rule that was accepted by hand: the gap between pieces, .*\((3|20) where 30 is asked\)\.$/,
      );
    }
  });

  it.each<[string, (layout: EditedLayout) => void, RegExp]>([
    [
      'a piece lies on another one',
      ({ placements: [front, back] }) => Object.assign(front!, { x: back!.x, y: back!.y }),
      /"front" of pouch, set 1, copy 1 lies over "back" of pouch, set 1, copy 1/,
    ],
    [
      'a piece reaches over the edge',
      ({ placements }) => (placements[0]!.x = -20),
      /"front" of pouch, set 1, copy 1 reaches over the edge of the hide.* by 70 mm; move it inwards/,
    ],
    [
      'a piece is turned too far',
      ({ placements }) => (placements[0]!.rotationDeg = 37),
      /"front" of pouch, set 1, copy 1 is turned away from its direction \(by 37° where at most 10° is allowed\); turn it/,
    ],
    [
      'a strap slides out of its row',
      ({ placements }) => (placements.find(({ piece }) => piece === 'strap')!.y += 0.5),
      /"strap" of belt, set 1, copy 1 does not keep to the lane "straps"/,
    ],
    [
      'a piece is gone',
      ({ placements }) => placements.splice(1, 1),
      /"back" of pouch, set 1, copy 1 is laid more or fewer times than the order asks/,
    ],
    [
      'a piece is not what its hash says',
      ({ pieces }) => (pieces[0]!.hash = ZEROS),
      /The stored shape of "front" of pouch is not the one that its hash was taken of/,
    ],
    [
      'a hide was changed',
      ({ hides }) => (hides[0]!.hash = ZEROS),
      /Hide side-one was changed after this layout was made; lay the order anew/,
    ],
    [
      'a yield figure is made up',
      (layout) => (layout.yield.total.grossYield = 0.5),
      /The yield figures of all hides are not what its placements give \(gross yield\)/,
    ],
  ])('when %s, it ends with 1 and names piece and cause', async (name, edit, words) => {
    const run = await checkEdited(name.replaceAll(' ', '-'), edit);
    expect(run.status, run.stdout + run.stderr).toBe(1);
    expect(run.stdout).toMatch(/not proven\. \d+ things? (is|are) wrong:/);
    const errors = run.stdout.split('\n').filter((line) => line.startsWith('error: '));
    expect(
      errors.filter((line) => words.test(line)),
      run.stdout,
    ).toHaveLength(1);
    for (const line of errors) expect(line).not.toMatch(/Mm2|undefined|NaN/);
  });
});
