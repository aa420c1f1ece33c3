import type { G } from '@svgdotjs/svg.js';
import type { App } from '../../../../app/app.js';
import type { Stage } from '../../../../drawing/stage.js';

/** How a hide lies ready for its photo, drawn in mm: sheets beyond its corners, chalk on what is known. */
export function openWaysStage(app: App, stage: Stage): () => void {
  const layer = stage.layer('how-to');
  layer.addClass('how-to');
  layer.path(HIDE).attr({ class: 'how-hide' });
  layer.path(CHALK).attr({ class: 'how-chalk' });
  for (const sheet of SHEETS) drawSheet(layer, sheet);
  word(layer, app.say('hide.how.chalk'), 1240, 960);
  word(layer, app.say('hide.how.sheets'), 1250, 215);
  stage.setPhoto(undefined);
  stage.fit({ minX: 0, minY: 0, maxX: 2500, maxY: 1820 });
  return () => layer.remove();
}

/** Invented: a whole hide, neck to the left. */
const HIDE =
  'M 420 800 C 430 700 520 690 600 640 C 690 580 640 470 600 390 C 640 330 730 340 780 420 C 820 500 860 520 960 500 ' +
  'C 1250 440 1450 450 1640 500 C 1720 520 1760 470 1800 400 C 1850 330 1940 350 1960 420 C 1930 520 1960 600 2000 690 ' +
  'C 2040 800 2040 1000 2000 1110 C 1960 1200 1930 1290 1960 1390 C 1940 1460 1850 1480 1800 1410 C 1760 1340 1720 1290 1640 1310 ' +
  'C 1450 1360 1250 1370 960 1310 C 860 1290 820 1310 780 1390 C 730 1470 640 1480 600 1420 C 640 1340 690 1230 600 1170 ' +
  'C 520 1120 430 1110 420 1010 C 400 940 400 870 420 800 Z';

const CHALK =
  'M 1170 760 C 1170 700 1270 700 1270 760 C 1270 820 1170 820 1170 765 M 1560 1060 C 1620 1090 1660 1130 1720 1200';

interface Sheet {
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number;
}

const SHEETS: readonly Sheet[] = [
  { x: 260, y: 300, turnDeg: 8 },
  { x: 2240, y: 290, turnDeg: -12 },
  { x: 260, y: 1540, turnDeg: -6 },
  { x: 2240, y: 1520, turnDeg: 10 },
];

/** A sheet of A4 (ISO 216) with marks in its corners. */
function drawSheet(layer: G, { x, y, turnDeg }: Sheet): void {
  const sheet = layer.group().attr({ transform: `translate(${x} ${y}) rotate(${turnDeg})` });
  sheet.path('M -105 -148.5 h 210 v 297 h -210 Z').attr({ class: 'how-sheet' });
  for (const [dx, dy] of [
    [-80, -124],
    [20, -124],
    [-80, 64],
    [20, 64],
  ] as const)
    sheet
      .path(`M ${dx} ${dy} h 60 v 60 h -60 Z m 20 20 v 20 h 20 v -20 Z`)
      .attr({ class: 'how-mark', 'fill-rule': 'evenodd' });
}

function word(layer: G, words: string, x: number, y: number): void {
  layer.plain(words).attr({ x, y, class: 'how-word' });
}
