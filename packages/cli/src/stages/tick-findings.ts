import { LeatherError, hashHide } from '@hidebound/leather';
import type {
  CuttingStage,
  Diagnostic,
  FlawedCopy,
  Layout,
  LayoutCheck,
  NamedHide,
} from '@hidebound/leather';
import { copyWords, violationFinding } from '../copy-words.js';
import { sentenceOf } from '../finding-words.js';
import { squareMetres } from '../yield-words.js';

/**
 * Refuses to tick on leather that is not what the layout was made for: the wrong piece could be cut from it.
 * @throws LeatherError `tick-hide-cut`, `tick-hide-changed`
 */
export function refuseOtherLeather(layout: Layout, named: readonly NamedHide[], file: string): void {
  for (const entry of layout.hides) {
    const hide = named.find((each) => each.hide.id === entry.id)?.hide;
    const code =
      hide?.state === 'cut'
        ? 'tick-hide-cut'
        : hide === undefined || hashHide(hide) !== entry.hash
          ? 'tick-hide-changed'
          : undefined;
    if (code === undefined) continue;
    const params = { hide: entry.id, file: entry.file };
    throw new LeatherError(code, sentenceOf({ code, severity: 'error', params }), { file });
  }
}

/** Pieces that a newly found flaw is in the way of. */
export function flawedFindings(flawed: readonly FlawedCopy[]): Diagnostic[] {
  return flawed.map(({ copy, number, flaw, isCut }) => ({
    code: isCut ? 'flaw-under-cut' : 'flaw-under-planned',
    severity: 'warning',
    params: { flaw: flaw.replace(/^flaw:/, 'the flaw '), what: copyWords(copy), number },
  }));
}

/** What has no place, with the leather that it takes. */
export function unlaidFindings(
  { unlaid, unlaidMm2, missingMm2 }: CuttingStage,
  wasLaid: boolean,
): Diagnostic[] {
  if (unlaid.length === 0) return [];
  return [
    {
      code: 'left-unlaid',
      severity: wasLaid ? 'error' : 'warning',
      params: {
        count: unlaid.length,
        pieces: squareMetres(unlaidMm2),
        leather: squareMetres(missingMm2 ?? unlaidMm2),
      },
    },
  ];
}

/** Broken rules and figures, as check tells them. */
export function checkFindings({ violations, diagnostics }: LayoutCheck, file: string): Diagnostic[] {
  return [
    ...violations.filter(({ accepted }) => !accepted).map((violation) => violationFinding(violation, file)),
    ...diagnostics.filter(({ severity }) => severity === 'error'),
  ];
}
