import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readPattern } from '@hidebound/intake';
import { describe, expect } from 'vitest';
import { expectBox } from './tools/expect-box.js';
import { pythonWith, testWith } from './tools/outside.js';

/** Patterns that cairo draws page by page, each clipped to what a printer can reach; the judge is the script's numbers. */
const cairo = pythonWith('cairo', 'python3-cairo');

const folder = mkdtempSync(join(tmpdir(), 'tiled-cairo-'));

/** cairo writes places to about 1/1000 point; curves are fitted to within some hundredths of a millimetre. */
const WITHIN_MM = 0.05;

/**
 * Six pages of A4 in three columns that show the whole without overlap: an invented bag's back (an ellipse), its flap and a
 * strap over three pages. Arguments: file, left margin, right margin, whether margins are swapped on every second page,
 * whether diamonds stand in the middle of the edges between pages.
 */
const SCRIPT = `
import cairo, math, sys
name, left, right, swapped, diamonds = sys.argv[1], float(sys.argv[2]), float(sys.argv[3]), sys.argv[4] == "1", sys.argv[5] == "1"
k = 72 / 25.4
top = 8
width, height = 210 - left - right, 297 - 2 * top
surface = cairo.PDFSurface(name, 210 * k, 297 * k)
c = cairo.Context(surface)
for page in range(6):
    column, row = page % 3, page // 3
    own = right if swapped and page % 2 == 1 else left
    c.save()
    c.scale(k, k)
    c.rectangle(own, top, width, height)
    c.clip()
    c.translate(own - column * width, top - row * height)
    c.set_line_width(0.4)
    c.save()
    c.translate(200, 270)
    c.scale(155, 110)
    c.arc(0, 0, 1, 0, 2 * math.pi)
    c.restore()
    c.stroke()
    c.move_to(380, 150); c.curve_to(440, 100, 500, 160, 510, 220); c.line_to(480, 400); c.line_to(390, 420); c.close_path(); c.stroke()
    c.move_to(30, 450); c.line_to(500, 470); c.line_to(500, 500); c.line_to(30, 480); c.close_path(); c.stroke()
    if diamonds:
        c.set_line_width(0.2)
        places = [((i + 1) * width, (j + 0.5) * height) for i in range(2) for j in range(2)]
        places += [((i + 0.5) * width, height) for i in range(3)]
        for x, y in places:
            c.move_to(x - 4, y); c.line_to(x, y - 4); c.line_to(x + 4, y); c.line_to(x, y + 4); c.close_path(); c.stroke()
    c.restore()
    c.show_page()
surface.finish()
`;

const PIECES = [
  { x: 45, y: 160, width: 310, height: 220 },
  { x: 30, y: 450, width: 470, height: 50 },
];

describe('pages of a printer with margins', () => {
  for (const [title, left, right, swapped, diamonds] of [
    ['when diamonds stand in the middle of the edges, pages are joined by them and none stays', 8, 8, 0, 1],
    ['when nothing but lines go over the edges, pages are joined by lines', 8, 8, 0, 0],
    ['when margins of 10 and 20 mm change sides from page to page, the pieces come out true', 10, 20, 1, 0],
    ['when such margins change sides and diamonds stand between, they come out true as well', 10, 20, 1, 1],
  ] as const) {
    testWith(cairo, title, async () => {
      const file = join(folder, `${left}-${right}-${swapped}-${diamonds}.pdf`);
      cairo.run(['-c', SCRIPT, file, String(left), String(right), String(swapped), String(diamonds)]);
      const read = await readPattern(readFileSync(file), { file: 'bag.pdf' });
      expect(read.pages!.map(({ joinedBy }) => joinedBy)).toEqual(
        Array.from({ length: 6 }, () => (diamonds === 1 ? 'marks' : 'lines')),
      );
      expect(read.pieces).toHaveLength(3);
      expect(read.strays).toEqual([]);
      // The whole begins at the outermost edge of paper: of the first column's two pages, the lower one's margin is wider.
      const outermost = swapped === 1 ? right : left;
      for (const [i, want] of PIECES.entries())
        expectBox(
          read.pieces[i === 0 ? 0 : 2]!.piece.cut,
          { ...want, x: want.x + outermost, y: want.y + 8 },
          WITHIN_MM,
        );
    });
  }
});
