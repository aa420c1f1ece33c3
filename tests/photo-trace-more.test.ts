import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { parseHide, parsePhotoHints } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { judgeTrace } from './camera/index.js';
import type { Scene } from './camera/index.js';
import { expectOneSentence, hideboundHere, testFolder } from './cli-support.js';
import { photograph, sceneNamed } from './photo-trace-support.js';

const folder = testFolder();
const at = (name: string) => join(folder, name);
const side = sceneNamed('side-300');
const [hide] = side.hides as [Scene['hides'][number]];

function hideIn(name: string) {
  return parseHide(readFileSync(at(name), 'utf8'), { file: name });
}

describe('several scraps in one photo', () => {
  const scrap = (x: number, y: number, lengthMm: number) =>
    ({ ...hide, form: 'scrap', lengthMm, at: { x, y }, openings: 0 }) as const;
  const scene: Scene = {
    ...side,
    hides: [scrap(-450, -250, 420), scrap(150, -280, 500), scrap(-300, 260, 350)],
  };

  test('when they are traced, each is an offcut of its own with its own photo, and a picture has the numbers', async () => {
    const { truth } = await photograph(scene, at('scraps.jpg'));
    const run = await hideboundHere([
      'trace',
      '--scraps',
      at('scraps.jpg'),
      '--up',
      'grain',
      '--lot',
      'box 4',
    ]);
    expect(run.status, run.stderr).toBe(0);
    const written = readdirSync(folder).filter((name) => name.startsWith('scrap-'));
    expect(written.sort()).toEqual([
      'scrap-1.hide.json',
      'scrap-1.scraps.pdf',
      'scrap-1.straight.jpg',
      'scrap-2.hide.json',
      'scrap-2.straight.jpg',
      'scrap-3.hide.json',
      'scrap-3.straight.jpg',
    ]);
    truth.hides.forEach((one, i) => {
      const traced = hideIn(`scrap-${i + 1}.hide.json`);
      expect(traced).toMatchObject({ id: `scrap-${i + 1}`, cut: 'offcut', lot: 'box 4' });
      expect(Math.abs(judgeTrace(traced, one).areaError)).toBeLessThan(0.02);
    });
  });

  test('when another photo follows, its numbers go on', async () => {
    await photograph({ ...scene, hides: [scrap(0, 0, 500)] }, at('more.jpg'));
    const run = await hideboundHere(['trace', '--scraps', at('more.jpg'), '--up', 'grain']);
    expect(run.status, run.stderr).toBe(0);
    expect(hideIn('scrap-4.hide.json').photo!.file).toBe('scrap-4.straight.jpg');
  });
});

