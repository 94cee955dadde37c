import { horizontalJump } from './event-rules.js';

export const tripleJump = horizontalJump({ code: 'triple-jump', plausible: { minCm: 200, maxCm: 1900 } });
