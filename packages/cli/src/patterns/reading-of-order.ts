import { resolve } from 'node:path';
import { parseOrder } from '@hidebound/leather';
import type { PatternReading } from '@hidebound/leather';
import { besideFile, readText } from '../io/load-files.js';

type Reading = Omit<PatternReading, 'file'>;

/**
 * What an order says of how each pattern file is to be read, under what the command line says: of one thing the command
 * line's word counts, and its rules come before the order's.
 */
export function readingsWithOrder(order: string | undefined, asked: Reading): (file: string) => Reading {
  if (order === undefined) return () => asked;
  const { patterns } = parseOrder(readText(order, 'order'), { file: order });
  const byPath = new Map(patterns.map((each) => [resolve(besideFile(order, each.file)), each]));
  return (path) => {
    const ordered = byPath.get(resolve(path));
    if (ordered === undefined) return asked;
    const sizes = [...(asked.sizes ?? []), ...(ordered.sizes ?? [])];
    return {
      ...ordered,
      ...asked,
      roles: [...asked.roles, ...ordered.roles],
      ...(sizes.length === 0 ? {} : { sizes }),
    };
  };
}
