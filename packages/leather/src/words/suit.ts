import { trimmed } from '../units/length.js';
import type { SuitRemark, SuitRemarkCode } from '../suit/suit-model.js';
import type { LeatherNeed } from '../model/workshop-rules.js';
import type { SentenceTable } from './sentence.js';

/** "2.2–2.9 mm"; one figure where both ends are the same. Tenths are what leather is sold by. */
export function thicknessWords(minMm: number, maxMm: number): string {
  const [from, to] = [minMm.toFixed(1), maxMm.toFixed(1)];
  return from === to ? `${from} mm` : `${from}–${to} mm`;
}

/** Figures that a remark may carry. */
export interface RemarkParams {
  readonly minMm: number;
  readonly maxMm: number;
  readonly wantedMinMm: number;
  readonly wantedMaxMm: number;
  readonly share: number;
  readonly toleranceMm: number;
  readonly found: string;
  readonly asked: string;
  readonly need: LeatherNeed;
  readonly tannage: string;
  readonly zones: string;
  readonly isLoad: number;
}

const has = (p: RemarkParams): string => thicknessWords(p.minMm, p.maxMm);
const wants = (p: RemarkParams): string => thicknessWords(p.wantedMinMm, p.wantedMaxMm);

const CAN_NOT: Readonly<Record<LeatherNeed, string>> = {
  tooling: 'will not take tooling',
  moulding: 'will not keep a wet-formed shape',
  'burnished edges': 'will not burnish',
  'turned edges': 'will not turn at the edge',
  'standing up': 'will not stand up',
  'keeping its length': 'stretches',
  'lying against steel': 'does not belong beside steel',
  'lying on skin': 'does not belong on skin',
};

const WITH_CARE: Readonly<Record<LeatherNeed, string>> = {
  tooling: 'takes tooling poorly',
  moulding: 'is wet-formed with care, and may not hold',
  'burnished edges': 'burnishes poorly: paint or turn its edges',
  'turned edges': 'turns at the edge with care',
  'standing up': 'stands up only with a stiffener',
  'keeping its length': 'may stretch: cut it from the bend, or line it',
  'lying against steel': 'marks steel in time: store no blade or gun in it',
  'lying on skin': 'on skin: keep the supplier’s statement on chromium(VI)',
};

/** What is said about a piece on a hide, to follow the hide's name. */
const REMARK_WORDS: Readonly<Record<SuitRemarkCode, (p: RemarkParams) => string>> = {
  'too-thin': (p) => `too thin (${has(p)} where ${wants(p)} is wanted)`,
  'too-thick': (p) => `too thick (${has(p)} where ${wants(p)} is wanted), and it is not to be skived`,
  'skive-too-deep': (p) =>
    `too thick (${has(p)} where ${wants(p)} is wanted): too much to skive off, have it split`,
  'too-little-of-it': (p) =>
    `too little of it is of the wanted thickness (${has(p)} where ${wants(p)} is wanted)`,
  'tannage-not-asked': (p) => `${p.found}, where ${p.asked} is asked for`,
  'need-not-met': (p) => `${CAN_NOT[p.need]} (${p.tannage})`,
  'too-soft': (p) => `too soft (${p.found} where ${p.asked} is wanted)`,
  'too-hard': (p) => `too stiff (${p.found} where ${p.asked} is wanted)`,
  'too-soft-to-stand': () => 'too soft to stand up',
  'too-hard-to-turn': () => 'too hard to turn at the edge',
  'finished-for-tooling': (p) => `will not take tooling: it has a finish (${p.found})`,
  'finish-not-asked': (p) => `finished "${p.found}", where "${p.asked}" is asked for`,
  'other-colour': (p) => `wrong colour (${p.found} where ${p.asked} is asked for)`,
  'no-such-zone': (p) =>
    `has no ${p.zones === '' ? 'usable place' : p.zones}${p.isLoad === 1 ? ' that bears a load' : ''} to cut it from`,
  'too-small': () => 'too small',
  'cut-already': () => 'was cut already',
  'need-with-care': (p) => `${p.tannage}: ${WITH_CARE[p.need]}`,
  'tannage-unusual': (p) => `${p.found} is not usual for it (${p.asked} is)`,
  'softer-than-usual': (p) => `softer than usual (${p.found}, usual is ${p.asked})`,
  'stiffer-than-usual': (p) => `stiffer than usual (${p.found}, usual is ${p.asked})`,
  'only-places': (p) =>
    `only from places of ${has(p)} (${Math.round(p.share * 100)} % of what it may come from)`,
  'measure-places': (p) =>
    `stated as ${has(p)} all over, ${wants(p)} is wanted: measure at places, and write the readings into its file`,
  'within-tolerance': (p) => `right within the usual ${trimmed(p.toleranceMm, 2)} mm; measure it`,
  'thickness-not-known': (p) => `thickness not known, ${wants(p)} is wanted: measure it`,
  'tannage-not-known': () => 'tannage not known: ask the seller',
  'temper-not-known': () => 'temper not known: bend a corner',
  'finish-not-known': () => 'finish not known: try a drop of water on an offcut, tooling needs it to soak in',
  'zone-unusual': (p) => `is no ${p.zones}, from which it is usually cut`,
  reserved: () => 'is reserved',
  'order-refuses-skiving': () => 'the order does not say that it may be skived: write "tooThick: skive"',
};

