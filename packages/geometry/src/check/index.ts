export { checkAnswer } from './check-answer.js';
export { isProven } from './violation.js';
export type { FoundViolation } from './violation.js';
