/** Endings of two parts that tell what a file is. */
const ENDING = /(?:\.(?:hide|layout|order|article|hints|job))?\.[^./]+$/i;

/** "left/side.hide.json" → "left/side-mine.hide.json", or the first of "side-mine-2…" that is free. */
export function asidePath(path: string, isTaken: (path: string) => boolean): string {
  const ending = ENDING.exec(path)?.[0] ?? '';
  const stem = path.slice(0, path.length - ending.length);
  for (let number = 1; ; number++) {
    const aside = `${stem}-mine${number === 1 ? '' : `-${number}`}${ending}`;
    if (!isTaken(aside)) return aside;
  }
}
