import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHide, parseLayout } from '@hidebound/leather';
import { describe, expect } from 'vitest';
import { encodePhoto, judgeTrace, renderScene } from './camera/index.js';
import { ROOT, hidebound, testFolder } from './cli-support.js';
import { sceneNamed } from './photo-trace-support.js';
import { poppler, printedSheets } from './support/printed-sheets.js';
import { outsideProgram, testWith } from './tools/outside.js';

const folder = testFolder();
const at = (name: string) => join(folder, name);
const pdfimages = outsideProgram('pdfimages');

/** Invented goods. */
const ORDER = `format: hidebound/order@1
name: from a photographed side
date: "2026-03-02"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
keep: [200, 200]
leathers:
  body: { hides: [side.hide.json] }
articles:
  - name: tool roll
    goods: tool roll
    sets: 2
    pieces:
      - { name: body, leather: body, part: stiffener, rectangle: { width: 260, length: 340 } }
      - { name: tie, leather: body, part: strap, strap: { width: 25, length: 700 } }
`;

/** The compiled command, as a person would type it; must end well. */
function run(...args: readonly string[]): string {
  const { status, stdout, stderr } = hidebound(args, { cwd: folder });
  expect(status, stderr + stdout).toBe(0);
  return stdout;
}

describe('from printed sheets and a photo to the cutting sheet', () => {
  // Judges: the simulator's truth for the hide; poppler for the printed sheets and for what the cutting sheet holds.
  testWith(
    poppler,
    'when sheets are printed, the hide photographed, traced, decided on and laid, the sheet shows pieces on its photo',
    async () => {
      const scene = sceneNamed('side-300');
      const photo = renderScene(scene, { sheetPicture: await printedSheets(folder, 'A4', 4) });
      writeFileSync(at('side.jpg'), await encodePhoto(photo, scene.jpegQuality, ROOT));
      const { acrossMm, downMm } = scene.sheets.readings!;
      run('markers', '--measured', `${acrossMm} x ${downMm}`, '--sheets', '1-4');
      expect(run('trace', 'side.jpg', '--up', 'grain')).toMatch(/off by .* at most, by 4 reference sheets/);
      run(
        ...['hide', 'side.hide.json', '--take', 'all', '--confirm', 'backbone,cut', '--picture', 'side.svg'],
      );

      const hide = parseHide(readFileSync(at('side.hide.json'), 'utf8'), { file: 'side.hide.json' });
      expect(hide.candidates).toEqual([]);
      expect(Math.abs(judgeTrace(hide, photo.truth.hides[0]!).areaError)).toBeLessThan(0.006);

      writeFileSync(at('goods.order.yaml'), ORDER);
      run('lay', 'goods.order.yaml', '--effort', '0', '--out', 'goods.layout.json');
      const layout = parseLayout(readFileSync(at('goods.layout.json'), 'utf8'), { file: 'goods' });
      expect(layout.placements).toHaveLength(4);
      expect(run('check', 'goods.layout.json')).toMatch(/proven/);

      run('sheet', 'goods.layout.json', '--pdf', 'goods.pdf');
      expect(pdfimages.run(['-list', at('goods.pdf')]).toString()).toMatch(/jpeg/);
      run('sheet', 'goods.layout.json', '--pdf', 'bare.pdf', '--no-photo');
      expect(pdfimages.run(['-list', at('bare.pdf')]).toString()).not.toMatch(/jpeg/);
    },
  );
});
