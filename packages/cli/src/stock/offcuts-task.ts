import { CliError } from '../cli-error.js';
import type { OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';

export type OffcutsTask = 'list' | 'take' | 'undo' | 'history' | 'for';

const TASKS = ['take', 'undo', 'history', 'for'] as const;

/** What is to be done with the stock: one thing at a time. Fails with a CliError `bad-use`. */
export function offcutsTask(options: OptionValues): OffcutsTask {
  const asked = TASKS.filter((name) => options[name] !== undefined && options[name] !== false);
  const [task = 'list', second] = asked;
  if (second !== undefined) {
    throw refused(`--${task} and --${second} can't be done at once; run one after the other`);
  }
  if (task !== 'take' && textOption(options, 'place') !== undefined) {
    throw refused('--place says where the offcuts of a layout are put; give it with --take');
  }
  if (task === 'for' && textOption(options, 'piece') === undefined) {
    throw refused('--for needs a piece; name it with --piece');
  }
  const belongs = ['piece', 'article'].find((name) => textOption(options, name) !== undefined);
  if (task !== 'for' && belongs !== undefined) {
    throw refused(`--${belongs} belongs to a search; give the order or article with --for`);
  }
  const isPaged = textOption(options, 'pdf') !== undefined || textOption(options, 'pageSvg') !== undefined;
  if ((task === 'take' || task === 'undo') && isPaged) {
    throw refused(`--${task} makes no page; list the stock with --pdf afterwards`);
  }
  if (options['labels'] === true && (task !== 'list' || !isPaged)) {
    throw refused(
      '--labels makes pages of the list; give --pdf or --page-svg with it, and nothing to take, undo or search',
    );
  }
  return task;
}

function refused(words: string): CliError {
  return new CliError('bad-use', `${words.slice(0, 1).toUpperCase()}${words.slice(1)}.`);
}