/** A remark as a phrase without a full stop. */
export function suitRemarkWords({ code, params }: SuitRemark): string {
  return REMARK_WORDS[code](params as unknown as RemarkParams);
}

/** Why a hide does not fit, as data. */
export interface HideReason {
  readonly hide: string;
  readonly remark?: SuitRemark;
}

/** Parameters are plain texts: reasons as one of them, so that another language can word them anew. */
export function reasonsText(reasons: readonly HideReason[]): string {
  return JSON.stringify(reasons);
}

export function reasonsOf(text: string): readonly HideReason[] {
  return JSON.parse(text) as readonly HideReason[];
}

export interface SuitPieceParams {
  readonly piece: string;
  readonly article: string;
}

const who = (p: SuitPieceParams): string => `"${p.piece}" of ${p.article}`;

/** Sentences on which leather goes where. */
export const SUIT_SENTENCES = {
  'suit-goods-not-known': (p: { goods: string; article: string; near?: string }) =>
    `The table of goods has no row "${p.goods}" (article ${p.article}), so only its leathers and the rules of its parts count${p.near === undefined ? '' : ` (did you mean "${p.near}"?)`}; to change that, add it in workshop.yaml, as "goods: { ${p.goods}: { thickness: 2.0-2.8 mm, tannage: vegetable, temper: firm } }".`,
  'suit-far-from-goods': (p: { who: string; asked: string; row: string; usual: string }) =>
    `Thickness asked for ${p.who} is ${p.asked}, but ${p.row} is usually of ${p.usual}; what the order says counts, so make sure that it is meant.`,
  'suit-thickness-not-known': (p: { hide: string }) =>
    `Thickness of hide ${p.hide} is not known; measure it at several places and write it into its file.`,
  'suit-tannage-not-in-table': (p: { tannage: string; whose: string; near?: string }) =>
    `Tannage "${p.tannage}" (${p.whose}) is not in the table, so nobody knows what it can't do${p.near === undefined ? '' : ` (did you mean "${p.near}"?)`}; add it under "tannages" in workshop.yaml.`,
  'suit-genuine': (p: { hide: string }) =>
    `Hide ${p.hide} is sold as "genuine": the word says that it is leather, not that it is good leather; ask which split it is, and how it was tanned and finished.`,
  'suit-bonded': (p: { hide: string }) =>
    `Hide ${p.hide} is bonded leather: fibres glued together, which tear at stitches, stretch under load and do not burnish; use it for nothing that bears a load or is seen at the edge.`,
  'suit-lots-differ': (p: { leather: string; lots: string; articles: string }) =>
    `The hides of leather "${p.leather}" are of different lots (${p.lots}), whose shade may differ; compare them in daylight, and keep each article (${p.articles}) on one lot where it is seen.`,
  'suit-dye-over-finish': (p: { leather: string; hide: string; finish: string; dye: string }) =>
    `Hide ${p.hide} has a finish (${p.finish}), through which the dye "${p.dye}" of leather "${p.leather}" does not soak evenly and rubs off; take unfinished leather, or try it on an offcut of this hide.`,
  'suit-strap-from-belly': (p: SuitPieceParams & { zones: string }) =>
    `The order lets ${who(p)} come from the ${p.zones}, which stretches most, and for good; cut what bears a load from bend or shoulder.`,
  'suit-zones-not-drawn': (p: { hide: string; pieces: string }) =>
    `Hide ${p.hide} shows no zones, so that nothing keeps ${p.pieces} out of its belly; draw its zones, or cut these from the back by eye.`,
  'suit-edge-thin': (p: SuitPieceParams & { thickness: string; least: string }) =>
    `Single edges of ${who(p)} come out ${p.thickness} thick; below ${p.least} mm an edge is hard to burnish: turn it, or glue it to its neighbour first.`,
  'suit-thin-for-load': (p: SuitPieceParams & { thickness: string; least: string }) =>
    `As one layer of ${p.thickness}, ${who(p)} is too weak for its load (from ${p.least} mm on it holds); double or line it.`,
  'suit-thin-warps': (p: SuitPieceParams & { thickness: string }) =>
    `As firm leather of ${p.thickness}, ${who(p)} warps when it is wetted, dyed or glued on one side; damp both sides, and dry it flat under a weight.`,
  'suit-too-thick-to-turn': (p: SuitPieceParams & { thickness: string; most: string }) =>
    `Edges of ${who(p)} are to be turned, but leather of ${p.thickness} does not turn neatly above ${p.most} mm; take thinner leather, or leave the edge raw and burnish it.`,
  'suit-beside-steel': (p: { articles: string }) =>
    `No blade and no gun is stored in leather (${p.articles}): what chrome leaves rusts steel, and vegetable tanned leather is acid too; carry it in leather, store it dry and oiled outside.`,
  'suit-no-hide': (p: SuitPieceParams & { leather: string; why: string; reasons?: string }) =>
    `No hide on hand fits ${who(p)} (leather "${p.leather}")${p.why === '' ? '' : `: ${p.why}`}.`,
  'suit-other-hide': (
    p: SuitPieceParams & { leather: string; hides: string; why: string; reasons?: string },
  ) =>
    `None of the hides of leather "${p.leather}" fits ${who(p)} (${p.why}), but ${p.hides} does; list it under that leather.`,
} as const satisfies SentenceTable;
