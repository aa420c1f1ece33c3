import { LINE_ROLES } from '@hidebound/leather';
import type { LineLook, LineRole, RoleRule } from '@hidebound/leather';
import { allLabels } from '../drawing/drawn-line.js';
import type { DrawnLine, DrawnSource, Labels } from '../drawing/drawn-line.js';
import { roleOfLeadingWords, roleOfWholeName } from './read-name.js';

/** What rules look at besides names. */
export type LineLooks = Pick<DrawnLine, 'stroke' | 'fill' | 'widthMm' | 'isDashed'>;

/**
 * The role of a line: by the first rule that fits, then by `data-role`, then by trade words in its own names, then in
 * those of the groups around it from the innermost outwards. Nothing if no one says.
 */
export function decideRole(
  source: DrawnSource,
  looks: LineLooks,
  rules: readonly RoleRule[],
): LineRole | undefined {
  for (const rule of rules) {
    if (ruleFits(rule, source, looks)) return rule.role;
  }
  const own = roleOfData(source.labels) ?? firstRole(source.labels, ownRole);
  if (own !== undefined) return own;
  for (const { labels } of source.groups) {
    const role = roleOfData(labels) ?? firstRole(labels, roleOfWholeName);
    if (role !== undefined) return role;
  }
  return undefined;
}

function ownRole(name: string): LineRole | undefined {
  return roleOfWholeName(name) ?? roleOfLeadingWords(name);
}

function firstRole(labels: Labels, read: (name: string) => LineRole | undefined): LineRole | undefined {
  for (const name of allLabels(labels)) {
    const role = read(name);
    if (role !== undefined) return role;
  }
  return undefined;
}

function roleOfData({ data }: Labels): LineRole | undefined {
  const text = data['role'];
  if (text === undefined) return undefined;
  const exact = LINE_ROLES.find((role) => role === text.toLowerCase());
  return exact ?? roleOfWholeName(text);
}

/** True if every condition that the rule gives holds. */
export function ruleFits(rule: LineLook, source: DrawnSource, looks: LineLooks): boolean {
  if (
    rule.layer !== undefined &&
    !namesMatch(
      rule.layer,
      source.groups.flatMap((g) => allLabels(g.labels)),
    )
  ) {
    return false;
  }
  if (rule.label !== undefined && !namesMatch(rule.label, allLabels(source.labels))) return false;
  const colour = looks.stroke ?? looks.fill;
  if (rule.colour !== undefined && rule.colour.toLowerCase() !== colour) return false;
  if (rule.dashed !== undefined && rule.dashed !== looks.isDashed) return false;
  if (rule.filled !== undefined && rule.filled !== isFilledArea(looks)) return false;
  if (rule.widthMm === undefined) return true;
  const [from, to] = rule.widthMm;
  return looks.stroke !== undefined && looks.widthMm >= from && looks.widthMm <= to;
}

/** Its edge is not drawn, as that of letters exported as outlines. */
function isFilledArea({ stroke, fill }: LineLooks): boolean {
  return fill !== undefined && stroke === undefined;
}

/** `*` stands for any run of characters; letter case does not count. */
function namesMatch(pattern: string, names: readonly string[]): boolean {
  const parts = pattern.split('*').map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const expression = new RegExp(`^${parts.join('.*')}$`, 'iu');
  return names.some((name) => expression.test(name));
}
