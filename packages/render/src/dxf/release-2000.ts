import { header, place, section } from './header.js';
import { decimal } from './pairs.js';
import type { Pair } from './pairs.js';
import { BULGE_DECIMALS, CLOSED, anglePairs, flat } from './release-12.js';
import type { DxfParts, LayerEntity } from './write-dxf.js';

/** Fixed handles of what every file holds; entities are numbered after them. */
const HANDLES = {
  viewports: '1',
  lineTypes: '2',
  byBlock: '3',
  byLayer: '4',
  continuous: '5',
  layerTable: '6',
  styles: '7',
  standard: '8',
  views: '9',
  systems: 'A',
  applications: 'B',
  application: 'C',
  dimensions: 'D',
  records: 'E',
  modelRecord: 'F',
  paperRecord: '10',
  modelBlock: '11',
  modelEnd: '12',
  paperBlock: '13',
  paperEnd: '14',
  root: '15',
  groups: '16',
  layerZero: '17',
} as const;
const FIRST_FREE = 0x20;

/**
 * The whole file as R2000 (AC1015) has it: every object with a handle and its class, and the tables, blocks and
 * dictionaries that a strict reader looks for (AutoCAD 2000 DXF Reference, from memory; checked with another reader).
 */
export function releaseTwoThousand(parts: DxfParts): Pair[] {
  const layerHandles = parts.layers.map((_, i) => handle(FIRST_FREE + i));
  const first = FIRST_FREE + parts.layers.length;
  const next = first + parts.entities.length;
  return [
    [999, parts.title],
    ...header('AC1015', parts, [
      [9, '$HANDSEED'],
      [5, handle(next)],
    ]),
    ...section('CLASSES', []),
    ...section('TABLES', tables(parts, layerHandles)),
    ...section('BLOCKS', [
      ...block('*Model_Space', HANDLES.modelRecord, HANDLES.modelBlock, HANDLES.modelEnd),
      ...block('*Paper_Space', HANDLES.paperRecord, HANDLES.paperBlock, HANDLES.paperEnd),
    ]),
    ...section(
      'ENTITIES',
      parts.entities.flatMap((one, i) => entityPairs(one, handle(first + i))),
    ),
    ...section('OBJECTS', objects()),
    [0, 'EOF'],
  ];
}

function handle(n: number): string {
  return n.toString(16).toUpperCase();
}

function tables(parts: DxfParts, layerHandles: readonly string[]): Pair[] {
  const layers = [
    ...layerPairs(HANDLES.layerZero, '0', 7),
    ...parts.layers.flatMap(({ name, colour }, i) => layerPairs(layerHandles[i]!, name, colour)),
  ];
  return [
    ...table('VPORT', HANDLES.viewports, 0, []),
    ...table('LTYPE', HANDLES.lineTypes, 3, [
      ...lineType(HANDLES.byBlock, 'ByBlock', ''),
      ...lineType(HANDLES.byLayer, 'ByLayer', ''),
      ...lineType(HANDLES.continuous, 'Continuous', 'Solid line'),
    ]),
    ...table('LAYER', HANDLES.layerTable, parts.layers.length + 1, layers),
    ...table('STYLE', HANDLES.styles, 1, textStyle()),
    ...table('VIEW', HANDLES.views, 0, []),
    ...table('UCS', HANDLES.systems, 0, []),
    ...table('APPID', HANDLES.applications, 1, [
      ...record('APPID', HANDLES.application, HANDLES.applications, 'AcDbRegAppTableRecord'),
      [2, 'ACAD'],
      [70, '0'],
    ]),
    ...table('DIMSTYLE', HANDLES.dimensions, 0, [[100, 'AcDbDimStyleTable']]),
    ...table('BLOCK_RECORD', HANDLES.records, 2, [
      ...record('BLOCK_RECORD', HANDLES.modelRecord, HANDLES.records, 'AcDbBlockTableRecord'),
      [2, '*Model_Space'],
      ...record('BLOCK_RECORD', HANDLES.paperRecord, HANDLES.records, 'AcDbBlockTableRecord'),
      [2, '*Paper_Space'],
    ]),
  ];
}

