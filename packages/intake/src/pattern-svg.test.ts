import { curveBox, curveEndPoints } from '@hidebound/geometry';
import type { RoleRule } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { readPatternSvg } from './pattern-svg.js';
import { INTAKE_SENTENCES } from './sentences.js';

const NAMESPACES =
  'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"';
const page = (body: string) =>
  `<svg ${NAMESPACES} width="300mm" height="300mm" viewBox="0 0 300 300" fill="none" stroke="#000">${body}</svg>`;
const PANEL = '<rect x="10" y="10" width="100" height="80"/>';

function read(body: string, roles: readonly RoleRule[] = []) {
  return readPatternSvg(page(body), { file: 'a.svg', reading: { file: 'a.svg', roles } });
}
const codes = (result: ReturnType<typeof read>) => result.diagnostics.map(({ code }) => code);
const only = (result: ReturnType<typeof read>) => {
  expect(result.pieces).toHaveLength(1);
  return result.pieces[0]!.piece;
};

describe('lines without a role', () => {
  test('when a closed line within a piece has less than a quarter of its area, it is an opening', () => {
    const result = read(`${PANEL}<rect x="20" y="20" width="30" height="30"/>`);
    expect(only(result).cutOuts).toHaveLength(1);
  });

  test('when it has more, it is a stitch line, with a warning', () => {
    const result = read(`${PANEL}<rect x="15" y="15" width="80" height="70"/>`);
    expect(only(result).stitchLines).toHaveLength(1);
    expect(codes(result)).toContain('inner-outline-as-stitch');
  });

  test('when it runs along the cut line all round, it is a stitch line, and the allowance is told', () => {
    const result = read(`${PANEL}<rect x="20" y="20" width="80" height="60"/>`);
    expect(only(result).stitchLines).toHaveLength(1);
    expect(codes(result)).not.toContain('inner-outline-as-stitch');
    expect(result.diagnostics.find(({ code }) => code === 'allowance')?.params['width']).toBe(10);
  });

  test('when a filled path has a hole of more than a quarter, it is an opening all the same', () => {
    const path = '<path fill="#999" d="M10 10h100v80h-100zM20 20v60h80v-60z"/>';
    expect(only(read(path)).cutOuts).toHaveLength(1);
  });

  test('when small equal circles lie in a row, they are a stitch line through their centres', () => {
    const holes = Array.from(
      { length: 9 },
      (_, i) => `<circle cx="${20 + 5 * i}" cy="${20 + i}" r="0.6"/>`,
    ).join('');
    const { stitchLines, punches } = only(read(PANEL + holes));
    expect(punches).toEqual([]);
    expect(stitchLines).toHaveLength(1);
    expect(curveBox(stitchLines[0]!.curve)).toEqual({ minX: 20, minY: 20, maxX: 60, maxY: 28 });
  });

  test('when holes go once around, the stitch line is closed', () => {
    const around = Array.from({ length: 24 }, (_, i) => {
      const side = Math.floor(i / 6);
      const along = (i % 6) * 5;
      const x = [along, 30, 30 - along, 0][side]!;
      const y = [0, along, 30, 30 - along][side]!;
      return `<circle cx="${30 + x}" cy="${30 + y}" r="0.5"/>`;
    }).join('');
    expect(only(read(PANEL + around)).stitchLines[0]!.curve).toMatchObject({ closed: true });
  });

  test('when circles are as large as belt holes, they are punches, also in a row', () => {
    const holes = Array.from({ length: 5 }, (_, i) => `<circle cx="${20 + 12 * i}" cy="50" r="2"/>`).join('');
    const { punches, stitchLines } = only(read(PANEL + holes));
    expect(stitchLines).toEqual([]);
    expect(punches).toHaveLength(5);
    expect(punches[0]).toEqual({ at: { x: 20, y: 50 }, diameterMm: 4 });
  });

  test('when a circle is a disc of its own, it is a piece', () => {
    const disc = '<circle cx="50" cy="50" r="20"/>';
    expect(only(read(disc)).cut.closed).toBe(true);
  });

  test('when a circle of a punch lies in no piece, it is left out and told of; one that is named cut is a piece', () => {
    const hole = '<circle cx="150" cy="50" r="5"/>';
    const result = read(`${PANEL}${hole}`);
    expect(only(result).punches).toHaveLength(0);
    expect(result.strays).toHaveLength(1);
    expect(codes(result)).toContain('holes-outside-pieces');
    expect(read(`${PANEL}<g id="cut">${hole}</g>`).pieces).toHaveLength(2);
  });

  test('when an open line runs from edge to edge it is a fold, elsewhere a stitch line, and it is said', () => {
    const result = read(`${PANEL}<path d="M60 10V90"/><path d="M20 30H50"/>`);
    const { foldLines, stitchLines } = only(result);
    expect([foldLines.length, stitchLines.length]).toEqual([1, 1]);
    expect(codes(result).filter((code) => code === 'role-guessed')).toHaveLength(2);
  });

  test('when a short line goes inwards from the edge, it is a notch', () => {
    expect(only(read(`${PANEL}<path d="M40 10v4"/>`)).notches).toEqual([
      { at: { x: 40, y: 10 }, angleDeg: 90, depthMm: 4 },
    ]);
  });
});

