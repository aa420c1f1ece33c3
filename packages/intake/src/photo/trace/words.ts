import type { Sentence } from '../../sentence.js';
import { plural } from '../../sentence.js';

/** What can stop the tracing of a hide here. */
export const PHOTO_TRACE_REFUSALS = {
  'no-photo': () => 'No photo was given; give at least one that shows the hide from above.',
  'trace-stopped': () => 'Stopped by hand; nothing was written.',
  'cards-without-scale': () =>
    'Nothing tells how large this picture is: no reference sheet was found, and the file says no resolution; give the pixels to the inch of the scan (--dpi), or lay a reference sheet beside the cards.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_TRACE_FINDINGS = {
  'hints-for-no-photo': ({ photo }) =>
    `The hints speak of a photo "${photo}", which was not given; name the photo in the hints as its file is called.`,
  'hint-off-photo': ({ x, y, width, height }) =>
    `A hint at ${x}, ${y} lies off this photo, which has ${width} × ${height} pixels, and is left out; take the places from the photo in its full size.`,
  'area-differs': ({ invoiced, measured, difference, error }) =>
    `The hide is sold as ${invoiced}, and the photo shows ${measured}: ${Math.abs(Number(difference)).toFixed(1)} % ${Number(difference) < 0 ? 'less' : 'more'}, while the photo may be off by ${error} %; measure the lines of the reference sheets, then ask the seller.`,
  'backbone-guessed': ({ confidence }) =>
    `The backbone is a guess (${confidence} of 100 sure); look at it, then confirm it or draw your own.`,
  'cut-guessed': ({ cut }) =>
    `The hide is taken for a ${cut} by its shape; say otherwise with its cut if it is none.`,
  'no-backbone-guessed': () =>
    'No backbone could be guessed, so nothing tells the direction in which the leather stretches least; draw a line from head to tail.',
  'photo-of-moved-hide': ({ mm }) =>
    `The hide lies ${mm} mm off from where the first photo shows it; if it was dragged along, say that it was moved.`,
  'other-side-flaws': ({ count }) =>
    `${plural(count, 'mark', 'marks')} from the photo of the other side ${Number(count) === 1 ? 'is' : 'are'} laid onto the hide.`,
} as const satisfies Readonly<Record<string, Sentence>>;
