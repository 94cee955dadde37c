export { end as default } from './test-run.mjs';
