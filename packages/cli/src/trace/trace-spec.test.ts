import { HIDE_CUTS } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { TRACE_SPEC } from './trace-spec.js';

test('when a cut is named to trace, it is one of those that hides have', () => {
  const cut = TRACE_SPEC.options.find(({ flags }) => flags.startsWith('--cut'))!;
  expect(cut.value).toEqual({ kind: 'choice', choices: HIDE_CUTS });
});
