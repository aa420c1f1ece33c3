import type { Diagnostic } from '@hidebound/leather';
import type { CommandResult } from './command-context.js';
import { sentenceOf } from './finding-words.js';
import { EXIT_STATUS } from './exit-status.js';

/** The result of a command as a program reads it. */
export function toJsonText(
  result: Omit<CommandResult, 'lines'> & { readonly command: string; readonly version: string },
): string {
  const { command, version, exitStatus, data, diagnostics } = result;
  const told = {
    command,
    version,
    ok: exitStatus === EXIT_STATUS.done,
    exitStatus,
    result: data,
    diagnostics: diagnostics.map(toJsonFinding),
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}

function toJsonFinding(diagnostic: Diagnostic): Record<string, unknown> {
  const { code, severity, params, place } = diagnostic;
  return {
    code,
    severity,
    sentence: sentenceOf(diagnostic),
    params,
    ...(place === undefined ? {} : { place }),
  };
}
