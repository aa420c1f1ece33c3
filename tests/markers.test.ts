import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decodePhoto } from '@hidebound/intake/node';
import {
  BAR_MM,
  MARKERS_PER_SHEET,
  MARKER_MM,
  MARKER_QUIET_MM,
  markerCorners,
  markerFields,
  markerId,
  paperNamed,
} from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { loadVision } from '../packages/intake/src/photo/vision/load-vision.js';
import { withMats } from '../packages/intake/src/photo/vision/mats.js';
import type { Vision } from '../packages/intake/src/photo/vision/vision.js';
import { hideboundHere, testFolder } from './cli-support.js';
import { outsideProgram, testWith } from './tools/outside.js';
import { darkBox, readPgm } from './tools/pixels.js';
import type { GreyPicture } from './tools/pixels.js';

const poppler = outsideProgram('pdftoppm');
const cairo = outsideProgram('pdftocairo');
const folder = testFolder();

const PX_PER_MM = 10;

/** A printed page as poppler shows it. */
async function page(sheets: string, paper: string, number = 1): Promise<GreyPicture> {
  const pdf = await printed(sheets, paper);
  const at = String(number);
  const name = join(folder, 'page');
  poppler.run(['-r', String(PX_PER_MM * 25.4), '-gray', '-f', at, '-l', at, '-singlefile', pdf, name]);
  return readPgm(readFileSync(`${name}.pgm`));
}

/** The same as cairo draws it, which smooths each shape by itself: shapes that only touch show a seam. */
async function smoothPage(sheets: string, paper: string, pxPerMm: number): Promise<GreyPicture> {
  const pdf = await printed(sheets, paper);
  const name = join(folder, 'smooth');
  cairo.run(['-r', String(pxPerMm * 25.4), '-png', '-singlefile', pdf, name]);
  const { width, height, rgb } = await decodePhoto(new Uint8Array(readFileSync(`${name}.png`)), name);
  // Red, green and blue are alike.
  return { width, height, pixels: rgb.filter((_, i) => i % 3 === 0) };
}

async function printed(sheets: string, paper: string): Promise<string> {
  const pdf = join(folder, `${sheets}-${paper}.pdf`);
  if (!existsSync(pdf)) {
    const run = await hideboundHere(['markers', '--sheets', sheets, '--paper', paper, '--pdf', pdf]);
    expect(run, run.stderr).toMatchObject({ status: 0 });
  }
  return pdf;
}

/** The paper's place, in mm from its top left corner, of a place on the sheet. */
function onPaper(paper: string, { x, y }: { readonly x: number; readonly y: number }) {
  const { widthMm, heightMm } = paperNamed(paper);
  return { x: x + widthMm / 2, y: y + heightMm / 2 };
}

/** Corners by id, in pixels, as OpenCV's own detector finds them; it refines them on the picture. */
function detected({ width, height, pixels }: GreyPicture, vision: Vision): Map<number, number[]> {
  return withMats((keep) => {
    const picture = keep(new vision.Mat(height, width, vision.CV_8UC1));
    picture.data.set(pixels);
    const parameters = keep(new vision.aruco_DetectorParameters());
    Object.assign(parameters, { cornerRefinementMethod: REFINE_SUBPIXEL });
    const detector = keep(
      new vision.aruco_ArucoDetector(
        vision.getPredefinedDictionary(vision.DICT_APRILTAG_36h11),
        parameters,
        keep(new vision.aruco_RefineParameters(10, 3, true)),
      ),
    );
    const corners = keep(new vision.MatVector());
    const ids = keep(new vision.Mat());
    detector.detectMarkers(picture, corners, ids, keep(new vision.MatVector()));
    return new Map(
      Array.from({ length: corners.size() }, (_, i) => [ids.data32S[i]!, [...keep(corners.get(i)).data32F]]),
    );
  });
}

/** `CORNER_REFINE_SUBPIX` of OpenCV. */
const REFINE_SUBPIXEL = 1;

