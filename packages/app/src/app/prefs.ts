import type { Cell } from './cell.js';
import { LANGUAGES } from '../words/words.js';
import type { Language } from '../words/words.js';
import { cell } from './cell.js';

/** What a person chose for this device. */
export interface Prefs {
  readonly language: Language;
  readonly lengths: 'mm' | 'in';
  readonly areas: 'dm2' | 'ft2';
  /** `auto` follows the device. */
  readonly light: 'auto' | 'light' | 'dark';
}

const KEY = 'hidebound-prefs';

/** Countries that measure leather in feet and inches by law or habit; elsewhere millimetres. */
const INCH_REGIONS = new Set(['US', 'LR', 'MM']);

export function usualPrefs(languages: readonly string[]): Prefs {
  const [first = 'en'] = languages;
  const { language, region = '' } = new Intl.Locale(first).maximize();
  const isInch = INCH_REGIONS.has(region);
  return {
    language: LANGUAGES.find((each) => each === language) ?? 'en',
    lengths: isInch ? 'in' : 'mm',
    areas: isInch ? 'ft2' : 'dm2',
    light: 'auto',
  };
}

/** The device's choices; they outlast the visit where the browser lets them. */
export function keptPrefs(): Cell<Prefs> {
  const prefs = cell(readPrefs());
  prefs.watch((value) => {
    try {
      localStorage.setItem(KEY, JSON.stringify(value));
    } catch {
      // A browser that keeps nothing asks anew next time.
    }
  });
  return prefs;
}

function readPrefs(): Prefs {
  const usual = usualPrefs(navigator.languages);
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Record<keyof Prefs, unknown>>;
    const pick = <K extends keyof Prefs>(key: K, known: readonly Prefs[K][]): Prefs[K] =>
      known.find((value) => value === kept[key]) ?? usual[key];
    return {
      language: pick('language', LANGUAGES),
      lengths: pick('lengths', ['mm', 'in']),
      areas: pick('areas', ['dm2', 'ft2']),
      light: pick('light', ['auto', 'light', 'dark']),
    };
  } catch {
    return usual;
  }
}
