import { throwEvent } from './event-rules.js';

export const javelin = throwEvent({
  code: 'javelin',
  plausible: { minCm: 300, maxCm: 10500 },
  listedIn: 'inch',
});
