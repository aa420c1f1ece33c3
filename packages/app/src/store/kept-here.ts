/** Small texts that outlast the page: of this tab, and of this address. Where the browser keeps nothing, neither do these. */
const PLACES: readonly (() => Storage)[] = [() => sessionStorage, () => localStorage];

/** What was kept under a name: of this tab first, then of any. */
export function keptHere(name: string): readonly string[] {
  const kept = PLACES.map((place) => {
    try {
      return place().getItem(name) ?? '';
    } catch {
      return '';
    }
  });
  return [...new Set(kept)].filter((text) => text !== '');
}

export function keepHere(name: string, text: string): void {
  for (const place of PLACES) {
    try {
      place().setItem(name, text);
    } catch {
      // Asked for anew next time.
    }
  }
}
