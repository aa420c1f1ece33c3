import { tannageRowOf } from '../goods/find-goods.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Workshop } from '../model/workshop.js';
import { listWords, quoteValue } from '../words/sentence.js';
import { conditioningOf, dyeBaseOf } from './kinds.js';
import type { PreparationJob } from './prepare-plan.js';
import { dyeCoats, feedingOf } from './recipe.js';
import { isDyedThrough, isFullOfOil, isSpoiltByWater } from './tannage-care.js';

/** What a master would say before the work begins. */
export function findingsOfJob(job: PreparationJob, workshop: Workshop): Diagnostic[] {
  return [
    ...marginFindings(job),
    ...leatherFindings(job, workshop),
    ...recipeFindings(job, workshop),
    ...blockFindings(job),
  ];
}

function say(
  job: Pick<PreparationJob, 'leather'>,
  code: string,
  params: Diagnostic['params'] = {},
  severity: Diagnostic['severity'] = 'warning',
): Diagnostic {
  return {
    code,
    severity,
    params: { leather: job.leather.name, ...params },
    place: { at: job.leather.name },
  };
}

function marginFindings(job: PreparationJob): Diagnostic[] {
  const { tooSmall } = job.margin;
  if (tooSmall.length === 0) return [];
  const hasMm = round(Math.min(...tooSmall.map((block) => block.hasMm)));
  const needMm = Math.ceil(Math.max(...tooSmall.map((block) => block.needMm)));
  const ids = listWords(
    tooSmall.map(({ id }) => quoteValue(id)),
    'and',
  );
  return [say(job, 'prepare-margin-small', { ids, count: tooSmall.length, hasMm, needMm })];
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10;
}

function leatherFindings(job: PreparationJob, workshop: Workshop): Diagnostic[] {
  const { leather, preparation, worked, steps } = job;
  const tannage = leather.tannage ?? '';
  const rule = leather.tannage === undefined ? undefined : tannageRowOf(leather.tannage, workshop);
  const isTooled = worked?.startsWith('tooled') === true;
  const isMoulded = worked?.endsWith('moulded') === true;
  const isWet =
    steps.some(({ kind }) => kind === 'wipe' || kind === 'case') || dyeBaseOf(preparation) === 'water';
  const isDyed = preparation.dye !== undefined;
  const { finish } = leather;
  return [
    ...(isTooled && rule?.meets.tooling === 'no' ? [say(job, 'prepare-not-tooled', { tannage })] : []),
    ...(isMoulded && rule?.meets.moulding === 'no' ? [say(job, 'prepare-not-moulded', { tannage })] : []),
    ...(isWet && isSpoiltByWater(leather, workshop) ? [say(job, 'prepare-no-water', { tannage })] : []),
    ...(isDyed && isDyedThrough(leather, workshop) ? [say(job, 'prepare-dyed-through', { tannage })] : []),
    ...(isDyed && isFullOfOil(leather, workshop) ? [say(job, 'prepare-full-of-oil', { tannage })] : []),
    ...(isDyed && finish !== undefined ? [say(job, 'prepare-on-finished', { finish })] : []),
  ];
}

function recipeFindings(job: PreparationJob, workshop: Workshop): Diagnostic[] {
  const { preparation, liquids, worked, leather } = job;
  const { dye, thinnerParts = 0, thinner, condition } = preparation;
  const feeding = feedingOf(preparation, {
    isWorked: worked !== undefined,
    isFullOfOil: isFullOfOil(leather, workshop),
  });
  const isDyed = dye !== undefined && dyeCoats(preparation, workshop).max > 0;
  const unknown = [
    ...new Set(liquids.filter(({ coverage }) => coverage === undefined).map((need) => need.product)),
  ];
  return [
    ...(conditioningOf(preparation) === 'fed' && !feeding.before && isDyed
      ? [say(job, 'prepare-fed-later', { product: condition!, isLater: feeding.after ? 1 : 0 }, 'note')]
      : []),
    ...(isDyed && dyeBaseOf(preparation) === undefined ? [say(job, 'prepare-base-unknown', { dye })] : []),
    ...(isDyed && thinnerParts > 0 && thinner === undefined
      ? [say(job, 'prepare-thinner-unknown', { dye }, 'note')]
      : []),
    ...unknown.map((product) => say(job, 'prepare-coverage-unknown', { product })),
  ];
}

function blockFindings(job: PreparationJob): Diagnostic[] {
  const whole = job.blocks.filter(({ roughCut }) => roughCut === undefined);
  return whole.flatMap((block) => [
    ...(job.worked === undefined
      ? []
      : [say(job, 'prepare-worked-without-margin', { hide: block.hide, worked: job.worked })]),
    ...(block.hasLooseOthers === true ? [say(job, 'prepare-others-on-hide', { hide: block.hide })] : []),
  ]);
}
