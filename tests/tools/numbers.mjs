// What the judge of printed numbers is made of, for its tests.
export { demoJob } from '../../bench/numbers/demo-job.mjs';
export { judgeCommand } from '../../bench/numbers/judge-command.mjs';
export { blindness } from '../../bench/numbers/judge-page.mjs';
export { PAGES } from '../../bench/numbers/pages.mjs';
