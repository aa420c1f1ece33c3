import { keepHere, keptHere } from './kept-here.js';

/** The page's own key, by which the table knows that it is asked by a page that it was asked to open. */
const KEPT_AS = 'hidebound-table-key';

/** Keys to try, the likeliest first: of the address, of this tab, of this address in earlier times. */
export function tableKeys(): readonly string[] {
  const ofAddress = new URLSearchParams(location.hash.slice(1)).get('key') ?? '';
  if (ofAddress !== '') hideKey();
  return [...new Set([ofAddress, ...keptHere(KEPT_AS)])].filter((key) => key !== '');
}

/** For the next time, once it was right. */
export function keepKey(key: string): void {
  keepHere(KEPT_AS, key);
}

/** Out of the address, where it would be seen and be copied along with it. */
function hideKey(): void {
  history.replaceState(history.state, '', location.pathname + location.search);
}
