import { horizontalJump } from './event-rules.js';

export const longJump = horizontalJump({ code: 'long-jump', plausible: { minCm: 50, maxCm: 920 } });
