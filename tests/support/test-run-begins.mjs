export { begin as default } from './test-run.mjs';
