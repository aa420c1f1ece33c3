import { readFileSync } from 'node:fs';
import { pdfJudge } from './pdf-judge.js';

export interface PathBox {
  readonly width: number;
  readonly height: number;
}

/** Sizes in mm of every constructed path, page by page, as pdf.js finds them under the transforms before them. */
export async function pathBoxes(file: string): Promise<PathBox[][]> {
  const { getDocument, OPS } = await pdfJudge();
  const data = new Uint8Array(readFileSync(file));
  const document = await getDocument({ data, useSystemFonts: false }).promise;
  const pages: PathBox[][] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { fnArray, argsArray } = await (await document.getPage(number)).getOperatorList();
    pages.push(boxesUnderTransforms(fnArray, argsArray as unknown[][], OPS));
  }
  await document.destroy();
  return pages;
}

type Matrix = readonly [number, number, number, number];

function boxesUnderTransforms(
  functions: readonly number[],
  args: readonly unknown[][],
  ops: Readonly<Record<string, number>>,
): PathBox[] {
  const boxes: PathBox[] = [];
  const kept: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1];
  functions.forEach((operator, i) => {
    if (operator === ops['save']) kept.push(now);
    else if (operator === ops['restore']) now = kept.pop()!;
    else if (operator === ops['transform']) {
      const [a, b, c, d] = args[i] as [number, number, number, number];
      const [p, q, r, s] = now;
      now = [p * a + r * b, q * a + s * b, p * c + r * d, q * c + s * d];
    } else if (operator === ops['constructPath']) {
      const [minX, minY, maxX, maxY] = args[i]![2] as [number, number, number, number];
      const [p, q, r, s] = now;
      const w = maxX - minX;
      const h = maxY - minY;
      const mm = (points: number): number => (points / 72) * 25.4;
      boxes.push({
        width: mm(Math.abs(p * w) + Math.abs(r * h)),
        height: mm(Math.abs(q * w) + Math.abs(s * h)),
      });
    }
  });
  return boxes;
}
