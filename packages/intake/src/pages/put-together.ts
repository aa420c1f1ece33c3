import { transformCurveToGrid, translation } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { PagesReading } from '@hidebound/leather';
import type { Drawing } from '../drawing/drawn-line.js';
import type { Findings } from '../findings.js';
import type { ReadPage } from '../pattern-read.js';
import type { PatternPage } from './page.js';

/** The drawing that the pages make together, and where each page lies in it. */
export interface PagesTogether {
  readonly drawing: Drawing;
  readonly pages: readonly ReadPage[];
}

/** Paper between pages that are drawings of their own. */
const APART_MM = 50;

/** Puts the pages of a pattern together as the reading says. */
export function putPagesTogether(
  pages: readonly PatternPage[],
  _reading: PagesReading | undefined,
  _findings: Findings,
): PagesTogether {
  const placed: ReadPage[] = [];
  const lines: Drawing['lines'][number][] = [];
  const texts: Drawing['texts'][number][] = [];
  let top = 0;
  for (const page of pages) {
    const by: Point = { x: 0, y: top };
    const toWhole = translation(by.x, by.y);
    lines.push(...page.lines.map((line) => ({ ...line, curve: transformCurveToGrid(toWhole, line.curve) })));
    texts.push(...page.texts.map((text) => ({ ...text, at: { x: text.at.x + by.x, y: text.at.y + by.y } })));
    const { number, widthMm, heightMm } = page;
    placed.push({ number, widthMm, heightMm, toWhole, joinedBy: 'alone', lines: page.lines, marks: [] });
    top += heightMm + APART_MM;
  }
  return { drawing: { lines, texts }, pages: placed };
}
