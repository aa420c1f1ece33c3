import { nameHint } from './nearest.js';
import type { NearestParams } from './nearest.js';
import type { SentenceTable } from './sentence.js';

/** A piece of an order, in words. */
export interface OrderPieceParams {
  readonly piece: string;
  readonly article: string;
}

const who = (p: OrderPieceParams): string => `"${p.piece}" of the article "${p.article}"`;

/** English sentences for orders, pieces and layouts that contradict themselves. */
export const ORDER_SENTENCES = {
  'order-article-twice': (p: { name: string }) =>
    `The order has two articles named "${p.name}"; give each its own name.`,
  'order-leather-twice': (p: { name: string }) =>
    `The order has two leathers named "${p.name}"; give each its own name.`,
  'order-piece-twice': (p: { name: string; article: string }) =>
    `The order has two pieces of the article "${p.article}" named "${p.name}"; give each its own name.`,
  'order-hide-id-twice': (p: { first: string; second: string; hide: string }) =>
    `The hides in "${p.first}" and "${p.second}" have the same id "${p.hide}"; give each its own, so that a layout can tell them apart.`,
  'suit-hide-id-twice': (p: { first: string; second: string; hide: string }) =>
    `The hides in "${p.first}" and "${p.second}" have the same id "${p.hide}"; give each its own, so that they can be told apart.`,
  'hide-given-twice': (p: { hide: string }) => `Another hide with the id "${p.hide}" was given already.`,
  'article-without-pieces': (p: { article: string }) => `The article "${p.article}" has no pieces.`,
  'piece-leather-unknown': (p: OrderPieceParams & NearestParams & { leather: string }) =>
    `The piece ${who(p)} is to be of the leather "${p.leather}", which the order does not list${nameHint(p)}`,
  'leather-without-hides': (p: OrderPieceParams & { leather: string }) =>
    `The leather "${p.leather}" has no hides, but the piece ${who(p)} is to be cut from it; list a hide file under it.`,
  'leather-hide-not-given': (p: NearestParams & { leather: string; file: string }) =>
    `The leather "${p.leather}" is to be cut from "${p.file}", which was not given${nameHint(p)}`,
  'article-thread-unknown': (p: NearestParams & { article: string; thread: string }) =>
    `The article "${p.article}" is sewn with the thread "${p.thread}", which neither it nor the order lists under "threads"${nameHint(p)}`,
  'piece-thread-unknown': (p: OrderPieceParams & NearestParams & { thread: string }) =>
    `The piece ${who(p)} is sewn with the thread "${p.thread}", which neither it nor the order lists under "threads"${nameHint(p)}`,
  'piece-count-bad': (p: OrderPieceParams & { count: number }) =>
    `The piece ${who(p)} has the count ${p.count}; it must be a whole number, 0 or more.`,
  'piece-mirrored-bad': (p: OrderPieceParams & { mirrored: number; count: number }) =>
    `The piece ${who(p)} asks for ${p.mirrored} mirrored of ${p.count} copies; there can't be more mirrored ones than copies.`,
  'piece-layers-bad': (p: OrderPieceParams & { layers: number }) =>
    `The piece ${who(p)} has ${p.layers} layers; it must be a whole number, 1 or more.`,
  'seam-piece-unknown': (p: OrderPieceParams & NearestParams & { wanted: string }) =>
    `The piece ${who(p)} is sewn to "${p.wanted}", but the article has no such piece${nameHint(p)}`,
  'beside-piece-unknown': (p: NearestParams & { article: string; wanted: string }) =>
    `The article "${p.article}" lays side by side "${p.wanted}", but the article has no such piece${nameHint(p)}`,
  'seam-line-unknown': (p: OrderPieceParams & NearestParams & { line: string }) =>
    `The piece ${who(p)} is sewn along its line "${p.line}", but has no stitch line of that name${nameHint(p)}`,
  'face-line-unknown': (p: NearestParams & { piece: string; line: string }) =>
    `The piece "${p.piece}" takes its face from a line "${p.line}", but has no closed line of that name${nameHint(p)}`,
  'lane-not-straight': (p: OrderPieceParams) =>
    `The piece ${who(p)} is to be cut in a lane of straps, but is not drawn as a strap or rectangle by numbers; draw it so, or leave the lane out.`,
  'allowance-bad': (p: { piece: string; allowanceMm: number }) =>
    `The allowance of the piece "${p.piece}" is ${p.allowanceMm} mm; it must be 0 mm or more.`,

  'pattern-without-pieces': (p: OrderPieceParams) =>
    `No piece was found in this file, but the piece ${who(p)} is to come from it; it needs a closed cut line.`,
  'pattern-name-twice': (p: OrderPieceParams & { count: number; wanted: string }) =>
    `In this file ${p.count} pieces are named "${p.wanted}", so the piece ${who(p)} can't tell which is meant; give each its own name.`,
  'pattern-piece-unknown': (p: OrderPieceParams & NearestParams & { wanted: string }) =>
    `The piece ${who(p)} is to be "${p.wanted}", which is not in this file${nameHint(p)}`,
  'pattern-outline-crosses': (p: OrderPieceParams & { wanted: string }) =>
    `The cut line of "${p.wanted}" crosses itself here, so the piece ${who(p)} can't be cut from it; pull the line apart in the drawing.`,

  'drawn-not-positive': (p: { piece: string; what: DrawnMeasure }) =>
    `The piece "${p.piece}" can't be drawn: its ${p.what} must be more than 0 mm.`,
  'drawn-corners-too-large': (p: { piece: string; radiusMm: number; widthMm: number; lengthMm: number }) =>
    `The piece "${p.piece}" can't be drawn: a corner radius of ${p.radiusMm} mm does not fit into ${p.widthMm} x ${p.lengthMm} mm.`,
  'drawn-ends-too-long': (p: { piece: string; lengthMm: number }) =>
    `The piece "${p.piece}" can't be drawn: its two ends are longer than its length of ${p.lengthMm} mm.`,
  'drawn-holes-outside': (p: { piece: string; holes: number }) =>
    `The piece "${p.piece}" can't be drawn: its row of ${p.holes} holes does not lie within the strap.`,
  'drawn-slot-short': (p: { piece: string }) =>
    `The piece "${p.piece}" can't be drawn: its slot is shorter than wide.`,
  'drawn-slot-outside': (p: { piece: string }) =>
    `The piece "${p.piece}" can't be drawn: its slot does not lie within the strap.`,

  'keep-piece-unknown': (p: OrderPieceParams) =>
    `The layout to keep has a ${who(p)} that stays where it is, but the order has no such piece; take it out of the layout or put it back into the order.`,
  'piece-not-ready': (p: OrderPieceParams & NearestParams) =>
    `The article "${p.article}" has no piece "${p.piece}" that was made ready to be laid${nameHint(p)}`,
  'layout-piece-not-held': (p: OrderPieceParams) =>
    `The layout lays a piece ${who(p)}, but holds no such piece.`,
} as const satisfies SentenceTable;

/** Measures of a piece that is drawn by numbers. */
export type DrawnMeasure = 'diameter' | 'width' | 'length' | 'diameter of the holes' | 'width of the slot';
