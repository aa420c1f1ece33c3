import { readFileSync } from 'node:fs';
import { checkLayout, parseHide, parseLayout, sentenceFor, writeLayout } from '@hidebound/leather';
import type {
  CheckLayoutOptions,
  Layout,
  LayoutCheck,
  LayoutViolation,
  NamedHide,
  PiecePlacement,
} from '@hidebound/leather';
import { describe, expect, test } from 'vitest';

const FOLDER = new URL('../fixtures/layouts/', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, FOLDER), 'utf8');
const LAYOUT = parseLayout(read('hand-written.layout.json'), { file: 'hand-written.layout.json' });
const HIDES: readonly NamedHide[] = LAYOUT.hides.map(({ file }) => ({
  file,
  hide: parseHide(read(file), { file }),
}));

type Edit = (layout: Layout, by: number) => Layout;

const isCopy =
  (piece: string, copy = 1, set = 1) =>
  (placement: PiecePlacement): boolean =>
    placement.piece === piece && placement.copy === copy && placement.set === set && !placement.mirrored;

const editPlacement =
  (
    which: (placement: PiecePlacement) => boolean,
    change: (placement: PiecePlacement, by: number) => PiecePlacement,
  ): Edit =>
  (layout, by) => ({
    ...layout,
    placements: layout.placements.map((placement) => (which(placement) ? change(placement, by) : placement)),
  });

const move = (piece: string, x: number, y: number, copy = 1): Edit =>
  editPlacement(isCopy(piece, copy), (placement, by) => ({
    ...placement,
    x: round(placement.x + x * by),
    y: round(placement.y + y * by),
  }));

const turn = (piece: string): Edit =>
  editPlacement(isCopy(piece), (placement, by) => ({
    ...placement,
    rotationDeg: round(placement.rotationDeg + by),
  }));

/** As a file holds it. */
function round(n: number): number {
  return Math.round(n * 1e6) / 1e6;
}

/** The strap's leather must be so much thicker than the side is. */
const thickenStrap: Edit = (layout, by) => ({
  ...layout,
  order: {
    ...layout.order,
    articles: layout.order.articles.map((article) => ({
      ...article,
      pieces: article.pieces.map((piece) =>
        piece.name === 'strap' && piece.thickness !== undefined
          ? { ...piece, thickness: { ...piece.thickness, minMm: round(2.8 + by) } }
          : piece,
      ),
    })),
  },
});

function checked(layout: Layout, options: CheckLayoutOptions = {}): LayoutCheck {
  // Through the file, so that what is checked is what a file can hold.
  return checkLayout(parseLayout(writeLayout(layout), { file: 'edited.layout.json' }), HIDES, options);
}

interface LimitCase {
  readonly rule: LayoutViolation['rule'];
  readonly what: string;
  readonly edit: Edit;
  readonly piece: string;
  /** What the finding names besides the piece. */
  readonly other?: string;
  readonly part?: string;
  /** 10 µm, or 0.01 degrees; 1 µm or 0.001 degrees. */
  readonly beyond?: number;
}

const LIMITS: readonly LimitCase[] = [
  {
    rule: 'gap',
    what: 'the back moves towards the front',
    edit: move('back', -1, 0),
    piece: 'back',
    other: 'front',
  },
  {
    rule: 'edge',
    what: 'the end moves towards the edge',
    edit: move('end', 1, 0),
    piece: 'end',
    other: 'outline',
  },
  {
    rule: 'void',
    what: 'the pocket moves towards the hole',
    edit: move('pocket', 1, 0),
    piece: 'pocket',
    other: 'flaw:hole',
  },
  {
    rule: 'looks',
    what: "the flap's face moves onto the scar",
    edit: move('flap', 1, 0),
    piece: 'flap',
    other: 'flaw:scar',
    part: 'face',
  },
  {
    rule: 'looks',
    what: "the flap's rest moves onto the brand",
    edit: move('flap', -1, 0),
    piece: 'flap',
    other: 'flaw:brand',
  },
  {
    rule: 'strength',
    what: 'the handle moves onto loose grain',
    edit: move('handle', 0, 1),
    piece: 'handle',
    other: 'flaw:loose',
  },
  {
    rule: 'zone',
    what: 'the base moves out of the bend',
    edit: move('base', 0, 1),
    piece: 'base',
    other: 'bend',
  },
  { rule: 'angle', what: 'the tilted piece turns on', edit: turn('tilted'), piece: 'tilted' },
  { rule: 'pair', what: 'the wing turns on', edit: turn('wing'), piece: 'wing', other: 'wing' },
  { rule: 'thickness', what: 'the strap needs thicker leather', edit: thickenStrap, piece: 'strap' },
  {
    rule: 'lane',
    what: 'a strap moves across its lane',
    edit: move('strap', 0, 1, 2),
    piece: 'strap',
    other: 'straps',
  },
  {
    rule: 'rough-cut',
    what: "a tag moves towards its block's edge",
    edit: move('tag', -1, 0),
    piece: 'tag',
    other: 'brown block',
  },
];

