import { settingOut } from '@hidebound/leather';
import { drawSettingOut, writePdf, writeSvg } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { expect, test } from 'vitest';
import { sampleHide } from '../packages/render/src/sample/sample-hide.js';
import { sampleLayout } from '../packages/render/src/sample/sample-layout.js';
import { SAMPLE_KINDS } from '../packages/render/src/sample/sample-pieces.js';
import { expectGolden } from './tools/golden.js';
import { pdfJudge } from './tools/pdf-judge.js';

const fonts = loadFontBook();
const shoulder = sampleHide({ id: 'shoulder-02', kind: 'shoulder', seed: 4, flaws: 9 });
const kinds = SAMPLE_KINDS.filter((kind) => kind.article !== 'Tool roll');
const layout = sampleLayout({ hides: [shoulder], sets: 1, seed: 2, kinds });
const pages = drawSettingOut({ layout, hides: [shoulder], page: 'A4', fonts });

// Judge: pdf.js, the texts that it finds on each page.
test('when a sheet for setting out is read by pdf.js, each piece stands with its measures in one row', async () => {
  const { getDocument } = await pdfJudge();
  const data = await writePdf(pages, { fonts, title: 'Setting out' });
  const document = await getDocument({ data, useSystemFonts: false }).promise;
  const rows = new Map<string, string[]>();
  for (let number = 2; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    for (const item of items) {
      if (!('str' in item) || item.str.trim() === '') continue;
      const row = `${number}:${Math.round((item.transform as number[])[5]!)}`;
      rows.set(row, [...(rows.get(row) ?? []), item.str]);
    }
  }
  const steps = settingOut(layout, shoulder).steps.filter(({ kind }) => kind === 'piece');
  expect(steps.length).toBe(layout.placements.length);
  const figure = (mm: number): string => `${mm < 0 ? '−' : ''}${Math.abs(mm).toFixed(1)}`;
  for (const step of steps) {
    if (step.kind !== 'piece') throw new Error('Only pieces are laid here.');
    const { number, a, b } = step.piece;
    const row = [...rows.values()].find((texts) => texts[0] === number && texts.length > 3);
    expect(row, number).toBeDefined();
    const read = row!.join(' ').replace(/[LR] /g, '');
    for (const { measure } of [a, ...(b === undefined ? [] : [b])]) {
      expect(read).toContain(figure(measure.alongMm));
      expect(read).toContain(Math.abs(measure.outMm).toFixed(1));
    }
  }
  await document.destroy();
});

test('when a sheet for setting out is drawn, its pages are as they were approved', () => {
  expectGolden('setting-out-picture.svg', writeSvg(pages[0]!));
  expectGolden('setting-out-measures.svg', writeSvg(pages[1]!));
});

test('when it is written twice, the files are equal byte by byte', async () => {
  const again = drawSettingOut({ layout, hides: [shoulder], page: 'A4', fonts });
  const options = { fonts, title: 'Setting out' };
  expect(await writePdf(again, options)).toEqual(await writePdf(pages, options));
});
