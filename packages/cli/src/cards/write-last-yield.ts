import { parseArticle, withLastYield, yieldOfArticle } from '@hidebound/leather';
import type { Diagnostic } from '@hidebound/leather';
import type { CommandResult } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadLayout, readText } from '../io/load-files.js';
import { writeFilesSafely } from '../io/write-safely.js';
import { percent } from '../yield-words.js';

/** Writes the yield that an article really had in a layout into its file. */
export function writeLastYield(path: string, layoutPath: string): CommandResult {
  const text = readText(path, 'article');
  const { name, lastYield } = parseArticle(text, { file: path });
  const layout = loadLayout(layoutPath);
  const found = yieldOfArticle(layout, name);
  writeFilesSafely([{ path, content: withLastYield(text, found, { file: path }) }]);
  const own = layout.placements.filter(({ article }) => article === name);
  const planned = own.filter(({ state }) => state === 'planned').length;
  const diagnostics: Diagnostic[] =
    planned === 0
      ? []
      : [
          {
            code: 'yield-not-cut-yet',
            severity: 'note',
            params: { article: name, planned, all: own.length },
            place: { file: layoutPath },
          },
        ];
  const before = lastYield === undefined ? '' : ` (it was ${percent(lastYield)})`;
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      `${path} says now that the last yield of ${name} was ${percent(found)}${before}: area of its pieces over the leather used up.`,
    ],
    data: {
      file: path,
      layout: layoutPath,
      article: name,
      lastYield: found,
      ...(lastYield === undefined ? {} : { before: lastYield }),
      written: [path],
    },
    diagnostics,
  };
}
