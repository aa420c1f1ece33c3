import { transformCurve, translation } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { ownerWords } from '@hidebound/leather';
import type { CutFile, CutKind, PieceCopy } from '@hidebound/leather';
import type { FontBook } from '../text/font-book.js';
import { labelCurves } from './label-curves.js';

/** A cut file ready to be written: mm, x to the right, y down, from the upper left corner of the frame. */
export interface CutDrawing {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** In the order of cutting; the same kind stands together. */
  readonly paths: readonly CutDrawingPath[];
}

export interface CutDrawingPath {
  readonly kind: CutKind | 'text';
  /** Whose it is, for readers of the file. */
  readonly name: string;
  readonly curves: readonly Curve[];
}

export interface CutDrawingOptions {
  readonly title: string;
  /** Each piece is named by its number and name, in outlines. */
  readonly text?: { readonly fonts: FontBook; readonly numberOf: (copy: PieceCopy) => string };
}

export interface CutDrawingResult {
  readonly drawing: CutDrawing;
  /** Pieces that have no room for a name. */
  readonly unnamed: readonly PieceCopy[];
}

/** The paths of a cut file, and names where they are asked for, moved so that the frame's upper left corner is the origin. */
export function drawCutFile(file: CutFile, options: CutDrawingOptions): CutDrawingResult {
  const { frame } = file;
  const move = translation(-frame.minX, -frame.minY);
  const cuts = file.paths.map(({ kind, of, strokes }): CutDrawingPath => ({
    kind,
    name: ownerWords(of),
    curves: strokes,
  }));
  const { names, unnamed } = namePaths(file, options);
  const isFramed = cuts[0]?.kind === 'frame';
  const all = [...cuts.slice(0, isFramed ? 1 : 0), ...names, ...cuts.slice(isFramed ? 1 : 0)];
  const drawing: CutDrawing = {
    title: options.title,
    widthMm: frame.maxX - frame.minX,
    heightMm: frame.maxY - frame.minY,
    paths: all.map((path) => ({
      ...path,
      curves: path.curves.map((curve) => transformCurve(move, curve)),
    })),
  };
  return { drawing, unnamed };
}

interface Names {
  readonly names: readonly CutDrawingPath[];
  readonly unnamed: readonly PieceCopy[];
}

function namePaths({ labels }: CutFile, { text }: CutDrawingOptions): Names {
  if (text === undefined) return { names: [], unnamed: [] };
  const names: CutDrawingPath[] = [];
  const unnamed: PieceCopy[] = [];
  for (const label of labels) {
    const curves = labelCurves(label, text.numberOf(label.copy), text.fonts);
    if (curves === undefined) unnamed.push(label.copy);
    else names.push({ kind: 'text', name: ownerWords({ kind: 'piece', copy: label.copy }), curves });
  }
  return { names, unnamed };
}
