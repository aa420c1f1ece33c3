import type { App } from '../app/app.js';

/** What was made of a text: a value, or what is wrong with it, in a sentence. */
export type Reading<T> = { readonly value: T } | { readonly slip: string };

/** What someone typed and nobody took yet. */
export interface Typed {
  readonly text: string;
  /** What the field showed when the typing began: where that is another by now, the typing is about something past. */
  readonly shown: string;
  /** Until the field is left. */
  readonly isOpen: boolean;
  /** It was left with something in it that can't be taken. */
  readonly isRefused: boolean;
}

/** By the field's key. */
export type TypedTexts = Map<string, Typed>;

const TYPED = new WeakMap<App, TypedTexts>();

/** Lives with the app, so that nothing typed is lost when panels are drawn anew or left. */
export function typedTexts(app: App): TypedTexts {
  const known = TYPED.get(app) ?? new Map<string, Typed>();
  TYPED.set(app, known);
  return known;
}

/** What stands in the field, and whether it is a slip. */
export function standsIn(typed: TypedTexts, key: string, shown: string): Pick<Typed, 'text' | 'isRefused'> {
  const entry = typed.get(key);
  if (entry === undefined) return { text: shown, isRefused: false };
  if (entry.isOpen || entry.shown === shown) return entry;
  typed.delete(key);
  return { text: shown, isRefused: false };
}

/** A stroke of a key: a slip stays told until the field is left again. */
export function typeInto(typed: TypedTexts, key: string, shown: string, text: string): void {
  const { isRefused } = standsIn(typed, key, shown);
  typed.set(key, { text, shown, isOpen: true, isRefused });
}

/**
 * Fields that are read together are left: gives what was read, once, or undefined where nothing is new or nothing can be
 * taken. What can't be taken stays as it was typed.
 */
export function leaveFields<T>(
  typed: TypedTexts,
  keys: readonly string[],
  shown: readonly string[],
  read: (texts: readonly string[]) => Reading<T>,
): { readonly value: T } | undefined {
  const texts = keys.map((key, i) => standsIn(typed, key, shown[i]!).text.trim());
  const forget = (): void => keys.forEach((key) => typed.delete(key));
  if (texts.every((text, i) => text === shown[i])) {
    forget();
    return undefined;
  }
  const reading = read(texts);
  if ('value' in reading) {
    forget();
    return reading;
  }
  keys.forEach((key, i) => {
    if (texts[i] === shown[i]) typed.delete(key);
    else typed.set(key, { text: texts[i]!, shown: shown[i]!, isOpen: false, isRefused: true });
  });
  return undefined;
}