describe('joining and tidying', () => {
  test('when lines and an arc of different elements meet within 0.1 mm, they are one outline, and nothing moves', () => {
    const parts =
      '<path d="M10 10H100"/><path d="M100.05 10A20 20 0 0 1 100.05 50"/><path d="M10 50.04H100"/><line x1="10" y1="10" x2="10" y2="50"/>';
    const piece = only(read(parts));
    expect(piece.cut.closed).toBe(true);
    expect(curveBox(piece.cut).maxX).toBeCloseTo(120.05, 2);
    expect(piece.cut.segments.some(({ kind }) => kind === 'arc')).toBe(true);
  });

  test('when ends are 0.2 mm apart, the line stays open and is told of', () => {
    const result = read('<g id="cut"><path d="M10 10H100V60H10V10.2"/></g>');
    expect(result.pieces).toEqual([]);
    expect(result.strays).toHaveLength(1);
  });

  test('when an outline is drawn twice, once the other way round, it is read once', () => {
    const result = read(`${PANEL}<path d="M110 90V10H10V90z"/>`);
    only(result);
    expect(result.ignored).toEqual([{ element: '<path> in line 1', reason: 'drawn twice' }]);
  });

  test('when a cut line crosses itself, an error names the place', () => {
    const result = read('<path d="M0 0L100 100V0L0 100z"/>');
    const error = result.diagnostics.find(({ code }) => code === 'outline-crosses-itself');
    expect(error).toMatchObject({ severity: 'error', place: { point: { x: 50, y: 50 } } });
  });

  test('when dashes are drawn one by one around a corner, they are one dashed stitch line', () => {
    const across = Array.from({ length: 8 }, (_, i) => `<path d="M${20 + 5 * i} 20h3"/>`).join('');
    const down = Array.from({ length: 6 }, (_, i) => `<path d="M60 ${20 + 5 * i}v3"/>`).join('');
    const { stitchLines } = only(read(`${PANEL}<g>${across}${down}</g>`));
    expect(stitchLines).toHaveLength(1);
    expect(curveEndPoints(stitchLines[0]!.curve)).toEqual({ start: { x: 20, y: 20 }, end: { x: 60, y: 48 } });
  });
});