const nameOf = (other: LayoutViolation['other']): string | undefined =>
  typeof other === 'object' ? other.piece : other;

describe('a rule at its limit', () => {
  for (const { rule, what, edit, piece, other, part } of LIMITS) {
    const name = part === undefined ? rule : `${rule} of the ${part}`;
    test(`when ${what} by a hundredth, ${name} is broken, and the piece and the cause are named`, () => {
      const { violations, proven } = checked(edit(LAYOUT, 0.01));
      const found = violations.find((violation) => violation.rule === rule && violation.part === part);
      expect(proven).toBe(false);
      const parties = [found?.at?.piece, nameOf(found?.other)];
      expect(parties).toContain(piece);
      if (other !== undefined) expect(parties).toContain(other);
    });

    test(`when ${what} by a thousandth, ${name} is kept`, () => {
      const { violations, diagnostics, proven } = checked(edit(LAYOUT, 0.001));
      expect(violations).toEqual([]);
      expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
      expect(proven).toBe(true);
    });
  }
});

interface PlainCase {
  readonly rule: LayoutViolation['rule'];
  readonly what: string;
  readonly edit: (layout: Layout) => Layout;
  readonly options?: CheckLayoutOptions;
  readonly piece: string;
}

const change =
  (which: (placement: PiecePlacement) => boolean, to: Partial<PiecePlacement>) => (layout: Layout) =>
    editPlacement(which, (placement) => ({ ...placement, ...to }))(layout, 0);

const drop =
  (which: (placement: PiecePlacement) => boolean) =>
  (layout: Layout): Layout => ({
    ...layout,
    placements: layout.placements.filter((placement) => !which(placement)),
  });

const PLAIN: readonly PlainCase[] = [
  {
    rule: 'mirrored',
    what: 'the plain wing is laid mirrored',
    edit: change(isCopy('wing'), { mirrored: true, copy: 2 }),
    piece: 'wing',
  },
  {
    rule: 'mirrored',
    what: 'a pocket is laid mirrored',
    edit: change(isCopy('pocket'), { mirrored: true }),
    piece: 'pocket',
  },
  {
    rule: 'count',
    what: 'a pocket is neither laid nor told as not laid',
    edit: drop(isCopy('pocket')),
    piece: 'pocket',
  },
  {
    rule: 'count',
    what: 'a pocket of a second set is laid',
    edit: change(isCopy('pocket'), { set: 2 }),
    piece: 'pocket',
  },
  {
    rule: 'set',
    what: 'whole sets are asked for and one lacks its back',
    edit: (layout) => {
      const copy = { article: 'pouch', piece: 'back', set: 2, copy: 1, mirrored: false };
      return {
        ...drop(isCopy('back', 1, 2))(layout),
        order: { ...layout.order, mode: 'sets' },
        unplaced: [{ ...copy, reason: 'no-room' }],
      };
    },
    piece: 'front',
  },
  {
    rule: 'lot',
    what: 'the two backs change sets',
    edit: (layout) =>
      editPlacement(
        ({ piece }) => piece === 'back',
        (placement) => ({ ...placement, set: 3 - placement.set }),
      )(layout, 0),
    piece: 'back',
  },
  {
    rule: 'sheet',
    what: 'a tag lies on a hide of another leather',
    edit: change(isCopy('tag'), { hide: 'shoulder-two', x: 400, y: 300 }),
    piece: 'tag',
  },
  {
    rule: 'locked',
    what: 'the locked front was moved by 10 µm',
    edit: (layout) => move('front', -1, 0)(layout, 0.01),
    options: { keep: LAYOUT },
    piece: 'front',
  },
];

