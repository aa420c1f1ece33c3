import type { Affine } from '@hidebound/geometry';
import type { LaneSetting, PieceSetting, RoughCutSetting, SettingOut, SettingStep } from '@hidebound/leather';
import { INK_SOFT } from '../sheet/palette.js';
import type { PanelBlock, PanelRow, PanelStyle } from '../sheet/panel.js';
import { lineRow, ruleRow, stackRows, tableRow } from '../sheet/table-row.js';
import type { Cell } from '../sheet/table-row.js';
import { MIRRORED_SIGN } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { wrapText } from '../text/measure-text.js';
import {
  byWords,
  cornerName,
  flawWords,
  hasTwoSides,
  mmWords,
  outWords,
  sizeMm,
  turnWords,
} from './setting-words.js';
import type { OutWriting } from './setting-words.js';

/** What tables of measures are written with. */
export interface TableDesk {
  readonly fonts: FontBook;
  readonly style: PanelStyle;
  /** From the hide's frame to the picture's: flaws lie left or right as on the picture. */
  readonly toDrawing: Affine;
  readonly isMirrored: boolean;
}

/** Where the columns stand, in shares of the row: left edges of texts, right edges of figures. */
const AT = { number: 0, name: 0.095, aAlong: 0.5, aOut: 0.62, bAlong: 0.755, bOut: 0.875, turn: 1 } as const;
const FIGURE_ROOM = 0.125;
/** Fine line between entries, as a share of a row. */
const RULE_SHARE = 0.35;

/** The tables of one hide in the order of cutting: pieces that follow each other stand in one table. */
export function measureTables(out: SettingOut, desk: TableDesk): PanelBlock[] {
  const writing: OutWriting = { twoSided: hasTwoSides(out.baseLine), isMirrored: desk.isMirrored };
  const blocks: PanelBlock[] = [];
  let run: PieceSetting[] = [];
  const closeRun = (): void => {
    if (run.length > 0) blocks.push(pieceTable('Pieces', run, writing, desk));
    run = [];
  };
  for (const step of out.steps) {
    if (step.kind === 'piece') run.push(step.piece);
    else {
      closeRun();
      blocks.push(...stepTables(step, writing, desk));
    }
  }
  closeRun();
  return blocks;
}

function stepTables(
  step: Exclude<SettingStep, { readonly kind: 'piece' }>,
  writing: OutWriting,
  desk: TableDesk,
): PanelBlock[] {
  switch (step.kind) {
    case 'lane':
      return laneTables(step.number, step.lane, writing, desk);
    case 'rough cut':
      return roughCutTables(step.number, step.roughCut, writing, desk);
    case 'block': {
      const count = step.pieces.length;
      const words = `Cut a block free that holds ${count} ${count === 1 ? 'piece' : 'pieces'}: ${step.number}.1 to ${step.number}.${count}`;
      return [{ title: `Block ${step.number}`, rows: [lineRow(desk.fonts, desk.style, words)], keepRows: 1 }];
    }
  }
}

function pieceTable(
  title: string,
  pieces: readonly PieceSetting[],
  writing: OutWriting,
  desk: TableDesk,
): PanelBlock {
  return {
    title,
    head: pieceHead(desk),
    rows: pieces.map((piece) => pieceRow(piece, writing, desk)),
    keepRows: 2,
  };
}

function pieceHead({ fonts, style }: TableDesk): PanelRow {
  const head = (text: string, at: number): Cell => ({
    text,
    at,
    room: FIGURE_ROOM * 2,
    align: 'right',
    colour: INK_SOFT,
  });
  return stackRows([
    tableRow(fonts, style, [
      head('A ● along', AT.aAlong),
      head('out', AT.aOut),
      head('B ○ along', AT.bAlong),
      head('out', AT.bOut),
      head('turn', AT.turn),
    ]),
    ruleRow(style, RULE_SHARE),
  ]);
}

/** Number, name, measures and turn on one line; below it how it is cut without a card, and the flaws beside it. */
function pieceRow(piece: PieceSetting, writing: OutWriting, desk: TableDesk): PanelRow {
  const { fonts, style } = desk;
  const { a, b, copy } = piece;
  const figure = (text: string, at: number): Cell => ({
    text,
    at,
    room: FIGURE_ROOM,
    align: 'right',
    face: 'narrow',
  });
  const notes = [byWords(piece), ...flawWords(piece.flaws, desk.toDrawing)].filter(
    (words) => words !== undefined,
  );
  const lines =
    notes.length === 0
      ? []
      : wrapText(fonts, 'narrow', style.textMm, notes.join('; '), style.columnMm * (1 - AT.name));
  return stackRows([
    tableRow(fonts, style, [
      { text: piece.number, at: AT.number, room: AT.name, face: 'narrow bold' },
      {
        text: `${copy.piece}  ${copy.set}/${copy.copy}${copy.mirrored ? ` ${MIRRORED_SIGN}` : ''}`,
        at: AT.name,
        room: AT.aAlong - FIGURE_ROOM - AT.name,
        face: 'narrow bold',
      },
      figure(mmWords(a.measure.alongMm), AT.aAlong),
      figure(outWords(a.measure, writing), AT.aOut),
      ...(b === undefined
        ? []
        : [figure(mmWords(b.measure.alongMm), AT.bAlong), figure(outWords(b.measure, writing), AT.bOut)]),
      ...(piece.by.kind === 'disc' ? [] : [figure(turnWords(piece.turnDeg, writing.isMirrored), AT.turn)]),
    ]),
    ...lines.map((text) =>
      tableRow(fonts, style, [{ text, at: AT.name, room: 1 - AT.name, colour: INK_SOFT }]),
    ),
    ruleRow(style, RULE_SHARE),
  ]);
}

