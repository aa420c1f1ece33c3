import { tannageRowOf } from '../goods/find-goods.js';
import type { LeatherQualities } from '../model/hide.js';
import type { OrderLeather } from '../model/order.js';
import { TEMPERS } from '../model/workshop-rules.js';
import type { Temper } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';
import { isUnfinished } from './finish-words.js';
import { temperOf } from './wanted-leather.js';
import type { SuitRemark, SuitRemarkCode, WantOrigin, WantedLeather } from './suit-model.js';

export interface QualityFit {
  readonly reasons: readonly SuitRemark[];
  readonly remarks: readonly SuitRemark[];
}

export interface QualityAsked {
  readonly wanted: WantedLeather;
  readonly leather: OrderLeather | undefined;
  readonly has: LeatherQualities;
  readonly workshop: Pick<Workshop, 'tannages'>;
}

/** Tannage, temper, finish and colour of a hide against what a piece wants. */
export function qualityFit(asked: QualityAsked): QualityFit {
  const found = [...tannageFit(asked), ...temperFit(asked), ...finishFit(asked), ...colourFit(asked)];
  return {
    reasons: found.filter(({ isReason }) => isReason).map(bare),
    remarks: found.filter(({ isReason }) => !isReason).map(bare),
  };
}

interface Found extends SuitRemark {
  readonly isReason: boolean;
}

function bare({ code, params }: Found): SuitRemark {
  return { code, params };
}

function reason(code: SuitRemarkCode, params: SuitRemark['params'] = {}): Found {
  return { code, params, isReason: true };
}

function remark(code: SuitRemarkCode, params: SuitRemark['params'] = {}): Found {
  return { code, params, isReason: false };
}

/** What the order itself asks for is meant; a table's row is only what is usual. */
function isMeant(from: WantOrigin): boolean {
  return from === 'wants' || from === 'leather' || from === 'piece';
}

function tannageFit({ wanted, has, workshop }: QualityAsked): Found[] {
  const { tannages } = wanted;
  if (has.tannage === undefined) {
    return tannages === undefined && wanted.needs.length === 0 ? [] : [remark('tannage-not-known')];
  }
  const row = tannageRowOf(has.tannage, workshop);
  const name = (tannage: string): string => tannageRowOf(tannage, workshop)?.tannage ?? tannage.toLowerCase();
  const isAsked = tannages === undefined || tannages.value.map(name).includes(name(has.tannage));
  const params = { found: has.tannage, asked: tannages?.value.join(' or ') ?? '' };
  const unasked =
    isAsked || tannages === undefined
      ? []
      : [isMeant(tannages.from) ? reason('tannage-not-asked', params) : remark('tannage-unusual', params)];
  const met = wanted.needs.flatMap((need): Found[] => {
    const says = row?.meets[need] ?? 'yes';
    if (says === 'yes') return [];
    const about = { need, tannage: row!.tannage };
    return [says === 'no' ? reason('need-not-met', about) : remark('need-with-care', about)];
  });
  return [...unasked, ...met];
}

/** So many steps of the scale beside the wanted temper are another leather; one step is only unusual. */
const OTHER_TEMPER_STEPS = 2;

function temperFit({ wanted, has }: QualityAsked): Found[] {
  const { tempers, needs } = wanted;
  const found = has.temper === undefined ? undefined : temperOf(has.temper);
  const stands = needs.includes('standing up');
  const turns = needs.includes('turned edges');
  if (found === undefined) {
    return tempers === undefined && !stands && !turns ? [] : [remark('temper-not-known')];
  }
  const own: Found[] = [
    ...(stands && found === 'soft' ? [reason('too-soft-to-stand')] : []),
    ...(turns && found === 'hard' ? [reason('too-hard-to-turn')] : []),
  ];
  if (own.length > 0 || tempers === undefined) return own;
  const steps = nearestSteps(found, tempers.value);
  const params = { found, asked: tempers.value.join(' or ') };
  if (steps === 0) return [];
  const isOther = Math.abs(steps) >= OTHER_TEMPER_STEPS;
  if (steps < 0) return [isOther ? reason('too-soft', params) : remark('softer-than-usual', params)];
  return [isOther ? reason('too-hard', params) : remark('stiffer-than-usual', params)];
}

/** Steps from the nearest of the wanted tempers: below 0 is softer. */
function nearestSteps(found: Temper, wanted: readonly Temper[]): number {
  const steps = wanted.map((temper) => TEMPERS.indexOf(found) - TEMPERS.indexOf(temper));
  return steps.reduce((best, each) => (Math.abs(each) < Math.abs(best) ? each : best), Infinity);
}

function finishFit({ wanted, has }: QualityAsked): Found[] {
  const isTooled = wanted.needs.includes('tooling');
  if (has.finish === undefined) return isTooled ? [remark('finish-not-known')] : [];
  if (isTooled && !isUnfinished(has.finish)) return [reason('finished-for-tooling', { found: has.finish })];
  const { finish } = wanted;
  if (finish === undefined || !isMeant(finish.from) || sharesWord(finish.value, has.finish)) return [];
  return [reason('finish-not-asked', { found: has.finish, asked: finish.value })];
}

/** Finishes are told in free words: one in common is enough. */
function sharesWord(asked: string, found: string): boolean {
  const words = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}-]+/gu) ?? [];
  const has = words(found);
  return words(asked).some((word) => has.includes(word));
}

function colourFit({ leather, has }: QualityAsked): Found[] {
  const [asked, found] = [leather?.colour, has.colour];
  if (asked === undefined || found === undefined) return [];
  const same = asked.trim().toLowerCase() === found.trim().toLowerCase();
  return same ? [] : [reason('other-colour', { found, asked })];
}
