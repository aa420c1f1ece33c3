import { intersectRegions } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { freeFlawName } from '../hide/confirm-hide.js';
import { flawRegions } from '../hide/flaw-region.js';
import { hideRegion, netRegions } from '../hide/hide-region.js';
import { FLAW_KINDS } from '../model/hide.js';
import type { Flaw, FlawKind, FlawShape, Hide } from '../model/hide.js';
import type { Effect } from '../model/marks.js';
import type { UseFrom } from '../model/order.js';
import { baseLineOf } from '../setting-out/base-line.js';
import { pointOf } from '../setting-out/frame.js';
import { leatherError } from '../words/refuse.js';
import { listWords, quoteValue } from '../words/sentence.js';

/** A flaw that was found while cutting, in the frame that it was measured in; mm. */
export interface FoundFlaw {
  /** Undefined where nobody said what it is. */
  readonly kind?: FlawKind;
  readonly shape: FlawShape;
  /** What it does to the leather, where that is not what its kind says. */
  readonly effect?: Effect;
  /** As it was written. */
  readonly text: string;
}

/** From where a flaw is measured: in the hide's own frame, or along and out from the line of its sheet for setting out. */
export type FlawFrame = 'hide' | 'line';

/** A spot that nobody names is one that is never to be used. */
const USUAL_KIND: FlawKind = 'hole';
/** Wider than any hide is a slip. */
const LARGEST_MM = 5000;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

/**
 * A flaw in a worker's words: "310,420,12" or "hole 310,420 12" is a spot with its radius, "scar 310,420 390,460 8" a
 * line with its width.
 * @throws LeatherError `flaw-bad-words`, `flaw-without-size`
 */
export function parseFoundFlaw(text: string): FoundFlaw {
  const found = quoteValue(text);
  const kind = FLAW_KINDS.find((each) => text.trim().toLowerCase().startsWith(each));
  const rest = kind === undefined ? text.trim() : text.trim().slice(kind.length);
  const words = rest.split(/[\s,;:]+/).filter((word) => word !== '');
  const numbers = words.map(Number);
  if (!words.every((word) => NUMBER.test(word)) || numbers.length < 3 || numbers.length % 2 === 0) {
    throw leatherError('flaw-bad-words', { found, kinds: listWords(FLAW_KINDS) });
  }
  const size = numbers[numbers.length - 1]!;
  if (!(size > 0 && size <= LARGEST_MM)) throw leatherError('flaw-without-size', { found });
  const places: Point[] = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) places.push({ x: numbers[i]!, y: numbers[i + 1]! });
  const shape: FlawShape =
    places.length === 1
      ? { kind: 'point', at: places[0]!, radiusMm: size }
      : { kind: 'line', line: places, widthMm: size };
  return { kind: kind ?? USUAL_KIND, shape, text: text.trim() };
}

/**
 * The hide with a flaw more, and that flaw. Measured from the line of the sheet for setting out, the first number is the
 * way along it and the second the way out from it.
 * @throws LeatherError `flaw-off-hide`
 */
export function withFoundFlaw(
  hide: Hide,
  flaw: FoundFlaw,
  from: { readonly frame: FlawFrame; readonly useFrom: UseFrom },
): { readonly hide: Hide; readonly flaw: Flaw } {
  const shape = from.frame === 'hide' ? flaw.shape : onHide(flaw.shape, hide, from.useFrom);
  if (intersectRegions(flawRegions(shape), netRegions(hideRegion(hide))).length === 0) {
    throw leatherError('flaw-off-hide', { hide: hide.id, found: quoteValue(flaw.text) });
  }
  const used = new Set([...hide.flaws, ...hide.candidates].map(({ id }) => id));
  const { kind, effect } = flaw;
  const added: Flaw = {
    id: freeFlawName(kind ?? 'flaw', used),
    ...(kind === undefined ? {} : { kind }),
    side: 'grain',
    shape,
    ...(effect === undefined ? {} : { effect }),
  };
  return { hide: { ...hide, flaws: [...hide.flaws, added] }, flaw: added };
}

function onHide(shape: FlawShape, hide: Hide, useFrom: UseFrom): FlawShape {
  const { frame } = baseLineOf(hide, useFrom);
  const move = ({ x, y }: Point): Point => pointOf(frame, { alongMm: x, outMm: y });
  switch (shape.kind) {
    case 'point':
      return { ...shape, at: move(shape.at) };
    case 'line':
      return { ...shape, line: shape.line.map(move) };
    case 'area':
      return shape;
  }
}