/** Columns of a lane's table. */
const LANE_AT = {
  row: 0.07,
  across: 0.21,
  number: 0.25,
  name: 0.345,
  size: 0.69,
  start: 0.82,
  end: 0.93,
  arrow: 1,
} as const;

/** The first cut by its two marks, and then each strap: how far it lies from that cut, and from where to where. */
function laneTables(number: number, lane: LaneSetting, writing: OutWriting, desk: TableDesk): PanelBlock[] {
  const { fonts, style } = desk;
  const [p, q] = [lane.p, lane.q].map(
    ({ measure }) => `along ${mmWords(measure.alongMm)}, out ${outWords(measure, writing)}`,
  );
  const intro = [
    `Number ${number}, first cut: straight through P (${p!}) and Q (${q!}), from edge to edge. The straps lie on one side of it, as on the picture, row after row.`,
    'Start and end are measured along the first cut, from P towards Q. The arrow of a strap points the way of P or of Q.',
  ].flatMap((text) => wrapText(fonts, 'narrow', style.textMm, text, style.columnMm));
  const head = (text: string, at: number, align: 'left' | 'right' = 'right'): Cell => ({
    text,
    at,
    room: FIGURE_ROOM * 2,
    align,
    colour: INK_SOFT,
  });
  const rows = lane.rows.flatMap((row, i) =>
    row.straps.map((strap, k): PanelRow => {
      const figure = (text: string, at: number): Cell => ({
        text,
        at,
        room: FIGURE_ROOM * 2,
        align: 'right',
      });
      return stackRows([
        tableRow(fonts, style, [
          ...(k > 0
            ? []
            : [
                { ...figure(String(i + 1), LANE_AT.row), face: 'narrow bold' as const },
                figure(mmWords(row.acrossMm), LANE_AT.across),
              ]),
          {
            text: strap.number,
            at: LANE_AT.number,
            room: LANE_AT.name - LANE_AT.number,
            face: 'narrow bold',
          },
          { text: strap.copy.piece, at: LANE_AT.name, room: 0.21, face: 'narrow bold' },
          figure(`${sizeMm(row.widthMm)} × ${sizeMm(strap.lengthMm)}`, LANE_AT.size),
          figure(mmWords(strap.startMm), LANE_AT.start),
          figure(mmWords(strap.startMm + strap.lengthMm), LANE_AT.end),
          figure(strap.isForward ? '→ Q' : '→ P', LANE_AT.arrow),
        ]),
        ruleRow(style, RULE_SHARE),
      ]);
    }),
  );
  return [
    {
      title: `Lane ${lane.id}`,
      rows: intro.map((text) => lineRow(fonts, style, text)),
      keepRows: intro.length,
    },
    {
      title: `Straps of lane ${lane.id}`,
      head: stackRows([
        tableRow(fonts, style, [
          head('row', LANE_AT.row),
          head('from cut', LANE_AT.across),
          head('strap', LANE_AT.number, 'left'),
          head('cut', LANE_AT.size),
          head('start', LANE_AT.start),
          head('end', LANE_AT.end),
          head('arrow', LANE_AT.arrow),
        ]),
        ruleRow(style, RULE_SHARE),
      ]),
      rows,
      keepRows: 2,
    },
  ];
}

/** Corners stand so many to a row. */
const CORNERS_A_ROW = 3;

/** The corners of a rough cut, and a table of its pieces, measured from its longest side once it is prepared. */
function roughCutTables(
  number: number,
  roughCut: RoughCutSetting,
  writing: OutWriting,
  desk: TableDesk,
): PanelBlock[] {
  const { fonts, style } = desk;
  const { corners, baseSide, id } = roughCut;
  const [from, to] = baseSide.map((i) => cornerName(number, i));
  const rows: PanelRow[] = [];
  for (let i = 0; i < corners.length; i += CORNERS_A_ROW) {
    const cells = corners.slice(i, i + CORNERS_A_ROW).flatMap(({ measure }, k): Cell[] => {
      const at = k / CORNERS_A_ROW;
      return [
        { text: cornerName(number, i + k), at, room: 0.06, face: 'narrow bold' },
        { text: mmWords(measure.alongMm), at: at + 0.15, room: FIGURE_ROOM, align: 'right' },
        { text: outWords(measure, writing), at: at + 0.27, room: FIGURE_ROOM, align: 'right' },
      ];
    });
    rows.push(stackRows([tableRow(fonts, style, cells), ruleRow(style, RULE_SHARE)]));
  }
  const own: OutWriting = { twoSided: false, isMirrored: writing.isMirrored };
  return [
    { title: `Rough cut ${number}, ${id}: its corners, along and out`, rows, keepRows: 2 },
    ...(roughCut.pieces.length === 0
      ? []
      : [
          pieceTable(
            `Once prepared, pieces of ${id} from its side ${from!}–${to!}`,
            roughCut.pieces,
            own,
            desk,
          ),
        ]),
  ];
}
