import { circleCurve, createRandom, curveFromPolyline } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { IntakeError } from '../error.js';
import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';
import { newFindings } from '../findings.js';
import type { PatternPage } from './page.js';
import { putPagesTogether } from './put-together.js';
import { blob, cross, drawnLine, drawnText, tilesOf } from './test-tiles.js';

const TILING = { columns: 2, rows: 2, width: 190, height: 277, overlap: 10, margin: 5 };

function codeOf(pages: readonly PatternPage[]): string {
  try {
    putPagesTogether(pages, undefined, newFindings('p.pdf'));
  } catch (error) {
    if (error instanceof IntakeError) return error.code;
    throw error;
  }
  return 'none';
}

/** A labelled cross near either end of each of the four edges at which two of the pages meet. */
function crosses(): { readonly lines: DrawnLine[]; readonly texts: DrawnText[] } {
  const places = [30, 130, 417, 517].map((y) => ({ x: 185, y }));
  const level = [30, 130, 250, 340].map((x) => ({ x, y: 272 }));
  const all = [...places, ...level];
  return {
    lines: all.flatMap((at) => cross(at, 3)),
    texts: all.map(({ x, y }, i) => drawnText(`${'ABCDEFGH'[i]}1`, { x: x + 1, y: y - 1 })),
  };
}

/** The page without what lies in the box, and with it again, moved: as if its marks were printed at a wrong place. */
function withMarksMoved(
  page: PatternPage,
  isMoved: (x: number, y: number) => boolean,
  dy: number,
): PatternPage {
  const lines = page.lines.map((line): DrawnLine => {
    const { start } = line.curve;
    if (line.widthMm > 0.3 || !isMoved(start.x, start.y)) return line;
    const move = (p: { x: number; y: number }) => ({ x: p.x, y: p.y + dy });
    const segments = line.curve.segments.map((segment) => ({
      ...segment,
      to: move(segment.to),
      ...(segment.kind === 'arc' ? { via: move(segment.via) } : {}),
    }));
    return { ...line, curve: { ...line.curve, start: move(start), segments } };
  });
  const texts = page.texts.map((text) =>
    isMoved(text.at.x, text.at.y) ? { ...text, at: { x: text.at.x, y: text.at.y + dy } } : text,
  );
  return { ...page, lines, texts };
}

describe('pages whose marks contradict each other', () => {
  const marks = crosses();
  const tiles = tilesOf(marks.lines, marks.texts, TILING);

  it('when four pages with labelled crosses agree all the way round, they are taken', () => {
    expect(codeOf(tiles)).toBe('none');
  });

  // Round the four pages the marks of the right edge ask for a place 5 mm lower than those of the left one do.
  it('when the way round four pages does not close by 5 mm, they are refused', () => {
    const pages = tiles.map((page, i) => (i === 3 ? withMarksMoved(page, (x) => x < 20, 5) : page));
    expect(codeOf(pages)).toBe('pages-do-not-fit');
  });
});

describe('a page that is in the file twice', () => {
  it('when nothing labels it, that two pages are alike is told', () => {
    const row = { ...TILING, rows: 1 };
    const drawn = [
      drawnLine(blob(createRandom(5), { x: 185, y: 140 }, 80)),
      drawnLine(circleCurve({ x: 300, y: 60 }, 30)),
    ];
    const tiles = tilesOf(drawn, [], row);
    const pages = [...tiles, { ...tiles[1]!, number: 3 }];
    const findings = newFindings('p.pdf');
    putPagesTogether(pages, undefined, findings);
    const told = findings.diagnostics.find(({ code }) => code === 'pages-alike');
    expect(told).toMatchObject({ severity: 'warning', params: { pages: '2-3' } });
  });

  it('when a straight strap looks alike on its pages, nothing is told', () => {
    const strap = [100, 140].map((y) =>
      drawnLine({ start: { x: 0, y }, segments: [{ kind: 'line', to: { x: 800, y } }], closed: false }),
    );
    const findings = newFindings('p.pdf');
    const tiling = { ...TILING, columns: 4, rows: 1, overlap: 0, margin: 0 };
    putPagesTogether(tilesOf(strap, [], tiling), undefined, findings);
    expect(findings.diagnostics.map(({ code }) => code)).not.toContain('pages-alike');
  });

  it('when pages of straps with marks look alike but lie beside each other, nothing is told', () => {
    const strap = [100, 140].map((y) =>
      drawnLine({ start: { x: 30, y }, segments: [{ kind: 'line', to: { x: 730, y } }], closed: false }),
    );
    const tiling = { ...TILING, columns: 4, rows: 1, overlap: 0, margin: 10 };
    const triangle = (x: number, tip: number): DrawnLine =>
      drawnLine(
        curveFromPolyline(
          [
            { x, y: 190 },
            { x: tip, y: 195 },
            { x, y: 200 },
          ],
          true,
        ),
        { widthMm: 0.3 },
      );
    const pages = tilesOf(strap, [], tiling).map((page) => ({
      ...page,
      lines: [...page.lines, triangle(10, 16), triangle(200, 194)],
    }));
    for (const reading of [undefined, { columns: 4 }]) {
      const findings = newFindings('p.pdf');
      const read = putPagesTogether(pages, reading, findings);
      expect(read.pages.map(({ joinedBy }) => joinedBy)).not.toContain('alone');
      expect(findings.diagnostics.map(({ code }) => code)).not.toContain('pages-alike');
    }
  });

  it('when nothing links pages that are alike, it is told', () => {
    const page = { widthMm: 210, heightMm: 297, lines: [drawnLine(circleCurve({ x: 90, y: 90 }, 40))] };
    const findings = newFindings('p.pdf');
    putPagesTogether(
      [1, 2].map((number) => ({ ...page, number, texts: [] })),
      undefined,
      findings,
    );
    expect(findings.diagnostics.map(({ code }) => code)).toContain('pages-alike');
  });
});
