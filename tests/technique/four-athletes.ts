/**
 * Invented data: four athletes (the letter), three competitions each (the number), six trials; `X` is a foul, `*` a
 * throw with the point noted. Made with an effect of −3 %, the point commoner in the weaker athletes.
 */
const CARDS: Readonly<Record<string, string>> = {
  A1: '36.42* X* 35.30 35.08* X X*',
  A2: '36.96 39.58 37.34 X 35.72* 41.08',
  A3: '39.66 36.85 39.09 X* 38.05 X',
  B1: '27.61* 32.07 29.78* X* 30.58 29.78',
  B2: '28.08 X* X* 30.71 31.44* 29.05*',
  B3: '31.20* X* 31.72 29.85 X* 31.97',
  C1: 'X 45.14 44.99 X 45.97 43.38',
  C2: '42.50 44.24 45.27 45.55 46.29 X',
  C3: '45.44 42.71 43.23 41.89 45.44 44.04',
  D1: '25.68 25.89* X* X* 26.33* X*',
  D2: '25.98* 25.71* X* 24.80* X* 25.47*',
  D3: '24.42* 25.16* 24.40* 25.15* 23.76* X*',
};

export interface CardRow {
  readonly athlete: string;
  readonly competition: string;
  readonly round: number;
  readonly noted: 0 | 1;
  readonly markCm: number | null;
}

export const CARD_ROWS: readonly CardRow[] = Object.entries(CARDS).flatMap(([competition, card]) =>
  card.split(' ').map((cell, at): CardRow => {
    const mark = cell.replace('*', '');
    return {
      athlete: competition.charAt(0),
      competition,
      round: at + 1,
      noted: cell.endsWith('*') ? 1 : 0,
      markCm: mark === 'X' ? null : Math.round(Number(mark) * 100),
    };
  }),
);
