// Hides with openings and quality zones (`leather/`); pieces at any angle.
import { subtractRegions } from '@hidebound/geometry';
import { cleanRing, ringArea, ringBox } from './rings.mjs';
import { makeItem, makeProblem, makeSheet, oneSet, selfContactNotes, setsOfOne } from './problem-parts.mjs';

/** Hides longer than this can't be in mm: their unit is taken as a quarter of one, which no number loses bits by. */
const LONGEST_HIDE_MM = 4000;
const SMALL_UNIT_MM = 0.25;

/** Where more than this share of the leather is asked for, not all of it can be laid: the most valuable is. */
const FILL_ABOVE_SHARE = 0.7;

/** A leftover worth keeping, in mm. */
const KEEP_MM = [200, 100];

/**
 * A hide zone of quality q bears a piece, or a zone of a piece, whose need is at most q; a piece without need
 * avoids every zone. As grades (0 is the best leather, and unmarked): quality q is grade Q + 1 - q, where Q is the
 * greatest number in the file; need n bears up to grade Q + 1 - n, and no need up to grade 0.
 */
export function readLeather(name, json) {
  const scale = longestHide(json) > LONGEST_HIDE_MM ? SMALL_UNIT_MM : 1;
  const gradeOf = gradesOf(json);
  const sheets = json.Objects.flatMap((hide, i) => readHide(hide, i, scale, gradeOf));
  const rings = json.Items.map(({ Shape }) => cleanRing(Shape.Data, { scale }));
  const items = json.Items.map((item, i) =>
    makeItem(`piece ${i}`, rings[i], sheets, {
      ...needsOf(item, rings[i], scale, gradeOf),
      value: ringArea(rings[i]),
    }),
  );
  const demanded = json.Items.reduce((sum, { Demand }, i) => sum + Demand * ringArea(rings[i]), 0);
  const isFill = demanded > FILL_ABOVE_SHARE * netArea(sheets);
  const demands = items.map(({ id, value }, i) => [id, json.Items[i].Demand, value]);
  const problem = makeProblem({
    items,
    setKinds: isFill ? setsOfOne(demands) : oneSet(demands),
    sheets,
    objective: { mode: isFill ? 'fill' : 'placeAll', keepMm: KEEP_MM },
  });
  return { name, problem, notes: selfContactNotes(namedRings(items, sheets)) };
}

function longestHide(json) {
  const spans = json.Objects.map(({ Shape }) => {
    const { minX, minY, maxX, maxY } = ringBox(cleanRing(Shape.Data.Outer ?? Shape.Data));
    return Math.max(maxX - minX, maxY - minY);
  });
  return Math.max(...spans);
}

function gradesOf(json) {
  const zones = [...json.Objects, ...json.Items].flatMap(({ Zones }) => Zones);
  const numbers = [
    ...zones.map(({ Quality }) => Quality),
    ...json.Items.map(({ BaseQuality }) => BaseQuality ?? 0),
  ];
  const worst = Math.max(...numbers) + 1;
  return (quality) => (quality === undefined ? 0 : worst - quality);
}

/** As many sheets as the hide is in stock. */
function readHide({ Shape, Zones, Stock = 1 }, index, scale, gradeOf) {
  const region = {
    outer: cleanRing(Shape.Data.Outer ?? Shape.Data, { scale }),
    openings: (Shape.Data.Inner ?? []).map((pairs) => cleanRing(pairs, { scale, isOpening: true })),
  };
  const qualities = Zones.map((zone, i) => ({
    id: `zone ${i}`,
    areas: [{ outer: cleanRing(zone.Shape.Data, { scale }), openings: [] }],
    grade: gradeOf(zone.Quality),
    weak: false,
    isVoid: false,
    uncertaintyMm: 0,
  }));
  return Array.from({ length: Stock }, (_, copy) =>
    makeSheet(`hide ${index + 1}${copy === 0 ? '' : `-${copy + 1}`}`, region, { qualities }),
  );
}

/** Parts may only ask for more than their piece does: where a zone asks for less, the rest becomes the part. */
function needsOf({ BaseQuality, Zones }, ring, scale, gradeOf) {
  const base = gradeOf(BaseQuality);
  const zones = Zones.map(({ Quality, Shape }, i) => ({
    name: `zone ${i}`,
    areas: [{ outer: cleanRing(Shape.Data, { scale }), openings: [] }],
    need: needOf(gradeOf(Quality)),
  }));
  const loosest = Math.max(base, ...zones.map(({ need }) => need.maxGrade));
  const stricter = zones.filter(({ need }) => need.maxGrade < loosest);
  if (loosest === base) return { need: needOf(base), parts: stricter };
  const ownNeed = zones.flatMap(({ areas }) => areas);
  const rest = subtractRegions([{ outer: ring, openings: [] }], ownNeed);
  return {
    need: needOf(loosest),
    parts: [{ name: 'rest', areas: rest, need: needOf(base) }, ...stricter],
  };
}

function needOf(maxGrade) {
  return { maxGrade, strong: false };
}

function netArea(sheets) {
  return sheets.reduce(
    (sum, { region }) => [region.outer, ...region.openings].reduce((own, ring) => own + ringArea(ring), sum),
    0,
  );
}

function namedRings(items, sheets) {
  return [
    ...items.map(({ id, region }) => [id, region.outer]),
    ...sheets.map(({ id, region }) => [id, region.outer]),
  ];
}
