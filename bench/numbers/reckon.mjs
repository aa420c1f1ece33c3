// Sums, products and counts of a result's numbers, as values that a page may print.

export function sum(numbers) {
  return numbers.reduce((total, number) => total + number, 0);
}

/** A sum of whole numbers, such as pieces; `names` are what it is printed beside. */
export function count(numbers, path, names) {
  return { kind: 'plain', value: sum(numbers), path, names, isReckoned: true };
}

/** An amount of the result, as it stands there. */
export function money({ amount, currency }, path, names) {
  return { kind: 'money', value: Number(amount), exact: amount, currency, path, names, isReckoned: true };
}

/** A mark on the scale of a chart: it stands alone. */
export function mark(value, path) {
  return { kind: 'scale', value, path, names: [] };
}

export function length(mm, path, names) {
  return { kind: 'length', value: mm, path, names, isReckoned: true };
}

export function area(mm2, path, names) {
  return { kind: 'area', value: mm2, path, names, isReckoned: true };
}

export function share(part, path, names) {
  return { kind: 'share', value: part, path, names, isReckoned: true };
}

export function minutes(value, path, names) {
  return { kind: 'time', value, path, names, isReckoned: true };
}

export function volume(ml, path, names) {
  return { kind: 'volume', value: ml, path, names, isReckoned: true };
}

/** "version 3" below a title, from the order or from a layout's order. */
export function versions(inputs) {
  return inputs
    .map((input) => Number((input.order ?? input).version))
    .filter(Number.isFinite)
    .map((version) => ({ ...count([version], 'version of the order', ['version']), isOnly: true }));
}
