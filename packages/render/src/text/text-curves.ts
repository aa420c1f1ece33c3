import { applyAffine, composeAffine, rotationDeg, scaling, translation } from '@hidebound/geometry';
import type { Affine, Curve, CurveSegment, Point } from '@hidebound/geometry';
import type { PathCommand } from 'fontkit';
import type { TextElement } from '../drawing/model.js';
import type { FontBook } from './font-book.js';

/** The outlines of a line of text, closed curves, as it would be drawn: for what can't set type itself. */
export function textCurves(fonts: FontBook, text: TextElement): Curve[] {
  const font = fonts.fonts[text.face];
  const scale = text.sizeMm / font.unitsPerEm;
  const before = text.anchor === 'start' ? 0 : text.anchor === 'middle' ? text.widthMm / 2 : text.widthMm;
  const onPage = composeAffine(translation(text.at.x, text.at.y), rotationDeg(text.angleDeg));
  const curves: Curve[] = [];
  let pen = 0;
  for (const word of text.text.split(/(?<=[ \t])/)) {
    const run = font.layout(word);
    run.glyphs.forEach((glyph, i) => {
      const { xAdvance, xOffset, yOffset } = run.positions[i]!;
      // Fonts have y up.
      const place = composeAffine(
        onPage,
        composeAffine(
          translation((pen + xOffset) * scale - before, -yOffset * scale),
          scaling(scale, -scale),
        ),
      );
      // A blank has no outline, and what stands in the file at its place is another glyph's.
      if (word.trim() !== '' && glyph.codePoints.some((code) => String.fromCodePoint(code).trim() !== '')) {
        curves.push(...glyphCurves(glyph.path.commands, place));
      }
      pen += xAdvance;
    });
  }
  return curves;
}

function glyphCurves(commands: readonly PathCommand[], place: Affine): Curve[] {
  const curves: Curve[] = [];
  let start: Point | undefined;
  let at: Point = { x: 0, y: 0 };
  let segments: CurveSegment[] = [];
  const close = (): void => {
    if (start !== undefined && segments.length > 0) {
      if (at.x !== start.x || at.y !== start.y) segments.push({ kind: 'line', to: start });
      curves.push({ start, segments, closed: true });
    }
    start = undefined;
    segments = [];
  };
  for (const { command, args } of commands) {
    const p = (i: number): Point => applyAffine(place, { x: args[i]!, y: args[i + 1]! });
    if (command === 'moveTo') {
      close();
      start = at = p(0);
    } else if (command === 'lineTo') {
      at = p(0);
      segments.push({ kind: 'line', to: at });
    } else if (command === 'quadraticCurveTo') {
      const [control, to] = [p(0), p(2)];
      segments.push({ kind: 'cubic', handle1: twoThirds(at, control), handle2: twoThirds(to, control), to });
      at = to;
    } else if (command === 'bezierCurveTo') {
      at = p(4);
      segments.push({ kind: 'cubic', handle1: p(0), handle2: p(2), to: at });
    } else close();
  }
  close();
  return curves;
}

/** The handle of the cubic that is the same curve as a quadratic one. */
function twoThirds(end: Point, control: Point): Point {
  return { x: end.x + ((control.x - end.x) * 2) / 3, y: end.y + ((control.y - end.y) * 2) / 3 };
}
