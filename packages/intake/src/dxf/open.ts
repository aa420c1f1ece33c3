import { IntakeError } from '../error.js';
import type { Findings } from '../findings.js';
import { tell } from '../findings.js';
import { MAX_FILE_BYTES } from '../limits.js';
import { isBinaryDxf, isDwg } from '../pattern-format.js';
import { entitiesOf, findBlocks } from './blocks.js';
import type { Block } from './blocks.js';
import type { Entity } from './entity.js';
import { readHeader } from './header.js';
import type { DxfHeader } from './header.js';
import { scanPairs } from './pairs.js';
import type { Pairs } from './pairs.js';
import { readPieceFile } from './piece-file.js';
import type { PieceFile } from './piece-file.js';
import { readEntities } from './read-entities.js';
import { findSections } from './sections.js';
import { readTables } from './tables.js';
import type { Tables } from './tables.js';
import { textDecoder } from './text.js';
import type { Decode } from './text.js';

/** A DXF taken apart, nothing drawn yet. */
export interface OpenDxf {
  readonly pairs: Pairs;
  readonly decode: Decode;
  readonly header: DxfHeader;
  readonly tables: Tables;
  readonly blocks: ReadonlyMap<string, Block>;
  /** Entities of blocks that were read so far. */
  readonly knownEntities: Map<Block, readonly Entity[]>;
  readonly entities: readonly Entity[];
  readonly pieceFile?: PieceFile;
}

const MEGABYTE = 1024 * 1024;
const HEAD_BYTES = 64;

/** Throws `IntakeError` for what is no DXF in text form, or a broken one. */
export function openDxf(bytes: Uint8Array, findings: Findings): OpenDxf {
  const { file } = findings;
  refuseOthers(bytes, file);
  const pairs = scanPairs(bytes, file);
  const sections = findSections(pairs);
  if (!pairs.hasEnd) tell(findings, 'warning', 'dxf-no-end');
  const header = readHeader(pairs, sections.get('HEADER'));
  const decode = textDecoder(header.version, header.codePage);
  const tables = readTables(pairs, sections.get('TABLES'), decode);
  const blocks = findBlocks(pairs, sections.get('BLOCKS'), decode);
  const knownEntities: OpenDxf['knownEntities'] = new Map();
  const entities = readEntities(pairs, sections.get('ENTITIES')!, decode);
  const read = (block: Block) => entitiesOf(pairs, block, decode, knownEntities);
  const pieceFile = readPieceFile(blocks.values(), read, entities, findings);
  if (entities.length === 0 && pieceFile === undefined)
    throw new IntakeError('dxf-no-entities', {}, { file });
  const open = { pairs, decode, header, tables, blocks, knownEntities, entities };
  return pieceFile === undefined ? open : { ...open, pieceFile };
}

function refuseOthers(bytes: Uint8Array, file: string): void {
  if (bytes.length > MAX_FILE_BYTES) {
    const params = { megabytes: Math.round(bytes.length / MEGABYTE), limit: MAX_FILE_BYTES / MEGABYTE };
    throw new IntakeError('too-large', params, { file });
  }
  const head = String.fromCharCode(...bytes.subarray(0, HEAD_BYTES));
  if (isBinaryDxf(head)) throw new IntakeError('dxf-binary', {}, { file });
  if (isDwg(head)) throw new IntakeError('dxf-is-dwg', { version: head.slice(0, 6) }, { file });
}
