import type { WriteFinding } from './told.js';
import type { Language } from './words.js';

/** The packages' sentences in a language, loaded when it is used; English ones come with what is told. */
export async function loadSentences(language: Language, locale: string): Promise<WriteFinding | undefined> {
  switch (language) {
    case 'en':
      return undefined;
    case 'de':
      return (await import('./de/sentences.js')).germanFindings(locale);
  }
}
