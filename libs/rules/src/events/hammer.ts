import { throwEvent } from './event-rules.js';

export const hammer = throwEvent({
  code: 'hammer',
  plausible: { minCm: 300, maxCm: 9000 },
  listedIn: 'inch',
});
