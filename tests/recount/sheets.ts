/** Two level on the best mark, told apart by the second best; a foul, a pass and an athlete without a mark. */
export const TIE = {
  format: 'sectorline-sheet/1',
  rules: 'WA',
  event: 'discus',
  competitors: [
    {
      bib: '7',
      name: 'Ina Odewald',
      club: 'Northmoor AC',
      series: ['58.10', 'X', '57.02', '-', 'X', '55.00'],
    },
    {
      bib: '12',
      name: 'Zoë Brandt',
      club: 'Hollin Vale',
      series: ['57.44', '58.10', 'X', 'X', '56.20', '-'],
    },
    { bib: '3', name: 'Ruth Tamm', series: ['X', 'X', 'X'] },
  ],
};

/** As {@link TIE}, with a place on the card that was not counted so. */
export const WRONGLY_WRITTEN = {
  ...TIE,
  competitors: TIE.competitors.map((competitor, index) =>
    index === 0 ? { ...competitor, written: { place: 1, mark: '58.10' } } : competitor,
  ),
};

/** As {@link TIE}, with everything on the card as it was counted. */
export const RIGHTLY_WRITTEN = {
  ...TIE,
  competitors: TIE.competitors.map((competitor, index) =>
    index === 0 ? { ...competitor, written: { place: 2, mark: '58.10' } } : competitor,
  ),
};

/** A mark with one decimal. */
export const INVALID = {
  ...TIE,
  competitors: [{ bib: '7', series: ['58.1'] }],
};
