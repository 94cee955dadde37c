import { meetSeriesOf } from './meet-series.js';

describe('A meet through the years', () => {
  it.each([
    ['Heron Field Open', 'Heron Field Open'],
    ['Heron Field Open 2026', 'Heron Field Open'],
    ['2026 Heron Field Open', 'Heron Field Open'],
    ['Heron Field Open – 2025', 'Heron Field Open'],
    ['Heron Field 2026 Open', 'Heron Field Open'],
    ['The 10000 and 20265 Meet', 'The 10000 and 20265 Meet'],
    ['2026', '2026'],
  ])('%s is %s', (name, series) => {
    expect(meetSeriesOf(name)).toBe(series);
  });
});
