import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHide, parseLayout } from '@hidebound/leather';
import type { Hide, Layout } from '@hidebound/leather';
import { DEMO, closed, hideboundHere } from '../cli-support.js';

/** A panel with room for a small job. */
const HIDE = {
  format: 'hidebound/hide@1',
  id: 'panel-9',
  cut: 'panel',
  outline: closed([0, 0], [1300, 0], [1300, 900], [0, 900]),
  backbone: [
    [10, 10],
    [1290, 10],
  ],
};

/** Two saddlebag backs with slots and fold lines, fronts with holes, straps in a lane, washers, and a plate. */
function orderText(cutting: string): string {
  const pattern = (name: string): string => JSON.stringify(join(DEMO, 'patterns', name));
  return `format: hidebound/order@1
name: Cut files Ω
date: "2026-03-02"
cutting: ${cutting}
keep: [100, 100]
leathers:
  body: { hides: [panel.hide.json] }
articles:
  - name: bag
    goods: bag
    sets: 2
    pieces:
      - { name: back, leather: body, part: stiffener, pattern: ${pattern('saddlebag-back.svg')}, piece: saddlebag-back }
      - { name: front, leather: body, part: stiffener, pattern: ${pattern('saddlebag-front.svg')}, piece: saddlebag-front, count: 2, mirrored: 1 }
      - { name: washer, leather: body, part: tab, disc: { diameter: 28 }, count: 2 }
      - { name: plate, leather: body, part: tab, rectangle: { width: 40, length: 90, corners: 6 } }
      - name: long
        leather: body
        part: strap
        strap: { width: 22, length: 420, holeEnd: arched point, buckleEnd: square, holes: { count: 5, spacing: 20, diameter: 4, fromEnd: 50 }, slot: { width: 5, length: 22, fromEnd: 44 } }
        count: 2
        lane: true
      - name: short
        leather: body
        part: strap
        strap: { width: 18, length: 250, holeEnd: pointed, buckleEnd: round }
        lane: true
`;
}

export interface CutJob {
  readonly layoutPath: string;
  readonly layout: Layout;
  readonly hide: Hide;
}

/** Lays the job in the folder, under a name of its own. */
export async function layCutJob(folder: string, name: string, cutting: string): Promise<CutJob> {
  const hidePath = join(folder, 'panel.hide.json');
  const order = join(folder, `${name}.order.yaml`);
  const layoutPath = join(folder, `${name}.layout.json`);
  writeFileSync(hidePath, JSON.stringify(HIDE));
  writeFileSync(order, orderText(cutting));
  const run = await hideboundHere(['lay', order, '--effort', '0', '--out', layoutPath]);
  if (run.status !== 0) throw new Error(run.stderr + run.stdout);
  return {
    layoutPath,
    layout: parseLayout(readFileSync(layoutPath, 'utf8'), { file: layoutPath }),
    hide: parseHide(readFileSync(hidePath, 'utf8'), { file: hidePath }),
  };
}
