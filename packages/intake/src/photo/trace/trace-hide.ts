import { orientRing, regionArea, ringBox } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import type { Flaw, FlawCandidate } from '@hidebound/leather';
import { IntakeError } from '../../error.js';
import { newFindings } from '../../findings.js';
import { tellWithin } from '../camera/tell-within.js';
import { findCandidates } from '../marks/candidates/find-candidates.js';
import { findChalk } from '../marks/chalk/find-chalk.js';
import { findOutlines } from '../outline/find-outlines.js';
import type { FoundOutline } from '../outline/find-outlines.js';
import { simplifyWithin } from '../outline/simplify-within.js';
import type { Photo } from '../photo.js';
import type { Vision } from '../vision/vision.js';
import { assembleHide } from './assemble-hide.js';
import type { TracedHide } from './assemble-hide.js';
import { checkArea } from './check-area.js';
import { guessForHide } from './guess-for-hide.js';
import { tellStrayHints } from './hints-for-photo.js';
import { findingsInFrame, hideFrame } from './hide-frame.js';
import { hideErrors, lineLength } from './known-errors.js';
import { lookAtLeather } from './look-at-leather.js';
import type { Looked } from './look-at-leather.js';
import { layOtherSide } from './other-side.js';
import { photoViews } from './photo-view.js';
import { stageTeller } from './stages.js';
import type { TraceTools } from './stages.js';
import { tellShine } from './tell-shine.js';
import type { TraceOptions, TraceRead } from './trace-options.js';

/**
 * A hide from photos of it: scaled by the references that lie beside it, straightened, its edge and chalked marks
 * found, possible flaws pointed out, backbone and cut guessed. Runs wherever the vision library runs.
 * Throws `IntakeError`: `no-photo`, `no-reference`, `photo-not-tied`, `no-hide-in-photo`, `sides-do-not-match`,
 * `moved-photos-do-not-join`, `crosses-disagree`, `trace-stopped`.
 */
export function traceHide(photos: readonly Photo[], options: TraceOptions, vision: Vision): TraceRead {
  const [first] = photos;
  if (first === undefined) throw new IntakeError('no-photo', {}, {});
  const findings = newFindings(first.file);
  const tools = { vision, findings, stage: stageTeller(options, first.file) };
  const all = [...photos, ...(options.raking ?? []), ...(options.otherSide ?? [])];
  tellStrayHints(options.hints, all, findings);
  const looked = lookAtLeather(photos, options, tools);
  tools.stage('outline');
  const piece = findOutlines(looked.picture, { ...looked, most: 1 }, vision, findings).pieces[0]!;
  const marks = marksOn(looked, leatherOf(piece), options, tools);
  const { leather } = marks;
  tools.stage('backbone');
  const guess = guessForHide(piece, options, findings);
  const errors = hideErrors(leather, looked.errorWithin(ringBox(piece.outline)), piece);
  const simple = simplified(leather);
  tellWithin(looked.floor, ringBox(piece.outline), findings);
  tellShine(looked.picture, { outer: simple.outline, openings: simple.openings }, findings);
  const areaMm2 = regionArea({ outer: leather.outer, openings: [] });
  checkArea(areaMm2, errors.areaShare, options, findings);
  const assembled = assembleHide(
    {
      ...simple,
      ...guess,
      areaMm2,
      unsure: piece.unsure,
      flaws: marks.flaws,
      candidates: marks.candidates,
      errors,
      hints: looked.hints,
      scaledBy: looked.floor.scaledBy,
      takenFrom: all.map(({ file }) => file),
      picture: looked.picture,
    },
    options,
  );
  const frame = hideFrame(ringBox(simple.outline), options.sideUp);
  const { cameras, references } = looked.floor;
  return {
    ...assembled,
    diagnostics: findingsInFrame(frame, findings.diagnostics),
    views: options.isMoved === true ? [] : photoViews(photos, cameras, references, frame),
    report: {
      references: looked.floor.references.map(({ name, residualMm }) => ({ name, residualMm })),
      areaMm2,
      areaErrorShare: errors.areaShare,
      scaleErrorShare: errors.scaleShare,
      placeErrorMm: { least: errors.leastMm, most: errors.mostMm },
      chalkFlaws: marks.flaws.length,
      crosses: marks.crosses.length,
      unsureLengthMm: piece.unsure.reduce((sum, { line }) => sum + lineLength(line), 0),
      backboneConfidence: guess.confidence,
      ...(marks.otherSideMisfitMm === undefined ? {} : { otherSideMisfitMm: marks.otherSideMisfitMm }),
      ...(looked.movedMisfitMm === undefined ? {} : { movedMisfitMm: looked.movedMisfitMm }),
    },
  };
}

function leatherOf({ outline, openings }: FoundOutline): Region {
  return {
    outer: orientRing(outline, 'outer'),
    openings: openings.map((ring) => orientRing(ring, 'opening')),
  };
}

interface FoundMarks {
  /** Without openings that turned out to be chalk. */
  readonly leather: Region;
  readonly flaws: readonly Flaw[];
  readonly candidates: readonly FlawCandidate[];
  readonly crosses: readonly { readonly x: number; readonly y: number }[];
  readonly otherSideMisfitMm?: number;
}

/** What is chalked on both sides, and what may be a flaw. */
function marksOn(looked: Looked, traced: Region, options: TraceOptions, tools: TraceTools): FoundMarks {
  const { vision, findings, stage } = tools;
  stage('chalk');
  const chalk = findChalk(looked.picture, traced, { side: options.sideUp }, vision, findings);
  const { leather } = chalk;
  const isTurned = (options.otherSide ?? []).length > 0;
  const known = { leather, crosses: chalk.crosses };
  const other = isTurned ? layOtherSide(known, options, tools) : undefined;
  const found = { leather, flaws: [...chalk.flaws, ...(other?.flaws ?? [])], crosses: chalk.crosses };
  const turned = other === undefined ? {} : { otherSideMisfitMm: other.misfitMm };
  if (options.findCandidates === false) return { ...found, ...turned, candidates: [] };
  stage('candidates');
  const { picture, raking } = looked;
  const sought = { raking, chalk: chalk.covered, cells: chalk.cells, side: options.sideUp };
  return { ...found, ...turned, candidates: findCandidates(picture, leather, sought, vision) };
}

/** Handier rings, the leather never larger than it was traced. */
function simplified({ outer, openings }: Region): Pick<TracedHide, 'outline' | 'openings'> {
  return { outline: simplifyWithin(outer), openings: openings.map((ring) => simplifyWithin(ring)) };
}
