// Units that pages print, and how many of the units that files hold they are. By definition: 1 in = 25.4 mm,
// 1 ft = 304.8 mm, leather's ounce is 1/64 in of thickness. Kept apart from the program's own tables on purpose.

/** Unit as printed → what is measured, and how many of its base unit (mm, mm², mL, minutes, 1, g) one is. */
export const PRINTED_UNITS = new Map(
  Object.entries({
    mm: ['length', 1],
    cm: ['length', 10],
    m: ['length', 1000],
    in: ['length', 25.4],
    ft: ['length', 304.8],
    oz: ['length', 25.4 / 64],
    'mm²': ['area', 1],
    'cm²': ['area', 100],
    'dm²': ['area', 10_000],
    'm²': ['area', 1_000_000],
    'ft²': ['area', 304.8 * 304.8],
    mL: ['volume', 1],
    ml: ['volume', 1],
    L: ['volume', 1000],
    'mL/m²': ['coverage', 1],
    h: ['time', 60],
    hour: ['time', 60],
    hours: ['time', 60],
    min: ['time', 1],
    minutes: ['time', 1],
    day: ['time', 1440],
    days: ['time', 1440],
    week: ['time', 10_080],
    weeks: ['time', 10_080],
    '%': ['share', 0.01],
    g: ['weight', 1],
    '°C': ['warmth', 1],
    '°': ['angle', 1],
    EUR: ['money', 1],
    'of 100': ['chance', 1],
  }),
);

/** The end of a name in a result's JSON → what is measured, and how many of the base unit one is. */
const NAME_ENDS = [
  [/PerM2$/, 'coverage', 1],
  [/Mm2$/, 'area', 1],
  [/Ft2$/, 'area', 304.8 * 304.8],
  [/Dm2$/, 'area', 10_000],
  [/M2$/, 'area', 1_000_000],
  [/Mm$/, 'length', 1],
  [/Ml$|^ml$/, 'volume', 1],
  [/Minutes?$|^minutes?$|[a-z]Min$/, 'time', 1],
  [/Hours?$|^hours?$|[a-z]H$/, 'time', 60],
  [/Days?$|^days?$/, 'time', 1440],
  [/Percent$|^percent$/, 'share', 0.01],
  [/[sS]hare$|[yY]ield$/, 'share', 1],
  [/Deg$/, 'angle', 1],
  [/inHundred$/, 'chance', 1],
];

/** What a name of JSON says of its number; undefined where it says nothing. */
export function measureOfName(name) {
  const end = NAME_ENDS.find(([pattern]) => pattern.test(name));
  return end === undefined ? undefined : { kind: end[1], times: end[2] };
}

/** What a unit that stands beside a number in JSON says of it. */
export function measureOfUnit(unit) {
  const found = PRINTED_UNITS.get(unit);
  return found === undefined ? undefined : { kind: found[0], times: found[1] };
}
