import { orientRing, regionArea, ringBox, widestInscribedCircle } from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import type { Hide, LeatherQualities, Side } from '@hidebound/leather';
import { readingNumbers } from '../../pieces/reading-order.js';
import type { FloorError } from '../camera/solved-floor.js';
import type { FoundOutline } from '../outline/find-outlines.js';
import { simplifyWithin } from '../outline/simplify-within.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { assembleHide } from '../trace/assemble-hide.js';
import { hideErrors } from '../trace/known-errors.js';

/** What is known of all scraps of one picture together; typed once. */
export interface ScrapOptions {
  /** The picture that the outlines were found in. */
  readonly picture: StraightPicture;
  readonly sideUp: Side;
  /** Ids are this, a hyphen and the number. */
  readonly idPrefix: string;
  /** The number of the first scrap; 1 if absent. Another box of scraps goes on where the last one ended. */
  readonly firstNumber?: number;
  readonly scaledBy: string;
  readonly takenFrom: readonly string[];
  /** How far off the floor is within a box of it. */
  readonly errorWithin: (box: Box) => FloorError;
  /** What a scrap's own picture will be called, beside its file. */
  readonly pictureFileOf: (id: string) => string;
  readonly leather?: Partial<LeatherQualities>;
  readonly lot?: string;
}

/** One scrap of leather as a hide of its own. */
export interface Scrap {
  /** To be chalked on its back. */
  readonly number: number;
  readonly hide: Hide;
  /** The part of the picture that shows it, in its own frame. */
  readonly picture: StraightPicture;
  readonly onFloor: ScrapOnFloor;
}

/** How a scrap lies in the picture of all, in floor mm, so that one sees which is which. */
export interface ScrapOnFloor extends Region {
  /** Where its number has most room, and how high it may be written. */
  readonly numberAt: Point;
  readonly numberHeightMm: number;
}

/** Several scraps in one picture → an offcut each, numbered in reading order, each in its own frame. */
export function readScraps(found: readonly FoundOutline[], options: ScrapOptions): Scrap[] {
  const order = readingNumbers(found.map(({ outline }) => ringBox(outline)));
  const first = options.firstNumber ?? 1;
  return found
    .map((piece, i) => scrapOf(piece, first + order[i]! - 1, options))
    .sort((a, b) => a.number - b.number);
}

function scrapOf(piece: FoundOutline, number: number, options: ScrapOptions): Scrap {
  const leather: Region = {
    outer: orientRing(piece.outline, 'outer'),
    openings: piece.openings.map((ring) => orientRing(ring, 'opening')),
  };
  const outline = simplifyWithin(leather.outer);
  const openings = leather.openings.map((ring) => simplifyWithin(ring));
  const id = `${options.idPrefix}-${number}`;
  const assembled = assembleHide(
    {
      outline,
      openings,
      areaMm2: regionArea({ outer: leather.outer, openings: [] }),
      unsure: piece.unsure,
      flaws: [],
      candidates: [],
      cut: 'offcut',
      guessed: [],
      errors: hideErrors(leather, options.errorWithin(ringBox(leather.outer)), piece),
      hints: { hideStrokes: [], floorStrokes: [], edgePoints: [] },
      scaledBy: options.scaledBy,
      takenFrom: options.takenFrom,
      picture: options.picture,
    },
    {
      id,
      sideUp: options.sideUp,
      pictureFile: options.pictureFileOf(id),
      ...(options.leather === undefined ? {} : { leather: options.leather }),
      ...(options.lot === undefined ? {} : { lot: options.lot }),
    },
  );
  return { number, ...assembled, onFloor: { outer: outline, openings, ...numberPlace(leather, number) } };
}

/** Numbers are written no higher than this, mm: seen at a glance in a picture of a table. */
const HIGHEST_NUMBER_MM = 60;
/** The place of a number need be no finer, mm. */
const NUMBER_PLACE_MM = 1;
/** A digit is about so wide for its height. */
const DIGIT_WIDTH = 0.6;

function numberPlace(leather: Region, number: number): Pick<ScrapOnFloor, 'numberAt' | 'numberHeightMm'> {
  const { center, radius } = widestInscribedCircle(leather, NUMBER_PLACE_MM);
  // Half the diagonal of a number of height 1.
  const half = Math.hypot(DIGIT_WIDTH * String(number).length, 1) / 2;
  return { numberAt: center, numberHeightMm: Math.min(HIGHEST_NUMBER_MM, radius / half) };
}
