import { readFileSync } from 'node:fs';
import { readPatternSvg } from '@hidebound/intake';
import { describe, expect, test } from 'vitest';
// @ts-expect-error: plain JavaScript, run by hand too
import { drawWith } from './tools/draw-with-programs.mjs';
// @ts-expect-error: plain JavaScript, run by hand too
import { DRAWN } from './tools/program-drawings.mjs';
import { expectBox } from './tools/expect-box.js';
import { outsideProgram, testWith } from './tools/outside.js';

// The numbers that were given to the programs, in mm; what they saved must give them back to 0.02 mm.
const WITHIN_MM = 0.02;

type Drawn = Record<'panel' | 'stitch' | 'twin', { x: number; y: number; width: number; height: number }> & {
  tab: { cx: number; cy: number; radius: number; length: number; turnedDeg: number };
};
const { panel, stitch, twin, tab } = DRAWN as Drawn;

/** The turned tab's box: its disc reaches right and up, its far corners left and down. */
function tabBox() {
  const turn = (tab.turnedDeg * Math.PI) / 180;
  const corner = (x: number, y: number) => ({
    x: tab.cx + Math.cos(turn) * x - Math.sin(turn) * y,
    y: tab.cy + Math.sin(turn) * x + Math.cos(turn) * y,
  });
  const [left, bottom] = [corner(-tab.radius, tab.length), corner(tab.radius, tab.length)];
  const right = tab.cx + tab.radius;
  const top = tab.cy - tab.radius;
  return { x: left.x, y: top, width: right - left.x, height: bottom.y - top };
}

function expectPattern(svg: string, file: string) {
  const { pieces, diagnostics, strays, ignored } = readPatternSvg(svg, { file });
  expect(pieces.map(({ piece }) => piece.name).sort()).toEqual(['panel', 'tab', 'twin']);
  const piece = (name: string) => pieces.find((one) => one.piece.name === name)!.piece;
  expectBox(piece('panel').cut, panel, WITHIN_MM);
  expectBox(piece('twin').cut, twin, WITHIN_MM);
  expectBox(piece('tab').cut, tabBox(), WITHIN_MM);
  expect(piece('panel').stitchLines).toHaveLength(1);
  expect(piece('panel').stitchLines[0]!.curve.closed).toBe(true);
  expectBox(piece('panel').stitchLines[0]!.curve, stitch, WITHIN_MM);
  for (const { piece: one } of pieces) expect(one.cutOuts).toEqual([]);
  expect(strays).toEqual([]);
  expect(ignored.map(({ reason }) => reason)).toEqual(['text']);
  expect(diagnostics.filter(({ severity }) => severity !== 'note')).toEqual([]);
}

const UNITS = ['mm', 'in', 'px'] as const;

describe.each(['inkscape', 'libreoffice'])('pattern files saved by %s', (program) => {
  test.each(UNITS)(
    'when the drawing is in %s, the file kept here gives the drawn sizes and roles',
    (unit) => {
      const file = `${program}-${unit}.svg`;
      expectPattern(readFileSync(new URL(`../fixtures/patterns/${file}`, import.meta.url), 'utf8'), file);
    },
  );

  const command = outsideProgram(program === 'libreoffice' ? 'soffice' : program, ['--version']);
  testWith(command, `when ${program} draws it anew, what it saves gives the drawn sizes and roles`, () => {
    const files = (drawWith as (name: string) => Record<(typeof UNITS)[number], string>)(program);
    for (const unit of UNITS) expectPattern(files[unit], `${program}-${unit}.svg`);
  });
});
