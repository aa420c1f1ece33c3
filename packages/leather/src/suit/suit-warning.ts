import type { Diagnostic } from '../model/diagnostic.js';

/** A warning with its words' figures; what is absent is left out. */
export function warning(
  code: string,
  params: Readonly<Record<string, string | number | undefined>>,
): Diagnostic {
  const given = Object.entries(params).filter(
    (entry): entry is [string, string | number] => entry[1] !== undefined,
  );
  return { code, severity: 'warning', params: Object.fromEntries(given) };
}
