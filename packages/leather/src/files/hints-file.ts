import type { Point, Polyline } from '@hidebound/geometry';
import type { HintedPhoto, PhotoHints, StatedReference } from '../model/photo-hints.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { definedOnly } from './defined-only.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { HINTS_FORMAT, hintsFileSchema } from './schema/written-hints.js';
import type { WrittenPhotoHints } from './schema/written-hints.js';
import type { KeyPath } from './text/text-tree.js';
import type { WhereOf } from './validate-hide.js';
import { writeYaml } from './write-written.js';
import { YAML_SYNTAX } from './text/yaml-text.js';

const format: FileFormat<typeof hintsFileSchema> = {
  kind: 'photo-hints',
  syntax: YAML_SYNTAX,
  schema: hintsFileSchema,
  upgrades: [],
};

/**
 * Reads a file of hints (`*.hints.yaml`): what a person says of the photos of one hide, in pixels of these photos.
 * @throws LeatherError
 */
export function parsePhotoHints(text: string, options: { readonly file: string }): PhotoHints {
  const opened = openFile(text, options.file, format);
  const { photos } = opened.value;
  const where: WhereOf = (path) => placeOf(opened, path);
  refuseRepeatedPhotos(photos, where);
  photos.forEach((photo, i) => validateReference(photo, ['photos', i], where));
  return { photos: photos.map(readPhoto) };
}

function readPhoto(written: WrittenPhotoHints): HintedPhoto {
  return definedOnly({
    photo: written.photo,
    reference: readReference(written),
    hideStrokes: written.hide,
    floorStrokes: written.floor,
    edgePoints: written.edge,
  });
}

function readReference({ rectangle, rules, card }: WrittenPhotoHints): StatedReference | undefined {
  if (rectangle !== undefined) {
    const { corners, width, height } = rectangle;
    return { kind: 'rectangle', corners, widthMm: width, heightMm: height };
  }
  if (rules !== undefined) {
    const read = (list: typeof rules.along) => list.map(({ at, reads }) => ({ at, mm: reads }));
    return { kind: 'rules', along: read(rules.along), across: read(rules.across) };
  }
  return card === undefined ? undefined : { kind: 'card', corners: card.corners };
}

function refuseRepeatedPhotos(photos: readonly WrittenPhotoHints[], where: WhereOf): void {
  const seen = new Set<string>();
  photos.forEach(({ photo }, i) => {
    if (seen.has(photo)) {
      throw leatherError('hints-photo-twice', { photo: quoteValue(photo) }, where(['photos', i, 'photo']));
    }
    seen.add(photo);
  });
}

function validateReference(photo: WrittenPhotoHints, path: KeyPath, where: WhereOf): void {
  const { rectangle, rules, card } = photo;
  const stated = (['rectangle', 'rules', 'card'] as const).filter((key) => photo[key] !== undefined);
  if (stated.length > 1) {
    const params = { first: stated[0]!, second: stated[1]! };
    throw leatherError('hints-two-references', params, where([...path, stated[1]!]));
  }
  for (const [key, corners] of [
    ['rectangle', rectangle?.corners],
    ['card', card?.corners],
  ] as const) {
    if (corners !== undefined) refuseCrossedCorners(corners, () => where([...path, key, 'corners']));
  }
  for (const key of ['along', 'across'] as const) {
    if (rules !== undefined) refuseEqualReadings(rules[key], () => where([...path, 'rules', key]));
  }
}

/** Corners clockwise as seen (y down) turn right at each of the four. */
function refuseCrossedCorners(corners: readonly Point[], place: () => ReturnType<WhereOf>): void {
  const turnsRight = corners.every((here, i) => {
    const before = corners[(i + 3) % 4]!;
    const after = corners[(i + 1) % 4]!;
    return (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x) > 0;
  });
  if (!turnsRight) throw leatherError('hints-corners', {}, place());
}

function refuseEqualReadings(
  readings: readonly { readonly reads: number }[],
  place: () => ReturnType<WhereOf>,
): void {
  const values = new Set(readings.map(({ reads }) => reads));
  if (values.size < readings.length) throw leatherError('hints-readings', {}, place());
}

/** The file of hints as a person would write it. */
export function writePhotoHints({ photos }: PhotoHints): string {
  return writeYaml({ format: HINTS_FORMAT, photos: photos.map(writePhoto) });
}

const pair = ({ x, y }: Point): readonly [number, number] => [x, y];
const pairs = (points: readonly Point[]) => points.map(pair);

function orNone(strokes: readonly Polyline[]) {
  return strokes.length === 0 ? undefined : strokes.map(pairs);
}

function writePhoto({ photo, reference, hideStrokes, floorStrokes, edgePoints }: HintedPhoto) {
  return definedOnly({
    photo,
    hide: orNone(hideStrokes),
    floor: orNone(floorStrokes),
    edge: edgePoints.length === 0 ? undefined : pairs(edgePoints),
    ...(reference === undefined ? {} : writeReference(reference)),
  });
}

function writeReference(reference: StatedReference) {
  switch (reference.kind) {
    case 'rectangle': {
      const { corners, widthMm, heightMm } = reference;
      return { rectangle: { corners: pairs(corners), width: widthMm, height: heightMm } };
    }
    case 'rules': {
      const write = (list: typeof reference.along) => list.map(({ at, mm }) => ({ at: pair(at), reads: mm }));
      return { rules: { along: write(reference.along), across: write(reference.across) } };
    }
    case 'card':
      return { card: { corners: pairs(reference.corners) } };
  }
}
