import { editionsOf, parseMark, parseVerticalCell, rankVertical, type VerticalCard } from '#rules';
import { absolute, type Measure } from './measure.js';
import { HEIGHTS, jumpedSeries } from './stored-meets.js';

const MOST_US = 200;

/** Ranking thirty high jumpers over twelve heights: the places and what decided them, a jump-off not needed. */
export function measureVertical(): Measure {
  const cards = Array.from({ length: 20 }, (_, seed) => cardOf(jumpedSeries(seed)));
  const times: number[] = [];
  for (let run = 0; run < 120; run += 1) {
    const from = performance.now();
    for (const card of cards) rankVertical(card);
    times.push(((performance.now() - from) * 1000) / cards.length);
  }
  return absolute('vertical', 'µs', times.slice(20), MOST_US);
}

function cardOf(series: Readonly<Record<string, string[]>>): VerticalCard {
  return {
    rules: 'WA',
    edition: editionsOf('WA').at(-1)!,
    event: 'high-jump',
    indoor: false,
    stage: 'final',
    qualifying: null,
    unit: 'cm',
    heights: HEIGHTS.map((height) => parseMark(height)!.value),
    competitors: Object.entries(series).map(([bib, cells]) => ({
      bib,
      name: null,
      club: null,
      flight: null,
      guest: false,
      status: null,
      series: cells.map((cell) => parseVerticalCell(cell)!),
    })),
    admitted: [],
    jumpOff: [],
  };
}
