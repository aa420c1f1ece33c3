import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { curveArea, flattenCurve, pointInRing, pointToRing } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import { formatArea, parseHide, writeReferenceSheets } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import { decodePhoto } from '@hidebound/intake/node';
import { beforeAll, describe, expect, test } from 'vitest';
import { judgeTrace } from './camera/index.js';
import type { SimulatedPhoto } from './camera/index.js';
import { expectOneSentence, hideboundHere, testFolder } from './cli-support.js';
import type { Run } from './cli-support.js';
import { photograph, sceneNamed } from './photo-trace-support.js';

const folder = testFolder();
const at = (name: string) => join(folder, name);

let photo: SimulatedPhoto;
let run: Run;

function hideIn(name: string): Hide {
  return parseHide(readFileSync(at(name), 'utf8'), { file: name });
}

const ringOf = (hide: Hide): Ring => flattenCurve(hide.outline).slice(0, -1);

beforeAll(async () => {
  photo = await photograph(sceneNamed('side-300'), at('side.jpg'));
  run = await hideboundHere([
    'trace',
    at('side.jpg'),
    ...['--up', 'grain', '--lot', 'spring', '--thickness', '2.0-2.4 mm', '--tannage', 'vegetable'],
    ...['--check-area', `${formatArea(trueArea(), { unit: 'm2' }).replace(' m²', '')} m2`],
    ...['--picture', at('side.svg')],
  ]);
});

function trueArea(): number {
  const { outline } = photo.truth.hides[0]!;
  return Math.abs(outline.reduce((sum, p, i) => sum + cross(p, outline[(i + 1) % outline.length]!), 0) / 2);
}

const cross = (a: Point, b: Point) => a.x * b.y - a.y * b.x;

describe('a hide traced from a simulated photo', () => {
  test('when the command ends, hide, straightened photo and picture are written, and nothing else', () => {
    expect(run.status, run.stderr).toBe(0);
    expect(readdirSync(folder).sort()).toEqual([
      'side.hide.json',
      'side.jpg',
      'side.straight.jpg',
      'side.svg',
    ]);
    expect(run.stdout).toMatch(/off by .* at most/);
    expect(run.stdout).toMatch(/Next: look at .*--confirm/);
  });

  test('when it is held against the truth, the area is within 1 % and half of the outline within 2 mm', () => {
    const { medianMm, areaError, scaleError } = judgeTrace(hideIn('side.hide.json'), photo.truth.hides[0]!);
    expect(Math.abs(areaError)).toBeLessThan(0.01);
    expect(Math.abs(scaleError)).toBeLessThan(0.005);
    expect(medianMm).toBeLessThan(2);
  });

  test('when what was said on the command line is read back, it stands in the hide file', () => {
    const hide = hideIn('side.hide.json');
    expect(hide).toMatchObject({
      id: 'side',
      lot: 'spring',
      leather: { tannage: 'vegetable', thickness: { minMm: 2, maxMm: 2.4 } },
      photo: { file: 'side.straight.jpg', sideUp: 'grain', takenFrom: ['side.jpg'] },
    });
    expect(hide.guessed).toContain('cut');
    expect(hide.area.invoicedMm2! / trueArea()).toBeCloseTo(1, 3);
    expect(run.stdout).not.toMatch(/sold as/);
  });

  test('when the straightened photo is looked at, leather is where the hide file says', async () => {
    const hide = hideIn('side.hide.json');
    const { pxPerMm, origin } = hide.photo!;
    const picture = await decodePhoto(readFileSync(at('side.straight.jpg')), 'side.straight.jpg');
    const ring = ringOf(hide);
    const brightness = { inside: [] as number[], outside: [] as number[] };
    for (let y = 10; y < picture.height; y += 23) {
      for (let x = 10; x < picture.width; x += 23) {
        const place = { x: origin.x + (x + 0.5) / pxPerMm, y: origin.y + (y + 0.5) / pxPerMm };
        if (pointToRing(place, ring) < 8) continue;
        const side = pointInRing(place, ring) === 'outside' ? 'outside' : 'inside';
        brightness[side].push(picture.rgb[(y * picture.width + x) * 3]!);
      }
    }
    const middle = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1]!;
    expect(middle(brightness.inside)).toBeGreaterThan(middle(brightness.outside) + 60);
    const wrong = brightness.outside.filter((value) => value > 120).length;
    expect(wrong / brightness.outside.length).toBeLessThan(0.12);
  });

  test('when it is told that the flesh side lay upwards, the hide is the mirror image', async () => {
    const out = at('flesh.hide.json');
    const flesh = await hideboundHere([
      'trace',
      at('side.jpg'),
      '--up',
      'flesh',
      '--thickness',
      '2.2',
      '--out',
      out,
      '--no-candidates',
    ]);
    expect(flesh.status, flesh.stderr).toBe(0);
    const [grain, mirrored] = [hideIn('side.hide.json'), hideIn('flesh.hide.json')];
    expect(mirrored.photo!.sideUp).toBe('flesh');
    const width = Math.max(...ringOf(grain).map(({ x }) => x));
    const back = ringOf(mirrored).map(({ x, y }) => ({ x: width - x, y }));
    const off = ringOf(grain).map((p) => pointToRing(p, back));
    expect(Math.max(...off)).toBeLessThan(0.1);
    expect(curveArea(mirrored.outline)).toBeCloseTo(curveArea(grain.outline), 0);
  });

  test('when the sheets are said to be printed 1 % large, the hide is 1 % longer and 2 % larger', async () => {
    const printed = [
      { sheets: [1, 2, 3, 4, 5, 6, 7, 8], paper: 'A4' as const, acrossMm: 161.6, downMm: 222.2 },
    ];
    writeFileSync(at('reference-sheets.json'), writeReferenceSheets({ printed }));
    const out = at('large.hide.json');
    const large = await hideboundHere([
      'trace',
      at('side.jpg'),
      '--up',
      'grain',
      '--thickness',
      '2.2',
      '--out',
      out,
      '--no-candidates',
    ]);
    expect(large.status, large.stderr).toBe(0);
    expect(large.stdout).toContain('reference-sheets.json');
    const ratio = curveArea(hideIn('large.hide.json').outline) / curveArea(hideIn('side.hide.json').outline);
    expect(ratio).toBeCloseTo(1.01 ** 2, 3);
  });

  test('when a hide file is there already, it is not written over unless it is named', async () => {
    const again = await hideboundHere(['trace', at('side.jpg'), '--up', 'grain']);
    expect(again.status).toBe(2);
    expect(expectOneSentence(again)).toMatch(/there already/);
  });

  test('when nobody says which side lay upwards, it is asked', async () => {
    const unsaid = await hideboundHere(['trace', at('side.jpg'), '--out', at('unsaid.hide.json')]);
    expect(unsaid.status).toBe(2);
    expect(expectOneSentence(unsaid)).toMatch(/--up grain or --up flesh/);
  });
});