describe('a rule without a measure', () => {
  for (const { rule, what, edit, options, piece } of PLAIN) {
    test(`when ${what}, ${rule} is broken, and the piece is named`, () => {
      const { violations, proven } = checked(edit(LAYOUT), options);
      expect(proven).toBe(false);
      expect(violations.filter((found) => found.rule === rule).map(({ at }) => at?.piece)).toContain(piece);
    });
  }

  test('when the layout to keep is the layout itself, locked is kept', () => {
    expect(checked(LAYOUT, { keep: LAYOUT }).proven).toBe(true);
  });

  test('when the locked front was moved by 1 µm, locked is kept', () => {
    const { violations } = checked(move('front', -1, 0)(LAYOUT, 0.001), { keep: LAYOUT });
    expect(violations.filter(({ rule }) => rule === 'locked')).toEqual([]);
  });

  test('when a broken rule was accepted by hand, it is listed and the layout is proven', () => {
    const edit = change(isCopy('pocket'), { x: 970, accepted: ['void'] });
    const { violations, proven } = checked(edit(LAYOUT));
    expect(violations.map(({ rule, accepted }) => [rule, accepted])).toEqual([['void', true]]);
    expect(proven).toBe(true);
  });
});

describe('a layout that was tampered with', () => {
  const shrink = (n: number): number => Math.round(n * 990) / 1000;
  const scaled = <Shape>(shape: Shape): Shape =>
    JSON.parse(JSON.stringify(shape), (key, value: unknown) =>
      (key === 'x' || key === 'y') && typeof value === 'number' ? shrink(value) : value,
    ) as Shape;
  const editFlap = (edit: (piece: Layout['pieces'][number]) => Layout['pieces'][number]): Layout => ({
    ...LAYOUT,
    pieces: LAYOUT.pieces.map((piece) => (piece.piece === 'flap' ? edit(piece) : piece)),
  });
  const codes = (layout: Layout): string[] => checked(layout).diagnostics.map(({ code }) => code);

  test('when a piece is shrunk to 0.99 in all its lines and rings, it fails against its hash', () => {
    expect(codes(editFlap((piece) => scaled(piece)))).toContain('layout-piece-hash');
  });

  test('when only the rings of a piece are shrunk, they do not follow from its lines', () => {
    expect(codes(editFlap((piece) => ({ ...piece, region: scaled(piece.region) })))).toContain(
      'layout-piece-region',
    );
  });

  test('when only the face of a piece is shrunk, it does not follow from its lines', () => {
    expect(codes(editFlap((piece) => ({ ...piece, face: scaled(piece.face) })))).toContain(
      'layout-piece-face',
    );
  });

  test('when the arrow of a piece is turned, it does not follow from its lines', () => {
    expect(codes(editFlap((piece) => ({ ...piece, arrowDeg: piece.arrowDeg + 5 })))).toContain(
      'layout-piece-arrow',
    );
  });

  test('when the yield is made better than it is, the figure is named', () => {
    const total = { ...LAYOUT.yield.total, grossYield: LAYOUT.yield.total.grossYield + 0.01 };
    expect(codes({ ...LAYOUT, yield: { ...LAYOUT.yield, total } })).toEqual(['layout-yield-differs']);
  });

  test('when a hide was changed afterwards, the hide is named', () => {
    const edited = HIDES.map(({ file, hide }) => ({
      file,
      hide: hide.id === 'side-one' ? { ...hide, flaws: [] } : hide,
    }));
    const { diagnostics, proven } = checkLayout(LAYOUT, edited);
    expect(proven).toBe(false);
    expect(diagnostics.map((found) => sentenceFor(found))).toContain(
      'side-one.hide.json: Hide side-one was changed after this layout was made; lay the order anew, or bring the old file back.',
    );
  });

  test('when a hide is not at hand, the hide is named', () => {
    const { diagnostics, proven } = checkLayout(LAYOUT, HIDES.slice(1));
    expect(proven).toBe(false);
    expect(diagnostics.map(({ code, params }) => [code, params['hide']])).toEqual([
      ['layout-hide-missing', 'side-one'],
    ]);
  });
});
