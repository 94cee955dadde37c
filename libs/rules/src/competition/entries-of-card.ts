import type { Card, CardCompetitor } from '../card.js';
import { orderOf } from '../progression/order.js';
import type { Trial } from '../trial.js';
import type { EntryBody } from './entry.js';

/**
 * The entries that an official would have made for a card, in the order in which things happened: who did not start,
 * then round by round the trials as called, each disqualification when the series ends, each admission at its cut.
 * `keyOf` names a competitor as the journal does. Folding them gives the card again.
 */
export function entriesOfCard(card: Card, keyOf: (bib: string) => string): EntryBody[] {
  const entries: EntryBody[] = [];
  for (const { bib, status } of card.competitors) {
    if (status === 'DNS') entries.push({ kind: 'start', competitor: keyOf(bib), status: 'DNS' });
  }
  entries.push(...disqualificationsAfter(card, 0, keyOf));
  const order = orderOf(card);
  for (let round = 1; round <= card.plan.rounds; round++) {
    for (const competitor of calledIn(card, round, order[String(round)] ?? [])) {
      const trial = competitor.series[round - 1];
      if (trial)
        entries.push({ kind: 'attempt', competitor: keyOf(competitor.bib), round, ...judged(trial) });
    }
    entries.push(...disqualificationsAfter(card, round, keyOf), ...admissionsAfter(card, round, keyOf));
  }
  entries.push(...admissionsAfter(card, null, keyOf));
  return entries;
}

function calledIn(card: Card, round: number, order: readonly string[]): CardCompetitor[] {
  const place = new Map(order.map((bib, at) => [bib, at]));
  return card.competitors
    .filter((competitor) => competitor.series[round - 1])
    .sort(
      (a, b) => (place.get(a.bib) ?? card.competitors.length) - (place.get(b.bib) ?? card.competitors.length),
    );
}

function judged({
  outcome,
  mark,
  wind,
}: Trial): Omit<Extract<EntryBody, { kind: 'attempt' }>, 'kind' | 'competitor' | 'round'> {
  return { outcome, mark, wind, foul: null, protested: null, implementGrams: null };
}

/** A disqualification is entered when the series ends, so that it decides the cuts as the card says. */
function disqualificationsAfter(card: Card, round: number, keyOf: (bib: string) => string): EntryBody[] {
  return card.competitors
    .filter(({ status, series }) => status === 'DQ' && lastRound(series) === round)
    .map(({ bib }) => ({
      kind: 'disqualification',
      competitor: keyOf(bib),
      rule: 'as the card says',
      reason: 'Disqualified on the card.',
    }));
}

function lastRound(series: CardCompetitor['series']): number {
  let last = series.length;
  while (last > 0 && !series[last - 1]) last--;
  return last;
}

function admissionsAfter(card: Card, after: number | null, keyOf: (bib: string) => string): EntryBody[] {
  return card.admitted
    .filter((admission) => admission.after === after)
    .map(({ bib, by }) => ({
      kind: 'admission',
      competitor: keyOf(bib),
      after,
      admittedBy: by,
      reason: 'Admitted on the card.',
    }));
}
