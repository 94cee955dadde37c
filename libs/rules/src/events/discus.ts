import { throwEvent } from './event-rules.js';

export const discus = throwEvent({
  code: 'discus',
  plausible: { minCm: 300, maxCm: 8000 },
  listedIn: 'inch',
});