describe('roles by name', () => {
  test.each([
    ['<g inkscape:groupmode="layer" inkscape:label="Stitch lines"><path d="M20 20H50"/></g>', 'stitchLines'],
    ['<path id="fold-2" d="M20 20H50"/>', 'foldLines'],
    ['<path class="skive" d="M20 20H50"/>', 'skiveLines'],
    ['<path data-role="cement" d="M20 20H50"/>', 'cementLines'],
    ['<g data-name="face"><rect x="15" y="15" width="90" height="70"/></g>', 'face'],
    ['<g id="Cut_x20_Out"><rect x="15" y="15" width="90" height="70"/></g>', 'cutOuts'],
    ['<g><title>rivets</title><circle cx="40" cy="40" r="9"/></g>', 'punches'],
  ] as const)('when a line is drawn as %s, it is among the %s', (line, list) => {
    expect(only(read(PANEL + line))[list]).toHaveLength(1);
  });

  test('when a name only contains a trade word, it is no role', () => {
    const result = read('<g id="hole-free window flap">' + PANEL + '</g>');
    expect(only(result).name).toBe('hole-free window flap');
  });

  test('when a layer "cut" holds outlines within outlines, the inner ones are openings, and pieces again within those', () => {
    const result = read(
      '<g id="cut"><rect width="200" height="200"/><rect x="20" y="20" width="160" height="160"/><rect x="50" y="50" width="90" height="90"/></g>',
    );
    expect(result.pieces.map(({ piece }) => piece.cutOuts.length)).toEqual([1, 0]);
  });

  test('when a rule of the order fits, it comes before the name', () => {
    const rules: RoleRule[] = [
      { role: 'fold', layer: 'sti*', colour: '#ff0000', widthMm: [0.4, 0.6] },
      { role: 'cement', dashed: true },
    ];
    const line =
      '<g id="stitch"><path d="M20 20H50" stroke="red" stroke-width=".5"/><path d="M20 40H50" style="stroke-dasharray:2 1"/><path d="M20 60H50"/></g>';
    const { foldLines, cementLines, stitchLines } = only(read(PANEL + line, rules));
    expect([foldLines.length, cementLines.length, stitchLines.length]).toEqual([1, 1, 1]);
  });
});

describe('pieces', () => {
  test('when a line is named direction, the arrow runs from its first to its last point', () => {
    const result = read(`${PANEL}<path id="direction" d="M60 20V70"/>`);
    expect(only(result).direction).toEqual({ from: { x: 60, y: 20 }, to: { x: 60, y: 70 } });
    expect(codes(result)).not.toContain('direction-not-drawn');
  });

  test('when no direction is drawn, a note says that the long axis is taken', () => {
    expect(codes(read(PANEL))).toContain('direction-not-drawn');
  });

  test('when names come from labels, groups, ids, texts or nowhere, each piece gets its best one', () => {
    const result = read(`
      <rect data-name="front" width="20" height="20"/>
      <g inkscape:label="gusset" transform="translate(30)"><path id="path77" d="M0 0h20v20h-20z"/><path id="fold1" d="M0 10h20"/></g>
      <rect id="flap" x="60" width="20" height="20"/>
      <rect id="rect4" x="90" width="20" height="20"/><text x="95" y="10">pocket</text>
      <rect id="rect5" x="120" width="20" height="20"/>`);
    expect(result.pieces.map(({ piece }) => piece.name)).toEqual([
      'front',
      'gusset',
      'flap',
      'pocket',
      'piece-5',
    ]);
  });

  test('when the only text in a piece is too long for a name, the piece has a number and a note says why', () => {
    const long = 'cut two of this from firm leather and skive all edges';
    const rect = (x: number) => `<rect x="${x}" width="20" height="20"/>`;
    const result = read(
      `${rect(0)}<text x="5" y="10">${long}</text>${rect(30)}<text x="35" y="5">flap</text><text x="35" y="10">${long}</text>`,
    );
    expect(result.pieces.map(({ piece }) => piece.name)).toEqual(['piece-1', 'flap']);
    const notes = result.diagnostics.filter(({ code }) => code === 'text-too-long-for-name');
    expect(notes).toMatchObject([{ severity: 'note', params: { count: 1, pieces: 'piece-1', limit: 40 } }]);
  });

  test('when a name is used twice, both pieces stay and a warning says so', () => {
    const result = read(
      '<rect data-name="strap" width="90" height="20"/><rect data-name="strap" y="30" width="90" height="20"/>',
    );
    expect(result.pieces.map(({ piece }) => piece.name)).toEqual(['strap', 'strap-2']);
    expect(codes(result)).toContain('name-used-twice');
  });

  test('when data attributes say count, mirrored and material, the piece has them', () => {
    const result = read(`<g id="gusset" data-count="4" data-mirrored="2" data-material="body">${PANEL}</g>`);
    expect(result.pieces[0]).toMatchObject({ count: 4, mirrored: 2, material: 'body' });
  });

  test('when a line lies outside of every piece, it is a stray and told of', () => {
    const result = read(`${PANEL}<path d="M200 200h50"/>`);
    expect(result.strays).toHaveLength(1);
    expect(codes(result)).toContain('lines-outside-pieces');
  });
});

