import type { App } from '../../../app/app.js';
import type { WordKey } from '../../../words/words.js';

const TANNAGE_WORDS: Readonly<Record<string, WordKey>> = {
  vegetable: 'marks.tannage.vegetable',
  chrome: 'marks.tannage.chrome',
  oil: 'marks.tannage.oil',
  combination: 'marks.tannage.combination',
  alum: 'marks.tannage.alum',
  brain: 'marks.tannage.brain',
  aldehyde: 'marks.tannage.aldehyde',
  rawhide: 'marks.tannage.rawhide',
  bonded: 'marks.tannage.bonded',
};

/** A tannage in the language of the screen; a name of one's own stays as it is written. */
export function tannageWord(app: Pick<App, 'say'>, tannage: string): string {
  const word = TANNAGE_WORDS[tannage];
  return word === undefined ? tannage : app.say(word);
}
