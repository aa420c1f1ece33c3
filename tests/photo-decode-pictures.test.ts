import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encodeJpeg } from '@hidebound/intake/node';
import { hideRegion, parseHide } from '@hidebound/leather';
import { loadFontBook } from '@hidebound/render/node';
import { writePdf } from '@hidebound/render';
import type { Drawing } from '@hidebound/render';
import { beforeAll, describe, expect, test } from 'vitest';
import { DEMO, ROOT, hideboundHere, testFolder } from './cli-support.js';
import { outsideProgram, testWith } from './tools/outside.js';
import { readPgm } from './tools/pixels.js';

const folder = testFolder();
const toPixels = outsideProgram('pdftoppm');
const listImages = outsideProgram('pdfimages');

/** The left half black, the right half white, 60 × 40 pixels. */
async function halves(): Promise<Uint8Array> {
  const rgb = new Uint8Array(60 * 40 * 3);
  for (let i = 0; i < rgb.length; i++) rgb[i] = Math.floor(i / 3) % 60 < 30 ? 0 : 255;
  return encodeJpeg({ width: 60, height: 40, rgb }, 95);
}

/** Two pages of 100 × 100 mm with one picture: as it is, and mirrored and turned by a quarter. */
function pages(bytes: Uint8Array): readonly Drawing[] {
  const file = { type: 'image/jpeg', bytes } as const;
  const image = { kind: 'image', file, box: { minX: 20, minY: 30, maxX: 80, maxY: 70 } } as const;
  const page = (elements: Drawing['layers'][number]['elements']): Drawing => ({
    widthMm: 100,
    heightMm: 100,
    title: 'image',
    layers: [{ name: 'photo', elements }],
  });
  const transform = { a: 0, b: -1, c: -1, d: 0, e: 100, f: 100 };
  const faint = { ...image, opacity: 0.5 };
  return [page([image]), page([{ kind: 'group', transform, elements: [faint] }])];
}

describe('pictures in a PDF', () => {
  const pdf = join(folder, 'pictures.pdf');
  beforeAll(async () => {
    writeFileSync(pdf, await writePdf(pages(await halves()), { fonts: loadFontBook(), title: 'Pictures' }));
  });

  testWith(toPixels, 'when a picture is on a page, poppler shows it in its box, turned and faint', () => {
    const shown = (page: number) => {
      const at = String(page);
      const name = join(folder, 'shown');
      toPixels.run(['-r', '50.8', '-gray', '-f', at, '-l', at, '-singlefile', pdf, name]);
      const { width, pixels } = readPgm(readFileSync(`${name}.pgm`));
      // 50.8 dpi are 2 px/mm.
      return (x: number, y: number): number => pixels[y * 2 * width + x * 2]!;
    };
    const plain = shown(1);
    expect([plain(24, 34), plain(24, 66), plain(46, 50)].every((level) => level < 10)).toBe(true);
    expect([plain(54, 50), plain(15, 50), plain(50, 25), plain(50, 75)].every((level) => level > 245)).toBe(
      true,
    );
    // (x, y) goes to (100 - y, 100 - x): black from y = 50 to 80, x = 30 to 70.
    const turned = shown(2);
    for (const level of [turned(34, 76), turned(66, 76), turned(50, 54)]) {
      expect(Math.abs(level - 128)).toBeLessThan(6);
    }
    expect([turned(50, 46), turned(24, 60), turned(50, 85)].every((level) => level > 245)).toBe(true);
  });

  testWith(listImages, 'when a picture stands on two pages, the file holds it once', () => {
    const rows = listImages.run(['-list', pdf]).toString().trim().split('\n').slice(2);
    expect(rows.map((row) => row.trim().split(/\s+/)[0])).toEqual(['1', '2']);
    const objects = new Set(rows.map((row) => row.trim().split(/\s+/)[10]));
    expect(objects.size).toBe(1);
  });

  test('when the same picture is written twice, the bytes are equal', async () => {
    const fonts = loadFontBook();
    const [first, second] = [await halves(), await halves()];
    expect(await writePdf(pages(first), { fonts, title: 'Pictures' })).toEqual(
      await writePdf(pages(second), { fonts, title: 'Pictures' }),
    );
  });
});