describe('dialects', () => {
  test('when styles come from classes, ids, attributes and !important, the cascade decides', () => {
    const style =
      '<style>.a{stroke-dasharray:3 1}#b{stroke-dasharray:none}.c{display:none!important}</style>';
    const lines =
      '<path class="a" d="M20 20H50"/><path class="a" id="b" d="M20 30H50"/><path class="c" style="display:inline" d="M20 40H50"/>';
    const result = read(style + PANEL + lines, [{ role: 'fold', dashed: true }]);
    const { foldLines, stitchLines } = only(result);
    expect([foldLines.length, stitchLines.length]).toEqual([1, 1]);
    expect(result.ignored).toEqual([{ element: '<path> in line 1', reason: 'hidden' }]);
  });

  test('when a transform stands in CSS, it counts', () => {
    const result = read(
      '<rect width="50" height="20" style="transform:translate(10px, 5px) rotate(90deg)"/>',
    );
    expect(curveBox(only(result).cut)).toEqual({ minX: -10, minY: 5, maxX: 10, maxY: 55 });
  });

  test('when entities stand for namespaces, they are put in', () => {
    const svg = `<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd" [<!ENTITY ns_svg "http://www.w3.org/2000/svg">]><svg xmlns="&ns_svg;" width="10mm" height="10mm"><rect width="5mm" height="5mm"/></svg>`;
    expect(readPatternSvg(svg, { file: 'a.svg' }).pieces).toHaveLength(1);
  });

  test.each(['utf16le', 'utf8'] as const)(
    'when the file is %s with a byte-order mark, it reads the same',
    (encoding) => {
      const bytes = Uint8Array.from(
        Buffer.from(`\uFEFF${page('<rect data-name="Lasche ä" width="50" height="20"/>')}`, encoding),
      );
      expect(readPatternSvg(bytes, { file: 'a.svg' }).pieces[0]!.piece.name).toBe('Lasche ä');
    },
  );

  test('when the file declares windows-1252, its letters are read so', () => {
    const text = `<?xml version="1.0" encoding="windows-1252"?>${page('<rect data-name="\u00e9tui" width="50" height="20"/>')}`;
    const bytes = Uint8Array.from(Buffer.from(text, 'latin1'));
    expect(readPatternSvg(bytes, { file: 'a.svg' }).pieces[0]!.piece.name).toBe('étui');
  });

  test('when every tag has a prefix, and label attributes another one than usual, it is read', () => {
    const svg =
      '<s:svg xmlns:s="http://www.w3.org/2000/svg" xmlns:i="http://www.inkscape.org/namespaces/inkscape" width="90mm" height="90mm" viewBox="0 0 90 90"><s:rect i:label="flap" width="50" height="20"/></s:svg>';
    expect(readPatternSvg(svg, { file: 'a.svg' }).pieces[0]!.piece.name).toBe('flap');
  });

  test('when text, pictures, scripts and clones without an original are in the file, each is named', () => {
    const result = read(
      `${PANEL}<text x="200" y="9">hello</text><image href="x.png"/><script>1</script><use href="#gone"/><use href="other.svg#a"/>`,
    );
    expect(result.ignored.map(({ reason }) => reason)).toEqual([
      'text',
      'image',
      'script',
      'missing target',
      'external reference',
    ]);
    expect(codes(result).filter((code) => code === 'left-out')).toHaveLength(5);
  });

  test('when anything is told of, its sentence has no hole in it', () => {
    const results = [
      read(`${PANEL}<rect x="15" y="15" width="90" height="70"/><text x="200" y="9">hello</text>`),
      read('<g id="cut"><path d="M10 10H100"/></g>'),
    ];
    for (const { code, params } of results.flatMap(({ diagnostics }) => diagnostics)) {
      const sentence = INTAKE_SENTENCES[code]!(params);
      expect(sentence).not.toMatch(/undefined|NaN|\[object/);
      expect(sentence).toMatch(/\.$/);
    }
  });
});
