import { chanceOfStandard, type Vocabulary } from '#technique';
import { flat, type Grounds } from './findings/answers.js';
import { byImplement, idsOf, plainSeries } from './findings/series-of.js';
import { dayOf, type KnownThrow } from './findings/task.js';

export interface OutlookQuestion {
  readonly standardCm: number;
  readonly on: string;
  readonly trials: number;
}

export interface Outlook extends Grounds {
  readonly chance: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number | null;
  readonly noMark: number | null;
  readonly expectedBestCm: number | null;
  readonly followsTrend: boolean;
}

/** How likely the best of one competition is to reach a mark, from competitions with one implement and variant. */
export function outlookOf(
  throws: readonly KnownThrow[],
  vocabulary: Vocabulary,
  { standardCm, on, trials }: OutlookQuestion,
): Outlook {
  const [main] = byImplement(throws.filter(({ thrownIn }) => thrownIn === 'competition'));
  const used = main?.throws ?? [];
  const answer = chanceOfStandard(plainSeries(used, { vocabulary }, 'fouls'), {
    ...{ standardCm, trials, day: dayOf(on) },
  });
  const none = { chance: null, low: null, high: null, level: null, noMark: null, expectedBestCm: null };
  return flat(answer, idsOf(used), { ...none, followsTrend: false }, (found) => ({
    ...{ chance: found.chance, low: found.low, high: found.high, level: found.level, noMark: found.noMark },
    ...{ expectedBestCm: found.expectedBestCm, followsTrend: found.followsTrend },
  }));
}
