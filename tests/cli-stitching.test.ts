import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DEMO, hideboundHere, testFolder } from './cli-support.js';

const folder = testFolder();
const FRONT = join(DEMO, 'patterns', 'saddlebag-front.svg');

describe('hidebound pieces with a pitch', () => {
  it('when an iron is said, its holes are told and drawn, exactly one pitch apart along straight runs', async () => {
    const picture = join(folder, 'front.svg');
    const run = await hideboundHere(['pieces', FRONT, '--pitch', '3.9', '--picture', picture, '--json']);
    expect(run.status, run.stderr).toBe(0);
    const [file] = (JSON.parse(run.stdout) as { result: { files: unknown } }).result.files as {
      pieces: { stitches: { line: string; pitchMm: number; gave: string; holes: number[][] }[] }[];
    }[];
    const seam = file!.pieces[0]!.stitches.find(({ line }) => line === 'gusset-seam')!;
    expect(seam).toMatchObject({ pitchMm: 3.9, gave: 'end gap' });
    // 108 + 2 quarter circles of 33.5 + 164 + 108 mm: 485.24 mm hold 124 pitches of 3.9 mm.
    expect(seam.holes).toHaveLength(125);
    const [a, b] = seam.holes as [number[], number[]];
    expect(b[1]! - a[1]!).toBeCloseTo(3.9, 2);
    expect(b[0]).toBe(a[0]);
    expect(readFileSync(picture, 'utf8').length).toBeGreaterThan(2000);
  });

  it('when an awl is said, the table tells how many holes, and by what the pitch gave', async () => {
    const run = await hideboundHere(['pieces', FRONT, '--pitch', '4 mm', '--with', 'awl']);
    expect(run.stdout).toMatch(/saddlebag-front +gusset-seam +485\.2 +4\.01 +122 +4 mm asked/);
  });

  it.each([
    ['8 spi', /8 stitches to the inch are 3\.175 mm apart/],
    ['8', /8 without a unit may be 8 mm/],
    ['wide', /"wide" is not a length/],
  ])('when %j is given as a pitch, it ends with 2 and one sentence', async (pitch, words) => {
    const run = await hideboundHere(['pieces', FRONT, '--pitch', pitch]);
    expect(run.status).toBe(2);
    expect(run.stderr).toMatch(words);
    expect(run.stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('hidebound lay with stitching', () => {
  const order = (stitch: string): string => {
    const file = join(folder, 'short.order.yaml');
    writeFileSync(
      file,
      `format: hidebound/order@1
name: Short
date: "2026-03-02"
cutting: hand knife
leathers:
  body: { hides: [${join(DEMO, 'side.hide.json')}] }
articles:
  - name: bag
    goods: bag
    sets: 1
    stitch: ${stitch}
    pieces:
      - { name: front, leather: body, part: front, pattern: ${FRONT}, piece: saddlebag-front }
`,
    );
    return file;
  };

  it.each([
    [
      '{ pitch: 40 mm, endGap: 160 }',
      /"pocket-seam" on "front" of bag is 343\.94 mm long, less 160 mm at each end, shorter than one pitch of 40 mm/,
    ],
    ['{ iron: 3.5 }', /There is no iron 3\.5 mm in the workshop's table/],
    ['{ pitch: 4, thread: linen }', /sewn with the thread "linen", which neither it nor the order lists/],
    ['{ pitch: 10 per inch }', /10 stitches to the inch are 2\.54 mm apart/],
  ])('when an order says %s, it ends with 3 before the search, with one sentence', async (stitch, words) => {
    const run = await hideboundHere([
      'lay',
      order(stitch),
      '--effort',
      '0',
      '--out',
      join(folder, 'x.layout.json'),
    ]);
    expect(run.status).toBe(3);
    expect(run.stderr).toMatch(words);
    expect(run.stderr.trim().split('\n')).toHaveLength(1);
  });
});
