import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { ringArea, ringBox } from '@hidebound/geometry';
import { parseHide, writeReferenceSheets } from '@hidebound/leather';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { project } from './camera/index.js';
import type { Scene, SimulatedPhoto } from './camera/index.js';
import { expectOneSentence, hideboundHere, startHidebound, testFolder } from './cli-support.js';
import type { Run } from './cli-support.js';
import {
  cutBelow,
  photograph,
  sceneNamed,
  withGlare,
  withoutSheets,
  writePhoto,
} from './photo-trace-support.js';

const folder = testFolder();
const kept = testFolder();
const at = (name: string) => join(folder, name);

let photo: SimulatedPhoto;
let jpeg: Buffer;

beforeAll(async () => {
  photo = await photograph(sceneNamed('side-300'), join(kept, 'side.jpg'));
  jpeg = readFileSync(join(kept, 'side.jpg'));
});

beforeEach(() => {
  for (const name of readdirSync(folder)) rmSync(at(name));
});

const trace = (file: string, ...more: readonly string[]): Promise<Run> =>
  hideboundHere(['trace', at(file), '--up', 'grain', '--no-candidates', ...more]);

/** Refused in one sentence, and nothing lies beside the photo. */
async function expectNothingOf(file: string, words: RegExp, ...more: readonly string[]): Promise<void> {
  const before = readdirSync(folder).sort();
  const run = await trace(file, ...more);
  expect(run.status, run.stdout).toBe(3);
  const told = run.stderr.split('\n').filter((line) => line.startsWith('hidebound: '));
  expect(told, run.stderr).toHaveLength(1);
  expect(told[0]).toMatch(words);
  expect(told[0]).not.toMatch(/should not have happened/);
  expect(readdirSync(folder).sort()).toEqual(before);
}

/** The first bytes of a PNG that says it has so many pixels. */
function pngOf(width: number, height: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const rows = deflateSync(Buffer.alloc(1000));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

/** As the PNG standard (ISO/IEC 15948, annex D) gives it. */
function crc32(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

describe('photos that can not be traced', () => {
  test('when the file is no picture, it says what would be one', async () => {
    writeFileSync(at('side.jpg'), 'A side of leather, photographed in words.\n');
    await expectNothingOf('side.jpg', /no photo that can be read here; give a JPEG/);
  });

  test('when the file stops in the middle, it is to be copied again', async () => {
    writeFileSync(at('side.jpg'), jpeg.subarray(0, Math.floor(jpeg.length * 0.6)));
    await expectNothingOf('side.jpg', /damaged or stops in the middle/);
  });

  test('when the header promises more pixels than any camera has, none of them is read', async () => {
    writeFileSync(at('bomb.png'), pngOf(60_000, 60_000));
    await expectNothingOf('bomb.png', /60,000 × 60,000/);
  });

  test('when one photo is given twice, it is refused before any work', async () => {
    writeFileSync(at('side.jpg'), jpeg);
    const run = await trace('side.jpg', '--other-side', at('side.jpg'));
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/given twice/);
    expect(readdirSync(folder)).toEqual(['side.jpg']);
  });

  test('when pieces and scraps are asked for at once, that is refused before anything is read', async () => {
    const run = await hideboundHere(['trace', at('absent.jpg'), '--pieces', '--scraps', '--up', 'grain']);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/do not go together/);
  });

  test('when the phone saved HEIC, the way to JPEG is told', async () => {
    const box = Buffer.concat([
      Buffer.from([0, 0, 0, 24]),
      Buffer.from('ftypheic\0\0\0\0mif1heic', 'latin1'),
    ]);
    writeFileSync(at('side.heic'), Buffer.concat([box, Buffer.alloc(5000)]));
    await expectNothingOf('side.heic', /JPEG/);
  });

  test('when there is no such file, it says so', async () => {
    await expectNothingOf('none.jpg', /no such file/);
  });

  test('when no reference sheet is in it, nothing tells the scale', async () => {
    await writePhoto(
      withoutSheets(photo, () => true),
      at('side.jpg'),
    );
    await expectNothingOf('side.jpg', /No reference sheet was found/);
  });

  test('when the hints break off, their line is named', async () => {
    writeFileSync(at('side.jpg'), jpeg);
    writeFileSync(
      at('my.hints.yaml'),
      'format: hidebound/photo-hints@1\nphotos:\n  - photo: side.jpg\n    egde: []\n',
    );
    await expectNothingOf(
      'side.jpg',
      /my\.hints\.yaml:4.*egde.*Did you mean "edge"/,
      '--hints',
      at('my.hints.yaml'),
    );
  });

  test('when the bars are typed in wrongly, they are refused before any work', async () => {
    writeFileSync(at('side.jpg'), jpeg);
    const run = await trace('side.jpg', '--bars', '195 x 219');
    expect([2, 3]).toContain(run.status);
    expect(expectOneSentence(run)).toMatch(/195/);
    expect(readdirSync(folder)).toEqual(['side.jpg']);
  });
});

