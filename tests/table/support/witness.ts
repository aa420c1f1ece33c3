import type { Page } from 'playwright-core';

/** What a person saw at one moment. */
export interface Seen {
  /** What the screen says of the work: "saved", "saving", "waiting" (kept in this browser) or "unsafe". */
  readonly state: string;
  /** Ids of the flaws in the drawing; undefined where no hide is drawn. */
  readonly flaws?: readonly string[];
  /** Sets of the first article; undefined where the order is not shown. */
  readonly sets?: number;
}

/** What of the work lies in the browser's journal. */
export interface Journaled {
  readonly flaws: readonly string[];
  readonly sets: number | undefined;
}

export interface Witnessed {
  /** The same in two pictures one after another: a state that was still to be drawn is no promise. */
  readonly seen?: Seen;
  readonly journaled?: Journaled;
}

/**
 * Looks on in the page after each picture that the browser paints, and tells what changed. `hide` and `order` are the
 * files whose work is looked for in the journal.
 */
export async function witness(
  page: Page,
  { hide, order }: { readonly hide: string; readonly order: string },
  hear: (what: Witnessed) => void,
): Promise<void> {
  await page.exposeFunction('tellWitness', hear);
  await page.evaluate(watchPage, [hide, order] as const);
}

/** Runs in the page: nothing from outside of it can be named here. */
function watchPage([hidePath, orderPath]: readonly [string, string]): void {
  const tell = (window as unknown as { tellWitness: (what: Witnessed) => void }).tellWitness;
  const see = (): Seen => {
    const status = document.querySelector('.saved');
    const marks = [...document.querySelectorAll<SVGElement>('[data-kind=flaw]')];
    const sets = document.querySelector<HTMLInputElement>('#sets-0');
    return {
      state:
        [...(status?.classList ?? [])].find((name) => name !== 'saved' || status?.classList.length === 1) ??
        '',
      ...(document.querySelector('.hide-outline') === null || marks.length === 0
        ? {}
        : { flaws: [...new Set(marks.map(({ dataset }) => dataset['id']!))].sort() }),
      ...(sets === null ? {} : { sets: Number(sets.value) }),
    };
  };
  let before = '';
  let told = '';
  const look = (): void => {
    const seen = see();
    const now = JSON.stringify(seen);
    if (now === before && now !== told) {
      told = now;
      tell({ seen });
    }
    before = now;
    // After the picture is painted: what is drawn with the next one can't be half there.
    requestAnimationFrame(() => setTimeout(look));
  };
  look();

  const opening = indexedDB.open('hidebound');
  opening.onsuccess = () => {
    let toldJournal = '';
    const read = (): void => {
      const asked = opening.result.transaction('changes').objectStore('changes').getAll();
      asked.onsuccess = () => {
        const flaws: string[] = [];
        let sets: number | undefined;
        for (const { path, file } of asked.result as {
          path: string;
          file?: {
            hide?: { flaws: { id: string }[] };
            order?: { articles: { sets: unknown }[] };
          };
        }[]) {
          if (path === hidePath) flaws.push(...(file?.hide?.flaws ?? []).map(({ id }) => id));
          const found = file?.order?.articles[0]?.sets;
          if (path === orderPath && typeof found === 'number') sets = Math.max(sets ?? 0, found);
        }
        const journaled: Journaled = { flaws: [...new Set(flaws)].sort(), sets };
        const now = JSON.stringify(journaled);
        if (now !== toldJournal) {
          toldJournal = now;
          tell({ journaled });
        }
        setTimeout(read, 5);
      };
    };
    read();
  };
}
