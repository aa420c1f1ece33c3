// From a photo to the cutting table: a simulated photo of an invented side of leather becomes a hide, and an order is
// laid on it. Run by "npm run demo -- photo"; everything lands in demo-out.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

/** The side of the photo benchmark that is not too large for a demo. */
const SCENE = 'side-300';

/** Straps and saddlebags, all invented; patterns are those of the other demo. */
const ORDER = `# Invented data: what is cut from a side of leather that was photographed on the workshop's floor.
format: hidebound/order@1
name: Saddlebags from a photographed side
date: "2026-04-13"
cutting: hand knife
leathers:
  body: { thickness: 2.0-3.0 mm, hides: [photo-side.hide.json] }
articles:
  - name: saddlebag
    goods: saddlebag
    sets: 2
    pieces:
      - { name: front, leather: body, part: front, pattern: ../fixtures/demo/patterns/saddlebag-front.svg, piece: saddlebag-front }
      - { name: back and flap, leather: body, part: flap, pattern: ../fixtures/demo/patterns/saddlebag-back.svg, piece: saddlebag-back, direction: { rule: along, tolerance: 10 } }
  - name: tool roll
    goods: tool roll
    sets: 1
    pieces:
      - { name: body, leather: body, part: front, pattern: ../fixtures/demo/patterns/toolroll-body.svg, piece: toolroll-body }
      - { name: pockets, leather: body, part: pocket, pattern: ../fixtures/demo/patterns/toolroll-pockets.svg, piece: toolroll-pockets }
  - name: shoulder strap
    goods: strap
    sets: 1
    pieces:
      - { name: strap, leather: body, part: strap, strap: { width: 30, length: 700, holeEnd: pointed, buckleEnd: square } }
`;

/** `tools` has the folder's paths and a way to run the command. */
export async function demoFromPhoto({ root, out, hidebound, seconds }) {
  const inOut = (name) => join(out, name);
  console.log(
    'A side of leather is photographed on the floor (the photo is simulated, all data is invented).\n',
  );
  hidebound('markers', '--sheets', '1-4', '--pdf', inOut('reference-sheets.pdf'));
  console.log('1. Four reference sheets to print.');

  const photo = inOut('photo-side.jpg');
  const { bars, areaMm2 } = await photograph(root, join(root, photo));
  console.log('2. The photo, 12 megapixels: the side, the four sheets around it, chalk on it.');

  const hide = inOut('photo-side.hide.json');
  const asked = ['--up', 'grain', '--cut', 'side', '--thickness', '2.0-2.6 mm', '--tannage', 'vegetable'];
  const sold = `${(areaMm2 / 1e6).toFixed(2)} m2`;
  const figures = ['--bars', bars, '--check-area', sold];
  const traced = hidebound(
    'trace',
    photo,
    ...asked,
    ...figures,
    '--out',
    hide,
    '--picture',
    inOut('photo-side.svg'),
  );
  const { report } = traced;
  const off = 100 * (report.areaMm2 / areaMm2 - 1);
  console.log(
    `3. Traced: ${(report.areaMm2 / 1e6).toFixed(3)} m², at most ${(100 * report.areaErrorShare).toFixed(1)} % off as it says itself; in truth ${off.toFixed(2)} %.`,
  );
  console.log(`   Chalked flaws: ${report.chalkFlaws}; possible ones: ${traced.hide.candidates.length}.`);

  const decided = hidebound(
    'hide',
    hide,
    '--take',
    'all',
    '--confirm',
    'backbone',
    '--picture',
    inOut('photo-side-decided.svg'),
  );
  console.log(`4. Looked at and decided: ${decided.hide.flaws.length} flaws.`);

  const order = inOut('photo-goods.order.yaml');
  writeFileSync(join(root, order), ORDER);
  const layout = inOut('photo-goods.layout.json');
  const lay = hidebound('lay', order, '--seconds', String(seconds), '--out', layout);
  hidebound('check', layout);
  console.log(`5. Laid and proven: ${lay.placed} of ${lay.asked} pieces.`);

  const sheet = inOut('photo-goods.sheet.pdf');
  const page = inOut('photo-goods.page.svg');
  hidebound('sheet', layout, '--pdf', sheet, '--page-svg', page, '--page', 'A3');
  console.log('6. The cutting sheet, the photo faint below its lines.\n');
  for (const [what, file] of [
    ['Photo (simulated)', photo],
    ['Hide file', hide],
    ['Hide over its photo', inOut('photo-side.svg')],
    ['Cutting sheet', sheet],
    ['  page', page],
  ]) {
    console.log(`${what.padEnd(20)} ${file}`);
  }
}

/** Photographs the scene, and says what is true of it: what a rule shows of its sheets, and how large the side is. */
async function photograph(root, file) {
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-demo-'));
  try {
    const camera = join(folder, 'camera.mjs');
    await build({
      entryPoints: [join(root, 'tests/camera/index.ts')],
      bundle: true,
      format: 'esm',
      platform: 'node',
      outfile: camera,
      logLevel: 'error',
      // Some packages below are of the older kind and ask for Node's own modules.
      banner: {
        js: "import { createRequire as bundleRequire } from 'node:module'; const require = bundleRequire(import.meta.url);",
      },
    });
    const { BENCH_SCENES, encodePhoto, renderScene } = await import(camera);
    const scene = BENCH_SCENES.find(({ name }) => name === SCENE);
    const picture = renderScene(scene);
    writeFileSync(file, await encodePhoto(picture, scene.jpegQuality, root));
    const { acrossMm, downMm } = scene.sheets.readings;
    return { bars: `${acrossMm} x ${downMm}`, areaMm2: areaOf(picture.truth.hides[0].outline) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function areaOf(ring) {
  const next = (i) => ring[(i + 1) % ring.length];
  return Math.abs(ring.reduce((sum, p, i) => sum + p.x * next(i).y - p.y * next(i).x, 0) / 2);
}
