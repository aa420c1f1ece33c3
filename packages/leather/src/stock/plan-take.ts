import { regionsArea, subtractRegions } from '@hidebound/geometry';
import { writeHide } from '../files/hide-file.js';
import { hashHide } from '../hash/index.js';
import { hideRegion } from '../hide/hide-region.js';
import { checkLayout } from '../layout/check-layout.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Hide } from '../model/hide.js';
import type { Layout } from '../model/layout.js';
import type { StockJournal } from '../model/stock.js';
import type { Workshop } from '../model/workshop.js';
import { offcutsOf } from '../offcuts/offcuts-of.js';
import type { NamedHide } from '../order/sheets.js';
import { leatherError } from '../words/refuse.js';
import { hideUses } from '../yield/layout-yield.js';
import type { HideUse } from '../yield/layout-yield.js';
import { stripsLeftOf } from './strips-left.js';
import { stepThatCut } from './stock-findings.js';
import { changesWithContents } from './stock-step.js';
import type { FileChange, StockStep } from './stock-step.js';

/** A hide of the stock with its file's own text. The file is named as within the stock's folder. */
export interface HideInStock extends NamedHide {
  readonly text: string;
}

export interface TakeInput {
  readonly hides: readonly HideInStock[];
  /** Names of all files of the folder, so that none is written over. */
  readonly fileNames: readonly string[];
  readonly journal: StockJournal;
  readonly layout: Layout;
  /** How the journal names the layout, and the sum of its file. */
  readonly layoutFile: string;
  readonly layoutHash: string;
  /** ISO 8601 day. */
  readonly date: string;
  readonly workshop: Workshop;
  /** Where the offcuts are put; absent: where their hide lay. */
  readonly place?: string | undefined;
}

