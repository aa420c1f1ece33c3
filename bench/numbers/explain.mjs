// Whether a printed number is a value of the result, rounded as it is printed.
import { PRINTED_UNITS } from './units.mjs';

/** Numbers in binary are off by so much of themselves at most after a conversion. */
const BINARY_SLACK = 1e-9;

/**
 * How a printed number comes about: `{ how, path }`, or undefined where nothing explains it. `how` is "text" (a text of
 * the result), "reckoned" (a sum or product that the page's rules name), "scale" (a mark of a chart), "row" (a value whose
 * names stand in the same row) or "value" (in a row that names nothing). Where a row names something, only what is named best there counts.
 */
export function explain(printed, values) {
  if (printed.shape !== 'number') {
    return printed.shape === 'echo' ? { how: 'text', path: printed.text } : explainTime(printed, values);
  }
  const scaled = values.find(
    ({ kind, value }) => kind === 'scale' && printed.isAlone && String(value) === printed.text,
  );
  if (scaled !== undefined) return { how: 'scale', path: scaled.path };
  const alike = values.filter((value) => isOfUnit(value, printed));
  const marked = alike.map((value) => ({ value, named: countNamed(value, printed.row) }));
  const best = Math.max(0, ...marked.filter(({ value }) => !value.isReckoned).map(({ named }) => named));
  const isAble = ({ value, named }) =>
    named === best || (value.isReckoned && named >= Math.min(1, value.names.length));
  const only = marked.filter(({ value, named }) => value.isOnly && named > 0);
  const able = only.length > 0 ? only : marked.filter(isAble);
  const found = able.find(({ value }) => isPrintedAs(value, printed));
  if (found === undefined) return undefined;
  const how = found.value.isReckoned ? 'reckoned' : found.named > 0 ? 'row' : 'value';
  return { how, path: found.value.path };
}

/** A date is a text of the result; a clock's time is one, too, or so many minutes after a midnight. */
function explainTime({ shape, text }, values) {
  if (shape === 'date') return undefined;
  const [hours, minutes] = text.split(':').map(Number);
  const found = values.find(({ kind, value }) => kind === 'time' && value % 1440 === hours * 60 + minutes);
  return found === undefined ? undefined : { how: 'value', path: found.path };
}

function isOfUnit({ kind, currency }, { unit }) {
  if (kind === 'money') return unit === currency;
  return kind === (unit === undefined ? 'plain' : PRINTED_UNITS.get(unit)[0]);
}

function isPrintedAs({ kind, value, exact }, { text, decimals, unit }) {
  if (kind === 'money') return isSameSum(exact, text);
  const times = unit === undefined ? 1 : PRINTED_UNITS.get(unit)[1];
  // Time is told to the minute: 25 h are 25 hours.
  if (kind === 'time') return isRounded(value, String(Number(text) * times), 0);
  return isRounded(value / times, text, decimals);
}

/** Money is told to the coin and nothing is lost: the same digits, less zeros at the end. */
function isSameSum(exact, text) {
  const bare = (sum) => (sum.includes('.') ? sum.replace(/0+$/, '').replace(/\.$/, '') : sum);
  return bare(exact) === bare(text);
}

/** Half a unit of the last place printed, to either side. */
export function isRounded(value, text, decimals) {
  const off = Math.abs(Math.abs(value) - Number(text));
  return off <= 0.5 * 10 ** -decimals + BINARY_SLACK * Math.max(1, Math.abs(value));
}

/** How many of the names above a value stand in a row. */
function countNamed({ names }, row) {
  return new Set(names.filter((name) => row.named.has(name))).size;
}
