// Sums, products and counts of a result's numbers, as values that a page may print.

export function sum(numbers) {
  return numbers.reduce((total, number) => total + number, 0);
}

/** A sum of whole numbers, such as pieces; `names` are what it is printed beside. */
export function count(numbers, path, names) {
  return { kind: 'plain', value: sum(numbers), path, names, isReckoned: true };
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

/** "version 3" below a title. */
export function versions(inputs) {
  return inputs
    .filter(({ version }) => typeof version === 'number')
    .map(({ version }) => count([version], 'version of the order', ['version']));
}
