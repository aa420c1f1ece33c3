/** Group codes and values of invented DXF files, for tests. */
export type TestPair = readonly [number, string | number];

export interface TestDxf {
  /** Of the header: $INSUNITS; 4 (mm) unless said otherwise, nothing where it is null. */
  readonly units?: number | null;
  readonly header?: readonly TestPair[];
  readonly tables?: readonly TestPair[];
  readonly blocks?: readonly TestPair[];
  readonly entities: readonly TestPair[];
  readonly lineEnd?: string;
}

export function dxfText({
  units = 4,
  header = [],
  tables,
  blocks,
  entities,
  lineEnd = '\n',
}: TestDxf): string {
  const inHeader: TestPair[] = units === null ? [...header] : [...header, [9, '$INSUNITS'], [70, units]];
  const pairs: TestPair[] = [
    ...section('HEADER', inHeader),
    ...(tables === undefined ? [] : section('TABLES', tables)),
    ...(blocks === undefined ? [] : section('BLOCKS', blocks)),
    ...section('ENTITIES', entities),
    [0, 'EOF'],
  ];
  return pairs.map(([code, value]) => `${code}${lineEnd}${value}${lineEnd}`).join('');
}

export function dxfBytes(dxf: TestDxf): Uint8Array {
  return encode(dxfText(dxf));
}

/** Text as Latin-1, in which each character is a byte. */
export function encode(text: string): Uint8Array {
  return Uint8Array.from(text, (c) => c.charCodeAt(0));
}

function section(name: string, pairs: readonly TestPair[]): TestPair[] {
  return [[0, 'SECTION'], [2, name], ...pairs, [0, 'ENDSEC']];
}

export function line(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  more: readonly TestPair[] = [],
): TestPair[] {
  return [[0, 'LINE'], [10, x1], [20, y1], [11, x2], [21, y2], ...more];
}

export function circle(x: number, y: number, radius: number, more: readonly TestPair[] = []): TestPair[] {
  return [[0, 'CIRCLE'], [10, x], [20, y], [40, radius], ...more];
}

export function rectangle(
  x: number,
  y: number,
  width: number,
  height: number,
  more: readonly TestPair[] = [],
): TestPair[] {
  const corners = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ] as const;
  return [
    [0, 'LWPOLYLINE'],
    ...more,
    [90, 4],
    [70, 1],
    ...corners.flatMap(([a, b]): TestPair[] => [
      [10, a],
      [20, b],
    ]),
  ];
}

export function block(
  name: string,
  entities: readonly TestPair[],
  more: readonly TestPair[] = [],
): TestPair[] {
  return [[0, 'BLOCK'], [2, name], ...more, ...entities, [0, 'ENDBLK']];
}

export function insert(name: string, x: number, y: number, more: readonly TestPair[] = []): TestPair[] {
  return [[0, 'INSERT'], [2, name], [10, x], [20, y], ...more];
}

export function layer(name: string, more: readonly TestPair[]): TestPair[] {
  return [[0, 'LAYER'], [2, name], ...more];
}
