import type { Sentence } from '../../sentence.js';

/** What can make a photo unusable here. */
export const PHOTO_CAMERA_REFUSALS = {
  'no-reference': () =>
    'No reference sheet was found in the photo, so nothing tells its scale; lay printed sheets flat beside the hide, or state a rectangle, rules or a card in the hints.',
  'photo-not-tied': () =>
    'No reference in this photo is seen in any of the other photos, so nothing tells how they lie together; photograph the same sheet in both, or trace the photos one by one.',
  'bad-reference': ({ name }) =>
    `The stated ${name} can't be as it is given: its places must not lie on one line, and its lengths must be above 0; give its corners clockwise from the top left.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PHOTO_CAMERA_FINDINGS = {
  'one-reference-only': ({ name, mm }) =>
    `Only one reference is seen (${name}), so places far from it may be off by ${mm} mm; lay one sheet beyond each corner of the hide.`,
  'steep-view': ({ degrees }) =>
    `The photo was taken at a slant of about ${degrees}°, so its far side is shown small and every lump moves the edge; take it from as straight above as you can.`,
  'blurred-photo': ({ px }) =>
    `The photo is blurred (its edges are ${px} px wide), so marks and edges are found less exactly; wipe the lens, rest the camera on something, and give more light.`,
  'sheet-too-bright': ({ name }) =>
    `The paper of ${name} is so bright in the photo that its light is cut off; take the photo darker or without flash.`,
  'sheet-too-dim': ({ name }) =>
    `The markers of ${name} are hardly darker than their paper; give more light, and print with full black.`,
  'bars-not-measured': ({ percent }) =>
    `Nobody said how long the two lines of the printed sheets are, so all lengths may be off by ${percent} %; measure both with a steel rule and tell it with "hidebound markers --measured".`,
  'marker-left-out': ({ name, mm }) =>
    `A marker of ${name} seems to lie ${mm} mm from its place and hardly counts; see whether it is covered, bent or smeared.`,
  'reference-does-not-fit': ({ name, mm }) =>
    `The places of ${name} lie ${mm} mm off from where the rest of the photo puts them; lay it flat, and check what was stated of it.`,
  'sheet-not-flat': ({ name, mm }) =>
    `It looks as if the paper of ${name} stood up from the floor by some ${mm} mm; lay it flat and put weights on its corners.`,
  'sheet-size-differs': ({ name, percent, direction }) =>
    `It looks as if ${name} were ${percent} % ${direction} than the other references say; it was printed at another size or its lines are stated wrongly, so measure them again.`,
  'sheet-stretched': ({ name, percent, direction }) =>
    `The markers of ${name} are ${percent} % too ${direction} for their other side; measure both of its lines again, and tell what the rule shows.`,
  'sheet-moved': ({ name, mm }) =>
    `Between two photos ${name} was moved by ${mm} mm, so it does not tie them together; move neither sheets nor hide between photos.`,
  'references-to-one-side': ({ mm }) =>
    `The references lie to one side of the hide, and its far side may be off by ${mm} mm; lay sheets beyond all its corners.`,
  'references-too-small': ({ mm }) =>
    `The references are small beside the hide, so its edge may be off by ${mm} mm; lay sheets beyond all its corners, or state a larger rectangle.`,
  'too-few-pixels': ({ value }) =>
    `The photo has only ${value} pixels for a millimetre where the hide lies worst, so its edge can't be followed well; go nearer, use the camera's full size, or take several photos.`,
  'not-in-photo': () =>
    'A part of what is wanted lies outside of all photos; take one that shows the whole hide with floor around it.',
  'shine-on-hide': ({ percent }) =>
    `On ${percent} % of the hide the light is so bright that nothing of the leather is seen; take the photo in even light, without flash.`,
} as const satisfies Readonly<Record<string, Sentence>>;
