import type { Entity, Vertex } from './entities.js';
import { header, place, section } from './header.js';
import { decimal } from './pairs.js';
import type { Pair } from './pairs.js';
import type { DxfParts, LayerEntity } from './write-dxf.js';

/** A bulge moves the middle of an arc by half its chord: so many decimals keep that below 1e-6 mm on any hide. */
export const BULGE_DECIMALS = 10;
export const CLOSED = '1';
const OPEN = '0';

/** The whole file as R12 (AC1009) has it. $INSUNITS came later; R12's own readers pass over it, and others need it. */
export function releaseTwelve(parts: DxfParts): Pair[] {
  return [
    [999, parts.title],
    ...header('AC1009', parts),
    ...section('TABLES', [...lineTypes(), ...layers(parts)]),
    ...section('BLOCKS', []),
    ...section('ENTITIES', parts.entities.flatMap(entityPairs)),
    [0, 'EOF'],
  ];
}

function lineTypes(): Pair[] {
  return [
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, '1'],
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, '0'],
    [3, 'Solid line'],
    [72, '65'],
    [73, '0'],
    [40, '0.0'],
    [0, 'ENDTAB'],
  ];
}

function layers(parts: DxfParts): Pair[] {
  const all = [{ name: '0', colour: 7 }, ...parts.layers];
  return [
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, String(all.length)],
    ...all.flatMap(({ name, colour }): Pair[] => [
      [0, 'LAYER'],
      [2, name],
      [70, '0'],
      [62, String(colour)],
      [6, 'CONTINUOUS'],
    ]),
    [0, 'ENDTAB'],
  ];
}

function entityPairs({ layer, entity }: LayerEntity): Pair[] {
  switch (entity.kind) {
    case 'line':
      return [[0, 'LINE'], [8, layer], ...flat(entity.from), ...place(entity.to, 11), [31, '0.0']];
    case 'circle':
    case 'arc':
      return [[0, entity.kind.toUpperCase()], [8, layer], ...roundPairs(entity)];
    case 'polyline':
      return [
        [0, 'POLYLINE'],
        [8, layer],
        [66, '1'],
        ...flat({ x: 0, y: 0 }),
        [70, entity.closed ? CLOSED : OPEN],
        ...entity.vertices.flatMap((vertex) => vertexPairs(vertex, layer)),
        [0, 'SEQEND'],
        [8, layer],
      ];
  }
}

/** Centre, radius, and of an arc its angles. */
export function roundPairs(entity: Extract<Entity, { kind: 'circle' | 'arc' }>): Pair[] {
  return [...flat(entity.center), [40, decimal(entity.radius)], ...anglePairs(entity)];
}

export function anglePairs(entity: Extract<Entity, { kind: 'circle' | 'arc' }>): Pair[] {
  if (entity.kind === 'circle') return [];
  return [
    [50, decimal(entity.startDeg)],
    [51, decimal(entity.endDeg)],
  ];
}

function vertexPairs({ at, bulge }: Vertex, layer: string): Pair[] {
  const bent: Pair[] = bulge === 0 ? [] : [[42, decimal(bulge, BULGE_DECIMALS)]];
  return [[0, 'VERTEX'], [8, layer], ...flat(at), ...bent];
}

/** A place of the plane, as the format wants it in space. */
export function flat(at: { readonly x: number; readonly y: number }): Pair[] {
  return [...place(at), [30, '0.0']];
}
