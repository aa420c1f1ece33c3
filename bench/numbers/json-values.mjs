// Every number of a result, with what it measures and the names that it stands under.
import { measureOfName, measureOfUnit } from './units.mjs';

/** Names of JSON that only say which end of a range or which of a list it is. */
const TRANSPARENT =
  /^(low|likely|high|min|max|from|to|value|least|most|first|last|exact|total|\d+|minMm|maxMm)$/;

/**
 * The numbers of a result: `{ value, kind, path, names }`, values in base units (mm, mm², mL, minutes, shares of 1);
 * `names` are the texts beside it and above it that tell it from others, the nearest first. `more` are further keys of such
 * texts.
 */
export function valuesOf(result, more = []) {
  const values = [];
  visit(result, [], []);
  return values;

  function visit(node, path, owners) {
    if (typeof node === 'number') values.push(numberValue(node, path, owners, more));
    else if (isMoney(node)) values.push(moneyValue(node, path, owners, more));
    else if (Array.isArray(node)) {
      node.forEach((item, i) => visit(item, [...path, String(i)], [...owners, { object: {} }]));
    } else if (node !== null && typeof node === 'object') {
      for (const [name, item] of Object.entries(node)) {
        visit(item, [...path, name], [...owners, { object: node }]);
      }
    }
  }
}

/** Every text of a result: names, dates, words that people wrote. */
export function textsOf(node) {
  if (typeof node === 'string') return [node];
  if (node === null || typeof node !== 'object') return [];
  return Object.values(node).flatMap(textsOf);
}

function isMoney(node) {
  return (
    node !== null &&
    typeof node === 'object' &&
    typeof node.amount === 'string' &&
    typeof node.currency === 'string'
  );
}

function moneyValue({ amount, currency }, path, owners, more) {
  return {
    value: Number(amount),
    exact: amount,
    currency,
    kind: 'money',
    path: path.join('.'),
    names: namesOf(owners, more),
  };
}

function numberValue(value, path, owners, more) {
  const { kind, times } = measureAt(path, owners) ?? { kind: 'plain', times: 1 };
  return { value: value * times, kind, path: path.join('.'), names: namesOf(owners, more) };
}

/** By the nearest name that says it, or by a unit that stands beside the number or above it. */
function measureAt(path, owners) {
  for (let i = path.length - 1; i >= 0; i -= 1) {
    const beside = owners[i]?.object.unit;
    const said = measureOfName(path[i]) ?? (typeof beside === 'string' ? measureOfUnit(beside) : undefined);
    if (said !== undefined) return said;
    if (!TRANSPARENT.test(path[i])) return undefined;
  }
  return undefined;
}

/** Keys of texts that tell one thing from another; looks, sources and the like are shared by many. */
const IDENTIFYING =
  'id name hide piece article leather for offer block step task label product dye customer what title'.split(
    ' ',
  );

function namesOf(owners, more) {
  const keys = [...IDENTIFYING, ...more];
  const texts = owners.toReversed().flatMap(({ object }) => keys.map((key) => object[key]));
  return texts
    .flatMap((text) => (isList(text) ? [...text, listed(text)] : [text]))
    .filter((text) => typeof text === 'string');
}

function isList(node) {
  return Array.isArray(node) && node.every((item) => typeof item === 'string');
}

/** "body, straps and wraps". */
export function listed(texts) {
  return texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;
}