describe('the photo beside a hide file', () => {
  const hideFile = join(folder, 'shoulder.hide.json');
  const photo = join(folder, 'shoulder.photo.jpg');

  /** The demo's shoulder with an invented photo: brown leather with a dark stroke, 0.5 px/mm, 40 mm around. */
  beforeAll(async () => {
    const text = readFileSync(join(DEMO, 'shoulder.hide.json'), 'utf8');
    const { outer } = hideRegion(parseHide(text, { file: 'shoulder' }));
    const [width, height] = [
      Math.ceil((Math.max(...outer.map(({ x }) => x)) + 80) / 2),
      Math.ceil((Math.max(...outer.map(({ y }) => y)) + 80) / 2),
    ];
    const rgb = new Uint8Array(width * height * 3);
    for (let i = 0; i < rgb.length; i += 3) {
      const isStroke = Math.abs(Math.floor(i / 3 / width) - height / 2) < 3;
      rgb.set(isStroke ? [60, 40, 30] : [150, 100, 70], i);
    }
    writeFileSync(photo, await encodeJpeg({ width, height, rgb }, 90));
    const value = JSON.parse(text) as Record<string, unknown>;
    value['photo'] = {
      file: 'shoulder.photo.jpg',
      pxPerMm: 0.5,
      origin: [-40, -40],
      scaledBy: 'an invented picture',
      errorMm: 2,
    };
    writeFileSync(hideFile, JSON.stringify(value));
  });

  test('when the hide is drawn, its photo is in the picture', async () => {
    const svg = join(folder, 'with.svg');
    const run = await hideboundHere(['hide', hideFile, '--picture', svg]);
    expect(run, run.stderr).toMatchObject({ status: 0 });
    expect(run.stdout).not.toContain('warning');
    expect(readFileSync(svg, 'utf8').match(/<image /g)).toHaveLength(1);
  });

  test('when no photo is wanted, none is drawn', async () => {
    const svg = join(folder, 'without.svg');
    await hideboundHere(['hide', hideFile, '--picture', svg, '--no-photo']);
    expect(readFileSync(svg, 'utf8')).not.toContain('<image');
  });

  test('when the photo is missing or broken, it is told, and the hide is drawn without it', async () => {
    const svg = join(folder, 'bare.svg');
    const kept = readFileSync(photo);
    try {
      rmSync(photo);
      const missing = await hideboundHere(['hide', hideFile, '--picture', svg]);
      expect(missing.status).toBe(0);
      expect(missing.stdout).toMatch(
        /warning: Hide \S+ is drawn without its photo\. .*There is no such file/,
      );
      expect(readFileSync(svg, 'utf8')).not.toContain('<image');
      writeFileSync(photo, kept.subarray(0, kept.length - 40));
      const broken = await hideboundHere(['hide', hideFile, '--picture', svg, '--json']);
      expect(broken.status).toBe(0);
      expect(JSON.parse(broken.stdout)).toMatchObject({
        diagnostics: [{ code: 'photo-not-shown', severity: 'warning' }],
      });
    } finally {
      writeFileSync(photo, kept);
    }
  });

  testWith(
    listImages,
    'when a sheet is made of a large photo, it holds no more of it than its page can show',
    async () => {
      const layouts = join(ROOT, 'fixtures', 'layouts');
      for (const name of ['hand-written.layout.json', 'side-one.hide.json', 'shoulder-two.hide.json']) {
        copyFileSync(join(layouts, name), join(folder, name));
      }
      const side = join(folder, 'side-one.hide.json');
      const value = JSON.parse(readFileSync(side, 'utf8')) as Record<string, unknown>;
      value['photo'] = {
        file: 'large.jpg',
        pxPerMm: 4,
        origin: [-10, -10],
        scaledBy: 'an invented picture',
        errorMm: 2,
      };
      writeFileSync(side, JSON.stringify(value));
      const [width, height] = [4000, 3000];
      const rgb = Uint8Array.from({ length: width * height * 3 }, (_, i) => 90 + (((i * 7919) >> 5) % 40));
      writeFileSync(join(folder, 'large.jpg'), await encodeJpeg({ width, height, rgb }, 80));
      const sheet = async (more: readonly string[]): Promise<Buffer> => {
        const pdf = join(folder, 'large.pdf');
        const layout = join(folder, 'hand-written.layout.json');
        const run = await hideboundHere(['sheet', layout, '--pdf', pdf, ...more]);
        expect(run, run.stderr).toMatchObject({ status: 0 });
        return readFileSync(pdf);
      };
      const plain = await sheet(['--no-photo']);
      const shown = await sheet([]);
      const [row] = listImages
        .run(['-list', join(folder, 'large.pdf')])
        .toString()
        .trim()
        .split('\n')
        .slice(2);
      const [, , , columns, rows] = row!.trim().split(/\s+/);
      // 200 dpi along the longer side of A4, 297 mm: 2339 px.
      expect(Number(columns)).toBe(2339);
      expect(Number(rows)).toBe(Math.round((2339 * 3) / 4));
      expect(shown.length - plain.length).toBeLessThan(1_500_000);
    },
  );
});
