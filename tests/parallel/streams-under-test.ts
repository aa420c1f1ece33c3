/** The one place that says which streams the tests of this folder run. */
export { createToyStream as createStream } from '../../packages/geometry/src/parallel/test-toy-stream.js';
export { toyProblem as problemUnderTest } from '../../packages/geometry/src/parallel/test-toy-stream.js';