function table(name: string, own: string, count: number, records: readonly Pair[]): Pair[] {
  return [
    [0, 'TABLE'],
    [2, name],
    [5, own],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, String(count)],
    ...records,
    [0, 'ENDTAB'],
  ];
}

function record(kind: string, own: string, owner: string, subclass: string): Pair[] {
  return [
    [0, kind],
    [5, own],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, subclass],
  ];
}

function lineType(own: string, name: string, words: string): Pair[] {
  return [
    ...record('LTYPE', own, HANDLES.lineTypes, 'AcDbLinetypeTableRecord'),
    [2, name],
    [70, '0'],
    [3, words],
    [72, '65'],
    [73, '0'],
    [40, '0.0'],
  ];
}

function layerPairs(own: string, name: string, colour: number): Pair[] {
  return [
    ...record('LAYER', own, HANDLES.layerTable, 'AcDbLayerTableRecord'),
    [2, name],
    [70, '0'],
    [62, String(colour)],
    [6, 'Continuous'],
  ];
}

function textStyle(): Pair[] {
  return [
    ...record('STYLE', HANDLES.standard, HANDLES.styles, 'AcDbTextStyleTableRecord'),
    [2, 'Standard'],
    [70, '0'],
    [40, '0.0'],
    [41, '1.0'],
    [50, '0.0'],
    [71, '0'],
    [42, '2.5'],
    [3, 'txt'],
    [4, ''],
  ];
}

function block(name: string, owner: string, start: string, end: string): Pair[] {
  return [
    [0, 'BLOCK'],
    [5, start],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockBegin'],
    [2, name],
    [70, '0'],
    ...flat({ x: 0, y: 0 }),
    [3, name],
    [1, ''],
    [0, 'ENDBLK'],
    [5, end],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockEnd'],
  ];
}

function entityPairs({ layer, entity }: LayerEntity, own: string): Pair[] {
  const head = (kind: string, subclass: string): Pair[] => [
    [0, kind],
    [5, own],
    [330, HANDLES.modelRecord],
    [100, 'AcDbEntity'],
    [8, layer],
    [100, subclass],
  ];
  switch (entity.kind) {
    case 'line':
      return [...head('LINE', 'AcDbLine'), ...flat(entity.from), ...place(entity.to, 11), [31, '0.0']];
    case 'circle':
      return [...head('CIRCLE', 'AcDbCircle'), ...flat(entity.center), [40, decimal(entity.radius)]];
    case 'arc':
      return [
        ...head('ARC', 'AcDbCircle'),
        ...flat(entity.center),
        [40, decimal(entity.radius)],
        [100, 'AcDbArc'],
        ...anglePairs(entity),
      ];
    case 'polyline':
      return [
        ...head('LWPOLYLINE', 'AcDbPolyline'),
        [90, String(entity.vertices.length)],
        [70, entity.closed ? CLOSED : '0'],
        [43, '0.0'],
        ...entity.vertices.flatMap(({ at, bulge }): Pair[] => [
          ...place(at),
          ...(bulge === 0 ? [] : ([[42, decimal(bulge, BULGE_DECIMALS)]] as Pair[])),
        ]),
      ];
  }
}

function objects(): Pair[] {
  return [
    [0, 'DICTIONARY'],
    [5, HANDLES.root],
    [330, '0'],
    [100, 'AcDbDictionary'],
    [281, '1'],
    [3, 'ACAD_GROUP'],
    [350, HANDLES.groups],
    [0, 'DICTIONARY'],
    [5, HANDLES.groups],
    [330, HANDLES.root],
    [100, 'AcDbDictionary'],
    [281, '1'],
  ];
}
