import { LINE_ROLES } from '@hidebound/leather';
import type { LineLook, RoleRule, SizeRule } from '@hidebound/leather';
import { CliError } from './cli-error.js';
import { lengthOrNothing } from './length-option.js';

/** "stitch:dashed", "cut:colour=#336699,width=0.2-0.5" → a rule of roles. Fails with a CliError `bad-use`. */
export function parseRoleRule(text: string): RoleRule {
  const { name, look } = parseRule('--role', text, 'stitch:dashed or cut:colour=#000000');
  const role = LINE_ROLES.find((each) => each === name);
  if (role === undefined) {
    throw new CliError(
      'bad-use',
      `--role ${JSON.stringify(text)}: a line is one of ${LINE_ROLES.join(', ')}.`,
    );
  }
  return { role, ...look };
}

/** "M:layer=size M" → a rule of sizes. Fails with a CliError `bad-use`. */
export function parseSizeRule(text: string): SizeRule {
  const { name, look } = parseRule('--size', text, 'M:layer=size-m or 38:colour=#cc0000');
  return { size: name, ...look };
}

interface Rule {
  readonly name: string;
  readonly look: LineLook;
}

function parseRule(option: string, text: string, example: string): Rule {
  const colon = text.indexOf(':');
  const name = text.slice(0, Math.max(0, colon)).trim();
  const looks = text
    .slice(colon + 1)
    .split(',')
    .map((part) => lookOf(part.trim()));
  if (name === '' || looks.some((look) => look === undefined)) {
    throw new CliError(
      'bad-use',
      `${option} ${JSON.stringify(text)} can't be read; write it as ${example} (conditions: dashed, solid, filled, layer=, label=, colour=, width=0.2-0.5; several with commas).`,
    );
  }
  return { name, look: Object.assign({}, ...looks) as LineLook };
}

function lookOf(part: string): LineLook | undefined {
  if (part === 'dashed' || part === 'solid') return { dashed: part === 'dashed' };
  if (part === 'filled') return { filled: true };
  const equals = part.indexOf('=');
  const value = part.slice(equals + 1).trim();
  if (equals < 1 || value === '') return undefined;
  switch (part.slice(0, equals).trim()) {
    case 'layer':
      return { layer: value };
    case 'label':
      return { label: value };
    case 'colour':
    case 'color':
      return /^#[0-9a-f]{6}$/i.test(value) ? { colour: value } : undefined;
    case 'width':
      return widthLook(value);
    default:
      return undefined;
  }
}

/** "0.2-0.5": from and to, in mm unless they carry a unit. */
function widthLook(value: string): LineLook | undefined {
  const [from, to = from, ...more] = value.split('-').map((each) => lengthOrNothing(each.trim()));
  return from === undefined || to === undefined || more.length > 0 ? undefined : { widthMm: [from, to] };
}