test('when cards were scanned, they become a pattern that has their true size', async () => {
  // Drawn by resvg at 200 px to the inch: 210 × 150 mm have 1654 × 1181 px.
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="1654" height="1181" viewBox="0 0 210 150">
    <rect width="210" height="150" fill="#2b3036"/>
    <rect x="15" y="20" width="80" height="60" rx="10" fill="#d9c7a0"/>
    <circle cx="35" cy="50" r="2.5" fill="#2b3036"/>
    <path d="M115 30 H190 V120 H140 Z" fill="#e0d0ac"/></svg>`;
  writeFileSync(at('cards.png'), new Resvg(svg).render().asPng());
  const traced = await hideboundHere([
    'trace',
    '--pieces',
    at('cards.png'),
    '--dpi',
    '200',
    '--names',
    'pocket, flap',
  ]);
  expect(traced.status, traced.stderr).toBe(0);
  const read = await hideboundHere(['pieces', at('cards.pieces.svg'), '--json']);
  const { result } = JSON.parse(read.stdout) as {
    result: { files: { pieces: { name: string; widthMm: number; heightMm: number }[] }[] };
  };
  const [pocket, flap] = result.files[0]!.pieces;
  expect([pocket!.name, flap!.name]).toEqual(['pocket', 'flap']);
  expect(Math.abs(pocket!.widthMm - 80)).toBeLessThan(0.3);
  expect(Math.abs(pocket!.heightMm - 60)).toBeLessThan(0.3);
  expect(Math.abs(flap!.widthMm - 75)).toBeLessThan(0.3);
});

test('when nothing tells how large cards are, the ways to say it are told', async () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600"><rect width="800" height="600"/><rect x="200" y="150" width="400" height="300" fill="#fff"/></svg>';
  writeFileSync(at('plain.png'), new Resvg(svg).render().asPng());
  const run = await hideboundHere(['trace', '--pieces', at('plain.png')]);
  expect(run.status).toBe(3);
  expect(run.stderr).toMatch(/--dpi.*reference sheet/);
  expect(readdirSync(folder)).not.toContain('plain.pieces.svg');
});

describe('several photos of one hide', () => {
  const crossed: Scene = { ...side, hides: [{ ...hide, marks: { ...hide.marks, chalkCrosses: 4 } }] };
  const other: Scene = { ...crossed, view: { ...side.view, tiltDeg: 12, towardsDeg: 200, rollDeg: 4 } };

  test('when crosses join two photos of leather that was dragged, one hide comes out, and the misfit is told', async () => {
    const { truth } = await photograph(crossed, at('one.jpg'));
    await photograph(other, at('two.jpg'));
    const asked = ['--up', 'grain', '--no-candidates', '--moved', '--out', at('moved.hide.json')];
    const run = await hideboundHere(['trace', at('one.jpg'), at('two.jpg'), ...asked]);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toMatch(/fit together within \d/);
    expect(Math.abs(judgeTrace(hideIn('moved.hide.json'), truth.hides[0]!).areaError)).toBeLessThan(0.01);
  });

  test('when a photo of the other side shows another outline, it is refused', async () => {
    const run = await hideboundHere(['trace', at('one.jpg'), '--other-side', at('two.jpg'), '--up', 'grain']);
    expect(run.status).toBe(3);
    expect(run.stderr).toMatch(/could not be laid onto the hide/);
    expect(readdirSync(folder)).not.toContain('one.hide.json');
  });

  test('when dragged leather and low light are asked for together, it is refused before any work', async () => {
    const run = await hideboundHere([
      'trace',
      at('one.jpg'),
      '--moved',
      '--raking',
      at('two.jpg'),
      '--up',
      'grain',
    ]);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/do not go together/);
  });

  test('when hints lie in another folder, a copy is kept beside the hide, and never written over', async () => {
    mkdirSync(at('notes'));
    const hints = at('notes/my.hints.yaml');
    const head = 'format: hidebound/photo-hints@1\nphotos:\n  - photo: ../one.jpg\n';
    writeFileSync(hints, `${head}    floor: [[[20, 20], [20, 300]]]\n`);
    const asked = ['--up', 'grain', '--no-candidates', '--hints', hints, '--out', at('hinted.hide.json')];
    const run = await hideboundHere(['trace', at('one.jpg'), ...asked]);
    expect(run.status, run.stderr).toBe(0);
    const { photo } = hideIn('hinted.hide.json');
    expect(photo!.hints).toBe('hinted.hints.yaml');
    expect(photo!.floorStrokes).toHaveLength(1);
    const copy = readFileSync(at('hinted.hints.yaml'), 'utf8');
    expect(parsePhotoHints(copy, { file: 'hinted.hints.yaml' }).photos[0]!.photo).toBe('one.jpg');
    writeFileSync(hints, `${head}    edge: [[20, 20]]\n`);
    const again = await hideboundHere(['trace', at('one.jpg'), ...asked]);
    expect(again.status).toBe(2);
    expect(expectOneSentence(again)).toMatch(/holds other hints/);
    expect(readFileSync(at('hinted.hints.yaml'), 'utf8')).toBe(copy);
  });

  test('when the leather lay still in two photos, nobody is told that it moved', async () => {
    const still = await hideboundHere([
      'trace',
      at('one.jpg'),
      at('two.jpg'),
      '--up',
      'grain',
      '--no-candidates',
    ]);
    expect(still.status, still.stderr).toBe(0);
    expect(still.stdout).not.toMatch(/if it was dragged along/);
  });
});
