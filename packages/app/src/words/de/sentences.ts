import { intakeGerman } from '@hidebound/intake/words-de';
import { sentenceFor } from '@hidebound/leather';
import type { SentenceTable, SuitRemark } from '@hidebound/leather';
import { germanLanguage } from '@hidebound/leather/words-de';
import type { WriteFinding } from '../told.js';

/** Was die Pakete melden, auf Deutsch. */
export function germanFindings(locale: string): WriteFinding {
  const leather = germanLanguage(locale);
  const intake: SentenceTable = intakeGerman(locale);
  return (finding) => {
    const { of, code, params } = finding;
    if (of === 'suit remark') return leather.suitRemark({ code: code as SuitRemark['code'], params });
    const tables = of === 'leather' ? [leather.sentences] : [intake, leather.sentences];
    const sentences = tables.find((table) => Object.hasOwn(table, code));
    return sentences && sentenceFor(finding, [], { sentences, place: leather.place });
  };
}
