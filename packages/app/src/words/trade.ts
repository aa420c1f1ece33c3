import type { App } from '../app/app.js';

/** Rows of the built-in tables that have words of their own on the screen; other names are somebody's own. */
export const TRADE_TERMS = {
  goods: [
    'dress belt',
    'dress belt lining',
    'belt',
    'work belt',
    'bag strap',
    'tool belt',
    'guitar strap',
    'watch strap',
    'dog collar',
    'dog lead',
    'bridle',
    'saddle skirting',
    'carved handbag',
    'tote',
    'satchel',
    'gusset',
    'bag lining',
    'wallet',
    'wallet pocket',
    'card holder',
    'key fob',
    'journal cover',
    'desk inlay',
    'moulded case',
    'knife sheath',
    'holster',
    'rifle scabbard',
    'saddlebag',
    'tool roll',
    'work apron',
    'chaps',
    'garment',
    'glove',
    'upholstery',
    'shoe upper',
    'shoe lining',
    'insole',
    'sole',
    'moccasin',
  ],
  method: [
    'hand knife',
    'strap cutter',
    'press and dies',
    'steel rule die',
    'drag knife',
    'laser',
    'water jet',
  ],
} as const;

type Table = keyof typeof TRADE_TERMS;
type Say = Pick<App, 'say'>;

/** A table's name in the language of the screen; a name of one's own stays as it is written. */
export function tradeWord(app: Say, table: Table, id: string): string {
  const known: readonly string[] = TRADE_TERMS[table];
  if (!known.includes(id)) return id;
  return table === 'goods'
    ? app.say(`trade.goods.${id as (typeof TRADE_TERMS)['goods'][number]}`)
    : app.say(`trade.method.${id as (typeof TRADE_TERMS)['method'][number]}`);
}

/** The way back: what somebody wrote as the table calls it. */
export function tradeId(app: Say, table: Table, written: string): string {
  const wanted = written.trim().toLowerCase();
  const known: readonly string[] = TRADE_TERMS[table];
  return known.find((id) => tradeWord(app, table, id).toLowerCase() === wanted) ?? written;
}

/** "<path> in line 12". */
export function elementWords(app: Say, element: string): string {
  const [, name, line] = /^(.*) in line (\d+)$/s.exec(element) ?? [];
  return name === undefined || line === undefined
    ? element
    : app.say('trade.inLine', { element: name, line });
}
