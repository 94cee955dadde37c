import { verticalJump } from './event-rules.js';

export const highJump = verticalJump({ code: 'high-jump', plausible: { minCm: 50, maxCm: 255 } });
