import type { VerticalCard, VerticalCompetitor, VerticalTrial } from '../vertical/vertical-card.js';
import type { JumpJudgement, VerticalBody } from './entry.js';
import { TRIALS_AT_A_HEIGHT } from './rows.js';

/**
 * The entries that an official would have made for a card, in the order in which things happened: who did not start,
 * then height by height the bar and the trials in turn, each disqualification when the series ends, the jump-off, the
 * admissions. `keyOf` names a competitor as the journal does. Folding them, with the heights of the card announced,
 * gives the card again.
 */
export function entriesOfVerticalCard(card: VerticalCard, keyOf: (bib: string) => string): VerticalBody[] {
  const last = (competitor: VerticalCompetitor): Last => lastOf(card, competitor);
  const disqualifiedAt = (when: Last): VerticalBody[] =>
    card.competitors
      .filter((one) => one.status === 'DQ' && last(one).in === when.in && last(one).index === when.index)
      .map(({ bib }) => disqualification(keyOf(bib)));
  const notStarted = card.competitors.filter(({ status }) => status === 'DNS');
  return [
    ...notStarted.map(({ bib }): VerticalBody => ({ kind: 'start', competitor: keyOf(bib), status: 'DNS' })),
    ...disqualifiedAt({ in: 'heights', index: -1 }),
    ...card.heights.flatMap((height, index) => [
      ...jumpsAt(card, height, index, keyOf),
      ...disqualifiedAt({ in: 'heights', index }),
    ]),
    ...card.jumpOff.flatMap(({ height, tries }, index) => [
      ...tries.map(
        ({ bib, trial }): VerticalBody => ({
          kind: 'jump-off',
          competitor: keyOf(bib),
          height,
          trial: index + 1,
          ...judged(trial),
        }),
      ),
      ...disqualifiedAt({ in: 'jump-off', index }),
    ]),
    ...card.admitted.map(
      ({ bib, after, by }): VerticalBody => ({
        kind: 'admission',
        competitor: keyOf(bib),
        after,
        admittedBy: by,
        reason: 'Admitted on the card.',
      }),
    ),
  ];
}

/** Where the last trial of a competitor stands. */
interface Last {
  readonly in: 'heights' | 'jump-off';
  readonly index: number;
}

function lastOf({ jumpOff }: VerticalCard, { bib, series }: VerticalCompetitor): Last {
  const round = jumpOff.findLastIndex(({ tries }) => tries.some((one) => one.bib === bib));
  if (round >= 0) return { in: 'jump-off', index: round };
  return { in: 'heights', index: series.findLastIndex((trials) => trials !== null) };
}

function jumpsAt(
  { competitors }: VerticalCard,
  height: number,
  index: number,
  keyOf: (bib: string) => string,
): VerticalBody[] {
  if (!competitors.some(({ series }) => series[index])) return [];
  const entries: VerticalBody[] = [{ kind: 'bar', height, leavesOut: [] }];
  for (let trial = 1; trial <= TRIALS_AT_A_HEIGHT; trial++) {
    for (const { bib, series } of competitors) {
      const outcome = series[index]?.[trial - 1];
      if (outcome) entries.push({ kind: 'jump', competitor: keyOf(bib), height, trial, ...judged(outcome) });
    }
  }
  return entries;
}

function judged(outcome: VerticalTrial): JumpJudgement {
  return { outcome, foul: null, incident: null, protested: false };
}

function disqualification(competitor: string): VerticalBody {
  return {
    kind: 'disqualification',
    competitor,
    rule: 'as the card says',
    reason: 'Disqualified on the card.',
  };
}
