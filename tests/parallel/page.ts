import { webWorkerHandle } from '@hidebound/geometry/parallel';
import { searchInTest } from './search-in-test.js';
import type { TestFinding, TestSearch } from './search-in-test.js';

/** What the page offers to the test that opened it. */
export interface TestPage {
  search(search: TestSearch): Promise<TestFinding>;
}

(globalThis as unknown as TestPage).search = (search) =>
  searchInTest(search, () =>
    webWorkerHandle(
      new Worker(search.isLost === true ? '/lost.js' : '/web-worker.js', { name: search.mischief }),
    ),
  );
