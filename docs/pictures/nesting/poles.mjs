/** Pieces of the demo with the circles that stand for them in the overlap cost. */
import { ringBox } from '@hidebound/geometry';
import { polesOf } from '../../../packages/geometry/dist/separate/poles.js';
import { flatRings } from '../../../packages/geometry/dist/nest/skin.js';
import { regionArea } from '../../../packages/geometry/dist/shape/ring.js';
import { MOST_POLES } from '../../../packages/geometry/dist/separate/constants.js';
import { LOOK, element, pageOfPanels, region, viewOf } from './drawing.mjs';

const PANEL_PX = 210;

export function polesPicture(items) {
  const panels = items.map(({ name, region: shape }) => {
    const areaMm2 = regionArea(shape);
    const poles = polesOf(flatRings([shape]), areaMm2, MOST_POLES);
    const count = poles.length / 3;
    let covered = 0;
    for (let i = 2; i < poles.length; i += 3) covered += Math.PI * poles[i] * poles[i];
    const box = squareAround(ringBox(shape.outer));
    return {
      height: PANEL_PX,
      lines: [name, `${count} circles, ${Math.round((100 * covered) / areaMm2)} % of its area`],
      draw: (left, top) => {
        const view = viewOf(box, PANEL_PX, left, top);
        return (
          region(view, shape, {
            fill: LOOK.piece,
            'fill-rule': 'evenodd',
            stroke: LOOK.pieceLine,
            'stroke-width': 1.2,
          }) + circles(view, poles)
        );
      },
    };
  });
  return pageOfPanels('Three pieces and their poles', panels, PANEL_PX);
}

function circles(view, poles) {
  return Array.from({ length: poles.length / 3 }, (_, i) =>
    element('circle', {
      cx: view.x(poles[3 * i]),
      cy: view.y(poles[3 * i + 1]),
      r: poles[3 * i + 2] * view.scale,
      fill: LOOK.circle,
      'fill-opacity': i === 0 ? 0.45 : 0.18,
      stroke: LOOK.circle,
      'stroke-width': 1.2,
    }),
  ).join('');
}

function squareAround({ minX, minY, maxX, maxY }) {
  const half = Math.max(maxX - minX, maxY - minY) / 2;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return { minX: x - half, minY: y - half, maxX: x + half, maxY: y + half };
}
