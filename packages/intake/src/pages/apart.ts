import { transformCurveToGrid, translation } from '@hidebound/geometry';
import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { ReadPage } from '../pattern-read.js';
import { APART_MM } from './limits.js';
import { repeatedFrames } from './frames.js';
import type { PatternPage } from './page.js';
import type { PagesTogether } from './put-together.js';
import { roundPoint } from '@hidebound/geometry';

/** Pages below each other, each a drawing of its own; frames that several of them have are left out. */
export function pagesApart(pages: readonly PatternPage[], findings: Findings): PagesTogether {
  const framing = repeatedFrames(pages);
  const placed: ReadPage[] = [];
  const lines: DrawnLine[] = [];
  const texts: DrawnText[] = [];
  let top = 0;
  let frames = 0;
  pages.forEach((page, i) => {
    const toWhole = translation(0, top);
    page.lines.forEach((line, k) => {
      if (framing[i]!.has(k)) frames++;
      else lines.push({ ...line, curve: transformCurveToGrid(toWhole, line.curve) });
    });
    for (const text of page.texts)
      texts.push({ ...text, at: roundPoint({ x: text.at.x, y: text.at.y + top }) });
    const { number, widthMm, heightMm } = page;
    placed.push({ number, widthMm, heightMm, toWhole, joinedBy: 'alone', lines: page.lines, marks: [] });
    top += heightMm + APART_MM;
  });
  if (frames > 0) tell(findings, 'note', 'page-furniture', { frames, marks: 0, texts: 0, signs: 0 });
  return { drawing: { lines, texts }, pages: placed };
}
