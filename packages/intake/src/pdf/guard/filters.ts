/** Filters of streams that a drawing may be packed with (ISO 32000-1, table 6), by their long and short names. */
const FILTERS: Readonly<Record<string, Filter>> = {
  FlateDecode: 'flate',
  Fl: 'flate',
  LZWDecode: 'lzw',
  LZW: 'lzw',
  ASCII85Decode: 'base 85',
  A85: 'base 85',
  ASCIIHexDecode: 'hex',
  AHx: 'hex',
  RunLengthDecode: 'runs',
  RL: 'runs',
  Crypt: 'none',
};

export type Filter = 'flate' | 'lzw' | 'base 85' | 'hex' | 'runs' | 'none';

/** Filters of pictures: no drawing is packed so. */
const PICTURE_FILTERS = new Set(['DCTDecode', 'DCT', 'JPXDecode', 'JBIG2Decode', 'CCITTFaxDecode', 'CCF']);

/**
 * The filters that a stream's dictionary names, the first first; 'picture' if one is made for pictures, nothing if they
 * are not known. `lookUp` finds objects that the dictionary only points at.
 */
export function filtersOf(
  dictionary: string,
  lookUp: (number: string, generation: string) => string | undefined,
): readonly Filter[] | 'picture' | undefined {
  const value = /\/Filter\s*(\[[^\]]*\]?|\/[^\s/<>[\]()]+|\d+\s+\d+\s+R)/.exec(dictionary)?.[1];
  if (value === undefined) return shortFilters(dictionary);
  const pointer = /^(\d+)\s+(\d+)\s+R/.exec(value);
  const text = pointer === null ? value : lookUp(pointer[1]!, pointer[2]!);
  if (text === undefined || /\d\s+\d+\s+R/.test(text)) return undefined;
  return named(pointer === null ? text : (/^\s*(\[[^\]]*\]|\/[^\s/<>[\]()]+)/.exec(text)?.[1] ?? ''));
}

/** `/F` is short for `/Filter` in pictures within pages only, but a lenient reader takes it everywhere. */
function shortFilters(dictionary: string): readonly Filter[] | 'picture' | undefined {
  const value = /\/F\s*(\[\s*\/[^\]]*\]?|\/[^\s/<>[\]()]+)/.exec(dictionary)?.[1];
  return value === undefined ? [] : (named(value) ?? []);
}

function named(text: string): readonly Filter[] | 'picture' | undefined {
  const names = [...text.matchAll(/\/([^\s/<>[\]()]+)/g)].map((match) => match[1]!);
  if (names.some((name) => PICTURE_FILTERS.has(name))) return 'picture';
  const filters = names.map((name) => FILTERS[name]);
  return filters.includes(undefined) ? undefined : (filters as Filter[]);
}