describe('photos that are traced with a warning', () => {
  const warnings = (run: Run) => run.stdout.split('\n').filter((line) => line.startsWith('warning: '));

  test('when only one sheet is in it, the errors grow and the remedy is told', async () => {
    await writePhoto(
      withoutSheets(photo, (sheet) => sheet !== 1),
      at('side.jpg'),
    );
    const run = await trace('side.jpg');
    expect(run.status, run.stderr).toBe(0);
    expect(warnings(run).join('\n')).toMatch(/one sheet|only one/i);
    const { photo: known } = parseHide(readFileSync(at('side.hide.json'), 'utf8'), { file: 'side' });
    expect(known!.areaErrorShare).toBeGreaterThan(0.01);
  });

  test('when there are no sheets, but the hide lies within a rectangle of known sides, that gives the scale', async () => {
    const scene = sceneNamed('side-300', 1400);
    const bare: Scene = {
      ...scene,
      view: { ...scene.view, fill: 0.85 },
      sheets: { ...scene.sheets, count: 0 },
    };
    const { truth } = await photograph(bare, at('side.jpg'));
    const [truly] = truth.hides as [(typeof truth.hides)[number]];
    const box = ringBox(truly.outline);
    const [left, right, top, bottom] = [box.minX - 30, box.maxX + 30, box.minY - 30, box.maxY + 30];
    const corners = [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ].map(([x, y]) => project(truth.camera, { x: x!, y: y!, z: 0 }));
    const sides = `${(right - left).toFixed(1)} x ${(bottom - top).toFixed(1)}`;
    const stated = `${corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')} = ${sides}`;
    const run = await trace('side.jpg', '--rectangle', stated);
    expect(run.status, run.stderr).toBe(0);
    const hide = parseHide(readFileSync(at('side.hide.json'), 'utf8'), { file: 'side' });
    // Four corners tell nothing of how the lens bends lines; no more than the page says it can be off.
    expect(Math.abs(hide.area.measuredMm2! / Math.abs(ringArea(truly.outline)) - 1)).toBeLessThan(0.03);
  });

  test('when sheets of two printings are mixed up, they do not fit together and that is told', async () => {
    writeFileSync(at('side.jpg'), jpeg);
    const printed = [
      { sheets: [1, 2], paper: 'A4' as const, acrossMm: 160, downMm: 220 },
      { sheets: [3, 4], paper: 'A4' as const, acrossMm: 166.4, downMm: 228.8 },
    ];
    writeFileSync(at('reference-sheets.json'), writeReferenceSheets({ printed }));
    const run = await trace('side.jpg');
    expect(run.status, run.stderr).toBe(0);
    expect(warnings(run).join('\n')).toMatch(/sheet/);
  });

  test('when the hide leaves the picture, that is told and the stretch is unsure', async () => {
    await writePhoto(cutBelow(photo, Math.round(photo.height * 0.7)), at('side.jpg'));
    const run = await trace('side.jpg');
    expect(run.status, run.stderr).toBe(0);
    expect(warnings(run).join('\n')).toMatch(/beyond|leaves/);
    const hide = parseHide(readFileSync(at('side.hide.json'), 'utf8'), { file: 'side' });
    expect(hide.unsureEdges.length).toBeGreaterThan(0);
    // Nobody can say how far off the area of what is not seen is.
    expect(run.stdout).toMatch(/^area .* of what the photo shows; the whole hide is larger$/m);
    expect(run.stdout).toMatch(/^possible +not looked for$/m);
  });

  test('when light is blown out on the leather, it is still one hide, and the glare is told', async () => {
    const middle = { x: photo.width * 0.45, y: photo.height * 0.45 };
    await writePhoto(withGlare(photo, middle, photo.width * 0.06), at('side.jpg'));
    const run = await trace('side.jpg');
    expect(run.status, run.stderr).toBe(0);
    const glare = parseHide(readFileSync(at('side.hide.json'), 'utf8'), { file: 'side' });
    expect(run.stdout).toMatch(/glare|blown|bright/i);
    expect(glare.area.measuredMm2! / 1e6).toBeGreaterThan(1.4);
  });
});

test('when it is stopped by hand, nothing is half written', async () => {
  writeFileSync(at('side.jpg'), jpeg);
  const child = startHidebound(['trace', at('side.jpg'), '--up', 'grain'], folder);
  const ended = new Promise<void>((done) => child.on('exit', () => done()));
  await new Promise<void>((done) => {
    child.stderr!.on('data', (text: Buffer) => {
      if (text.toString().includes('looking for reference sheets')) done();
    });
  });
  child.kill('SIGINT');
  await ended;
  expect(readdirSync(folder)).toEqual(['side.jpg']);
});