describe.each(['A4', 'Letter'])('reference sheets on %s', (paper) => {
  testWith(
    poppler,
    'when a sheet is printed, OpenCV finds its four markers within 0.1 mm of the plan',
    async () => {
      const { vision } = await loadVision();
      for (const [number, sheet] of [7, 8, 60].entries()) {
        const found = detected(await page('7-8, 60', paper, number + 1), vision);
        const ids = [0, 1, 2, 3].map((place) => markerId({ sheet, place }));
        expect([...found.keys()].sort((a, b) => a - b)).toEqual(ids);
        for (const [place, id] of ids.entries()) {
          markerCorners(place).forEach((corner, i) => {
            // OpenCV counts from the middle of the first pixel.
            const [x, y] = [found.get(id)![2 * i]! + 0.5, found.get(id)![2 * i + 1]! + 0.5];
            const wanted = onPaper(paper, corner);
            const off = Math.hypot(x / PX_PER_MM - wanted.x, y / PX_PER_MM - wanted.y);
            expect(off, `marker ${id}, corner ${i}`).toBeLessThan(0.1);
          });
        }
      }
    },
  );

  testWith(poppler, 'when a sheet is printed, its lines are as long as drawn, within 0.1 mm', async () => {
    const picture = await page('12', paper);
    const box = (fromX: number, fromY: number, toX: number, toY: number) => {
      const [from, to] = [onPaper(paper, { x: fromX, y: fromY }), onPaper(paper, { x: toX, y: toY })];
      return darkBox(picture, { minX: from.x, minY: from.y, maxX: to.x, maxY: to.y }, PX_PER_MM);
    };
    const middleX = ({ minX, maxX }: { readonly minX: number; readonly maxX: number }) => (minX + maxX) / 2;
    const middleY = ({ minY, maxY }: { readonly minY: number; readonly maxY: number }) => (minY + maxY) / 2;
    // Above the line itself, only its two end marks are dark.
    const [left, right] = [-1, 1].map((side) =>
      middleX(box((side * 160) / 2 - 2, -4, (side * 160) / 2 + 2, -2)),
    );
    const [top, bottom] = [-1, 1].map((side) =>
      middleY(box(2, (side * 220) / 2 - 2, 4, (side * 220) / 2 + 2)),
    );
    expect(Math.abs(right! - left! - BAR_MM.across)).toBeLessThan(0.1);
    expect(Math.abs(bottom! - top! - BAR_MM.down)).toBeLessThan(0.1);
  });

  testWith(poppler, 'when a sheet is printed, the white that markers need is white', async () => {
    const picture = await page('60', paper);
    for (let place = 0; place < MARKERS_PER_SHEET; place++) {
      const [topLeft] = markerCorners(place);
      const { x, y } = onPaper(paper, topLeft);
      // Half a pixel at the marker's own edge may be grey.
      const outer = {
        minX: x - MARKER_QUIET_MM,
        minY: y - MARKER_QUIET_MM,
        size: MARKER_MM + 2 * MARKER_QUIET_MM,
      };
      const dark = darkBox(
        picture,
        { ...outer, maxX: outer.minX + outer.size, maxY: outer.minY + outer.size },
        PX_PER_MM,
      );
      for (const [edge, wanted] of [
        [dark.minX, x],
        [dark.minY, y],
        [dark.maxX, x + MARKER_MM],
        [dark.maxY, y + MARKER_MM],
      ] as const) {
        expect(Math.abs(edge - wanted)).toBeLessThan(0.1);
      }
    }
  });

  testWith(
    cairo,
    'when a sheet is shown at any size, black has no lighter seams and white no darker ones',
    async () => {
      // Sizes at which the edges of fields fall between pixels.
      for (const pxPerMm of [2.37, 4.1, 7.77]) {
        const { width, pixels } = await smoothPage('33', paper, pxPerMm);
        for (let place = 0; place < MARKERS_PER_SHEET; place++) {
          const fields = markerFields(markerId({ sheet: 33, place }));
          const { x: minX, y: minY } = onPaper(paper, markerCorners(place)[0]);
          const fieldAt = (mm: number): number => Math.floor(mm / (MARKER_MM / 8));
          for (let y = Math.ceil(minY * pxPerMm); y < (minY + MARKER_MM) * pxPerMm - 2; y++) {
            for (let x = Math.ceil(minX * pxPerMm); x < (minX + MARKER_MM) * pxPerMm - 2; x++) {
              // What lies under a pixel and its neighbours: where that is of one colour, so is the pixel.
              const under = [-1, 2].flatMap((dy) =>
                [-1, 2].map((dx) => {
                  const row = fieldAt((y + dy) / pxPerMm - minY);
                  const column = fieldAt((x + dx) / pxPerMm - minX);
                  return fields[row]?.[column];
                }),
              );
              if (under.some((isWhite) => isWhite !== under[0] || isWhite === undefined)) continue;
              if (pixels[y * width + x] !== (under[0]! ? 255 : 0)) {
                expect.fail(`a seam at ${x}, ${y} of marker ${place} at ${pxPerMm} px/mm`);
              }
            }
          }
        }
      }
    },
  );
});

test('when the same sheets are made twice, the bytes are equal', async () => {
  const make = async (name: string): Promise<Buffer> => {
    const pdf = join(folder, name);
    await hideboundHere(['markers', '--pdf', pdf]);
    return readFileSync(pdf);
  };
  expect((await make('once.pdf')).equals(await make('twice.pdf'))).toBe(true);
});
