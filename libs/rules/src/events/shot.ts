import { throwEvent } from './event-rules.js';

export const shot = throwEvent({ code: 'shot', plausible: { minCm: 100, maxCm: 2700 } });
