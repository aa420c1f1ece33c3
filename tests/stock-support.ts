import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { regionsArea } from '@hidebound/geometry';
import { hideRegion, netRegions, parseLayout } from '@hidebound/leather';
import type { Hide, Layout } from '@hidebound/leather';
import { loadStock } from '../packages/cli/src/stock/load-stock.js';
import { SMALL_HIDE, closed, hideboundHere } from './cli-support.js';

/** A stock of two panels and a layout that cuts both, in a folder of its own. */
export interface StockJob {
  readonly stock: string;
  readonly layout: string;
  /** Layouts that each cut one of the two. */
  readonly first: string;
  readonly second: string;
}

const OTHER_HIDE = {
  ...SMALL_HIDE,
  id: 'panel-2',
  outline: closed([0, 0], [500, 0], [500, 300], [0, 300]),
  openings: [closed([400, 200], [420, 200], [420, 220], [400, 220])],
  leather: { colour: 'brown', tannage: 'vegetable', thickness: { minMm: 2, maxMm: 2.4 } },
  lot: 'B7',
  storedAt: 'rack 2',
  price: { amount: '30.00', currency: 'EUR', per: 'hide', of: 'measured' },
};

function orderText(leathers: readonly string[]): string {
  return `format: hidebound/order@1
name: ${leathers.join(' and ')}
date: "2026-01-05"
cutting: { method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }
keep: [80, 80]
leathers:
${leathers.map((name) => `  ${name}: { hides: [stock/${name}.hide.json] }`).join('\n')}
articles:
  - name: tag
    goods: tag
    sets: 2
    pieces:
${leathers.map((name) => `      - { name: plate of ${name}, leather: ${name}, part: stiffener, rectangle: { width: 60, length: 90 } }`).join('\n')}
`;
}

/** Makes the files once; copies of them are made by `copyOf`. */
export async function stockJob(folder: string): Promise<StockJob> {
  const at = mkdtempSync(join(folder, 'stock-'));
  const stock = join(at, 'stock');
  mkdirSync(stock);
  writeFileSync(join(stock, 'one.hide.json'), JSON.stringify(SMALL_HIDE));
  writeFileSync(join(stock, 'two.hide.json'), JSON.stringify(OTHER_HIDE));
  const lay = async (name: string, leathers: readonly string[]): Promise<string> => {
    const order = join(at, `${name}.order.yaml`);
    writeFileSync(order, orderText(leathers));
    const run = await hideboundHere(['lay', order, '--effort', '0', '--cores', '1']);
    expect(run.status, run.stderr).toBe(0);
    return join(at, `${name}.layout.json`);
  };
  return {
    stock,
    layout: await lay('both', ['one', 'two']),
    first: await lay('first', ['one']),
    second: await lay('second', ['two']),
  };
}

/** The stock anew, in a folder beside the layouts. */
export function copyOf({ stock }: StockJob, name: string): string {
  const copy = join(stock, '..', name);
  cpSync(stock, copy, { recursive: true });
  return copy;
}

export function readLayout(path: string): Layout {
  return parseLayout(readFileSync(path, 'utf8'), { file: path });
}

export function netArea(hide: Hide): number {
  return regionsArea(netRegions(hideRegion(hide)));
}

/** What a stock comes to: its whole leather, its ids, and which layouts count as cut. */
export interface StockSum {
  /** Net area of what is not cut, and what the layouts that count have used up, mm². */
  readonly totalMm2: number;
  readonly ids: readonly string[];
  readonly whole: readonly string[];
  readonly taken: number;
}

/** Adds a stock up as every command reads it. */
export function sumOfStock(stock: string, layouts: Readonly<Record<string, Layout>>): StockSum {
  const { hides, journal, diagnostics } = loadStock(stock);
  expect(diagnostics).toEqual([]);
  const undone = new Set(journal.entries.flatMap((entry) => (entry.kind === 'undone' ? [entry.undoes] : [])));
  const taken = journal.entries.filter((entry) => entry.kind === 'taken' && !undone.has(entry.number));
  const usedUp = taken.map((entry) =>
    entry.kind === 'taken' ? layouts[entry.layout.replace('../', '')]!.yield.total.usedUpMm2 : 0,
  );
  const whole = hides.filter(({ hide }) => hide.state !== 'cut').map(({ hide }) => hide);
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  return {
    totalMm2: sum(whole.map(netArea)) + sum(usedUp),
    ids: hides.map(({ hide }) => hide.id).sort(),
    whole: whole.map(({ id }) => id).sort(),
    taken: taken.length,
  };
}

/** Files that a user sees: not the journal, not what is kept beside it. */
export function hideFilesOf(stock: string): Record<string, string> {
  const names = readdirSync(stock).filter((name) => name.endsWith('.hide.json'));
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(stock, name), 'utf8')]));
}

export interface Death {
  readonly status: number | null;
  readonly signal: string | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a script of this folder's tools and waits for its end, however it comes. */
export function runScript(script: string, args: readonly string[]): Promise<Death> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    let [stdout, stderr] = ['', ''];
    child.stdout.on('data', (text: Buffer) => (stdout += text.toString()));
    child.stderr.on('data', (text: Buffer) => (stderr += text.toString()));
    child.on('error', reject);
    child.on('close', (status, signal) => {
      resolve({ status, signal, stdout, stderr });
    });
  });
}
