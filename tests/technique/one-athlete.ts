import type { Series } from '../../libs/technique/src/series.js';

/** Invented: one athlete, six competitions with one implement. */
const CARDS: readonly (readonly [day: number, card: string])[] = [
  [0, '31.20 X 32.05 30.88 X 31.94'],
  [14, '32.40 31.76 X 33.02 32.11 X'],
  [35, 'X 32.90 33.45 31.98 33.10 32.77'],
  [56, '33.80 X 32.95 34.02 X 33.41'],
  [70, '33.15 34.20 X 33.66 34.51 X'],
  [84, '34.05 33.48 34.62 X 35.10 34.20'],
];

export const ONE_ATHLETE: readonly Series[] = CARDS.map(([day, card], at) => ({
  id: `C${at + 1}`,
  day,
  implement: 'discus-1000',
  trials: card.split(' ').map((cell, round) => ({
    round: round + 1,
    markCm: cell === 'X' ? null : Math.round(Number(cell) * 100),
  })),
}));
