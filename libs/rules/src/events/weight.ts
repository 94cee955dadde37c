import { throwEvent } from './event-rules.js';

export const weight = throwEvent({ code: 'weight', plausible: { minCm: 200, maxCm: 3200 } });
