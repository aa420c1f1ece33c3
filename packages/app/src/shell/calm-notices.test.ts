import { describe, expect, it } from 'vitest';
import { staysMs } from './calm-notices.js';

describe('how long a notice stays', () => {
  it('when it is calm, there is time to read it twice, slowly', () => {
    // Slow silent reading: about 100 words a minute, 6 letters a word with its space (from memory), so 10 letters a second.
    const text = 'Three of the pieces were laid elsewhere, and the layout is shown as it is now.';
    expect(staysMs({ id: 1, tone: 'calm', text })!).toBeGreaterThan((2 * text.length * 1000) / 10);
  });

  it('when it warns, tells of an error or has a button, it stays until it is put away', () => {
    const action = { label: 'Undo', run: () => undefined };
    expect(staysMs({ id: 1, tone: 'warning', text: 'x' })).toBeUndefined();
    expect(staysMs({ id: 1, tone: 'error', text: 'x' })).toBeUndefined();
    expect(staysMs({ id: 1, tone: 'calm', text: 'x', action })).toBeUndefined();
  });
});
