import type { App } from '../../../app/app.js';
import type { KeyRow } from '../../../shell/station.js';
import { answer, lookThrough } from './cards/looking-card.js';
import { hideNow } from './change-hide.js';
import { choose, marksTable, takeTool } from './table.js';
import type { Tool } from './table.js';
import { takeChosenAway } from './take-away.js';

function toolKey(tool: Tool): (app: App) => boolean {
  return (app) => {
    if (hideNow(app) === undefined) return false;
    takeTool(app, marksTable(app).get().tool === tool ? undefined : tool);
    return true;
  };
}

/** First what is in hand is let go, then the tool. */
function putAway(app: App): boolean {
  const { tool, chosen, looking } = marksTable(app).get();
  if (chosen !== undefined) choose(app, undefined);
  else if (tool !== undefined || looking !== undefined) takeTool(app, undefined);
  else return false;
  return true;
}

/** The keys of this bench; the drawing's own keys do what a pointer does. */
export const MARKS_KEYS: readonly KeyRow[] = [
  { key: 'f', words: 'marks.tool.flaws', run: toolKey('flaws') },
  { key: 'e', words: 'marks.tool.edge', run: toolKey('edge') },
  { key: 'b', words: 'marks.tool.back', run: toolKey('back') },
  { key: 'z', words: 'marks.tool.zones', run: toolKey('zones') },
  { key: 't', words: 'marks.tool.thickness', run: toolKey('thickness') },
  { key: 'Delete', words: 'marks.takeAway', run: takeChosenAway },
  { key: 'Escape', words: 'marks.letGo', run: putAway },
  { key: 'c', words: 'marks.lookThrough', run: lookThrough },
  { key: 'y', words: 'marks.key.take', run: (app) => answer(app, 'take') },
  { key: 'n', words: 'marks.key.drop', run: (app) => answer(app, 'drop') },
  { key: 'l', words: 'marks.key.later', run: (app) => answer(app, 'later') },
];