export interface TakePlan extends StockStep {
  readonly cut: readonly Hide[];
  readonly offcuts: readonly NamedHide[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * What it takes to turn the hides of a layout into their offcuts, all in one step: every hide that a piece lies on
 * becomes cut, every offcut of the layout a hide file of its own. Strips beyond the freeing cut that are too narrow for
 * the layout's rectangle, but long enough by the workshop's figures, are kept too.
 * @throws LeatherError for a hide that is not there, is cut, or is not as the layout knows it, and for offcuts that are
 * not what the pieces leave.
 */
export function planTake(input: TakeInput): TakePlan {
  const { layout, journal } = input;
  const cut = hidesOfLayout(input);
  const meanings = layout.marks;
  const uses = hideUses({
    ...layout,
    hides: cut.map(({ hide }) => hide),
    ...(meanings === undefined ? {} : { workshop: meanings, avoidCandidates: meanings.avoidCandidates }),
  });
  if (uses.length === 0) throw leatherError('stock-nothing-laid', {});
  const used = cut.filter(({ hide }) => uses.some((use) => use.hide.id === hide.id));
  for (const use of uses) proveOffcuts(use, layout);
  const offcuts = nameOffcuts(uses, input);
  const files: FileChange[] = [
    ...used.map(({ hide, file, text }) => ({
      hide: hide.id,
      file,
      before: text,
      after: writeHide({ ...hide, state: 'cut' }),
    })),
    ...offcuts.map(({ hide, file }) => ({ hide: hide.id, file, after: writeHide(hide) })),
  ];
  const { changes, contents } = changesWithContents(files);
  return {
    entry: {
      kind: 'taken',
      number: journal.entries.length + 1,
      date: input.date,
      layout: input.layoutFile,
      layoutHash: input.layoutHash,
      hides: used.map(({ hide }) => ({ hide: hide.id, hash: hashHide(hide) })),
      offcuts: offcuts.map(({ hide }) => hide.id),
      changes,
    },
    contents,
    cut: used.map(({ hide }) => hide),
    offcuts,
    diagnostics: proofFindings(layout, input.hides),
  };
}

/** The hides that the layout lies on, each whole and as the layout knows it. */
function hidesOfLayout({ layout, hides, journal }: TakeInput): HideInStock[] {
  const touched = new Set(
    [...layout.placements, ...layout.roughCuts, ...layout.swatches].map(({ hide }) => hide),
  );
  return layout.hides
    .filter(({ id }) => touched.has(id))
    .map(({ id, hash }) => {
      const found = hides.filter(({ hide }) => hide.id === id);
      const [first, second] = found;
      if (first === undefined) throw leatherError('stock-not-in', { hide: id });
      if (second !== undefined) {
        throw leatherError('stock-id-twice', { hide: id, first: first.file, second: second.file });
      }
      const step = stepThatCut(id, journal);
      if (step !== undefined) {
        const { number, date, layout: by } = step;
        throw leatherError('stock-cut-by-step', { hide: id, number, date, layout: by });
      }
      if (first.hide.state === 'cut') throw leatherError('stock-already-cut', { hide: id });
      if (hashHide(first.hide) !== hash) {
        throw leatherError('stock-hide-changed', { hide: id, file: first.file });
      }
      return first;
    });
}

/** A border that is off by 1 µm along 10 m of cuts. */
const SAME_AREA_MM2 = 10;

/** The offcuts of a layout are what its pieces leave, so that no leather is counted twice. */
function proveOffcuts(use: HideUse, layout: Layout): void {
  const expected = offcutsOf(use).map((hide) => hideRegion(hide));
  const given = layout.offcuts.filter(({ parent }) => parent === use.hide.id).map((hide) => hideRegion(hide));
  const off = regionsArea(subtractRegions(expected, given)) + regionsArea(subtractRegions(given, expected));
  if (expected.length === given.length && off <= SAME_AREA_MM2) return;
  throw leatherError('stock-offcuts-differ', { hide: use.hide.id });
}

function proofFindings(layout: Layout, hides: readonly NamedHide[]): Diagnostic[] {
  const named = layout.hides.flatMap(({ id, hash }) =>
    hides.filter(({ hide }) => hide.id === id && hashHide(hide) === hash),
  );
  // A hide without a piece may be gone or changed: the layout stands without it, but can't be proven here.
  if (named.length < layout.hides.length) return [];
  const { violations, diagnostics } = checkLayout(layout, named);
  const faults =
    violations.filter(({ accepted }) => !accepted).length +
    diagnostics.filter(({ severity }) => severity === 'error').length;
  return faults === 0 ? [] : [{ code: 'stock-layout-not-proven', severity: 'warning', params: { faults } }];
}

/** The offcuts with ids, places and files of their own. */
function nameOffcuts(uses: readonly HideUse[], input: TakeInput): NamedHide[] {
  const ids = new Set(input.hides.map(({ hide }) => hide.id));
  const files = new Set(input.fileNames.map((name) => name.toLowerCase()));
  return uses.flatMap((use) => {
    const storedAt = input.place ?? use.hide.storedAt;
    const strips = stripsLeftOf(use, input.workshop);
    const parts = [...use.leftover.kept, ...strips];
    return offcutsOf({ ...use, leftover: { ...use.leftover, kept: parts } }).map((offcut) => {
      const id = unusedName(offcut.id, (name) => ids.has(name));
      const file = `${unusedName(fileStem(id), (stem) => files.has(`${stem}.hide.json`.toLowerCase()))}.hide.json`;
      ids.add(id);
      files.add(file.toLowerCase());
      return { file, hide: { ...offcut, id, ...(storedAt === undefined ? {} : { storedAt }) } };
    });
  });
}

/** The name itself, or else with the first number that makes it a new one. */
function unusedName(name: string, isUsed: (name: string) => boolean): string {
  let found = name;
  for (let number = 2; isUsed(found); number++) found = `${name}-${number}`;
  return found;
}

/** Long enough to tell offcuts apart, short enough for every file system. */
const LONGEST_STEM = 120;

function fileStem(id: string): string {
  const stem = id.replace(/[^\p{L}\p{N}._-]+/gu, '-').slice(0, LONGEST_STEM);
  return stem.replace(/^[.-]+/, '') || 'offcut';
}
