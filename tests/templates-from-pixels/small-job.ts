import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEMO, hideboundHere, smallJob } from '../cli-support.js';
import type { LayoutOfHide } from './compare-with-layout.js';

/** A panel with one bowed edge, so that its lines lie at all angles. */
function bowedPanel(width: number, height: number): object {
  return {
    format: 'hidebound/hide@1',
    id: 'panel-1',
    cut: 'panel',
    outline: {
      start: [0, 0],
      segments: [
        { to: [width, 0] },
        {
          handles: [
            [width + 15, height / 3],
            [width - 25, (2 * height) / 3],
          ],
          to: [width, height],
        },
        { to: [0, height] },
        { to: [0, 0] },
      ],
      closed: true,
    },
    backbone: [
      [10, 10],
      [width - 40, 10],
    ],
  };
}

const ORDER = `format: hidebound/order@1
name: small order
date: "2026-01-05"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
keep: [100, 100]
leathers:
  body:
    hides: [panel.hide.json]
articles:
  - name: bag
    goods: bag
    sets: 1
    pieces:
      - name: guard
        leather: body
        part: flap
        pattern: guard.svg
        piece: toolroll-guard
      - name: plate
        leather: body
        part: stiffener
        rectangle: { width: 91, length: 133 }
`;

/** Lays a guard with a curved edge and a plate on a small panel; the layout of about six A4 pages. */
export async function smallLayout(folder: string, width: number, height: number): Promise<LayoutOfHide> {
  const job = smallJob(folder, { order: ORDER, hide: bowedPanel(width, height) });
  copyFileSync(join(DEMO, 'patterns', 'toolroll-guard.svg'), join(job.at, 'guard.svg'));
  const run = await hideboundHere(['lay', job.order, '--effort', '0', '--out', job.layout]);
  if (run.status !== 0) throw new Error(run.stderr);
  return { file: job.layout, hide: 'panel-1' };
}
