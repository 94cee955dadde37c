import fc from 'fast-check';
import { cutsOf, editionsOf, type Card, type CardCompetitor, type Plan, type Trial } from '#rules';

/** Marks so close together that ties are common; of an event that is measured in centimetres or in whole inches. */
const MEASURES = [
  { rules: 'WA', unit: 'cm', step: 1 },
  { rules: 'NFHS', unit: 'qin', step: 4 },
] as const;

const LEAST = 1000;
const SPREAD = 4;

function trialIn(step: number): fc.Arbitrary<Trial> {
  const none = (outcome: Trial['outcome']): Trial => ({ outcome, mark: null, wind: null });
  const mark = fc
    .nat({ max: SPREAD })
    .map((steps): Trial => ({ outcome: 'valid', mark: LEAST + steps * step, wind: null }));
  return fc.oneof(
    { weight: 12, arbitrary: mark },
    { weight: 3, arbitrary: fc.constant(none('foul')) },
    { weight: 1, arbitrary: fc.constant(none('pass')) },
    { weight: 1, arbitrary: fc.constant(none('unmeasured')) },
    { weight: 1, arbitrary: fc.constant(none('retired')) },
  );
}

const plan: fc.Arbitrary<Plan> = fc.integer({ min: 2, max: 5 }).chain((rounds) => {
  const before = fc.subarray(Array.from({ length: rounds - 1 }, (_, at) => at + 1));
  const through = fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 4, maxLength: 4 });
  return fc.record({
    rounds: fc.constant(rounds),
    cuts: fc.tuple(before, through).map(([after, sizes]) => {
      const falling = sizes.toSorted((a, b) => b - a);
      return after.map((round, at) => ({ after: round, through: falling[at]! }));
    }),
    cutTies: fc.constantFrom('next-best', 'mark'),
    reorderAfter: before,
    reorder: fc.constantFrom('reverse', 'leaders-first'),
  });
});

/** Who starts and how: mostly plain competitors. */
const standing = fc.oneof(
  { weight: 16, arbitrary: fc.constant({ status: null, guest: false }) },
  { weight: 1, arbitrary: fc.constant({ status: 'DQ' as const, guest: false }) },
  { weight: 1, arbitrary: fc.constant({ status: 'DNS' as const, guest: false }) },
  { weight: 1, arbitrary: fc.constant({ status: null, guest: true }) },
);

/** A card at any moment of a competition; nobody has a trial that could not be. */
export const anyCard: fc.Arbitrary<Card> = fc
  .tuple(fc.constantFrom(...MEASURES), plan, fc.option(fc.nat({ max: 3 }), { freq: 3 }), fc.nat({ max: 5 }))
  .chain(([{ rules, unit, step }, chosen, fill, progress]) => {
    const competitor = fc
      .tuple(standing, fc.array(trialIn(step), { minLength: progress, maxLength: progress + 1 }))
      .map(([one, trials]) => ({ ...one, series: trials.slice(0, chosen.rounds) }));
    return fc.array(competitor, { minLength: 1, maxLength: 7 }).map((field): Card => {
      const competitors = field.map((one, at): CardCompetitor => {
        return { bib: String(at + 1), name: null, club: null, flight: null, ...one };
      });
      return possible({
        rules,
        edition: editionsOf(rules).at(-1)!,
        event: 'discus',
        indoor: false,
        stage: fill === null ? 'final' : 'qualification',
        qualifying: fill === null ? null : { standard: LEAST + (SPREAD - 1) * step, fill },
        plan: chosen,
        unit,
        competitors,
        admitted: [],
      });
    });
  });

/** The card without the trials that could not be: after retiring, after the standard, after a cut. */
function possible(card: Card): Card {
  const whole = { ...card, competitors: card.competitors.map((one) => ownEnd(card, one)) };
  return card.plan.cuts.reduce((before, _, at) => {
    const cut = cutsOf(before)[at]!;
    const cutOff = (one: CardCompetitor): CardCompetitor =>
      cut.through.includes(one.bib) ? one : { ...one, series: one.series.slice(0, cut.after) };
    return { ...before, competitors: before.competitors.map(cutOff) };
  }, whole);
}

function ownEnd(card: Card, one: CardCompetitor): CardCompetitor {
  if (one.status === 'DNS') return { ...one, series: [] };
  const standard = card.qualifying?.standard ?? Infinity;
  const last = one.series.findIndex(
    (trial) => trial?.outcome === 'retired' || (trial?.mark ?? 0) >= standard,
  );
  return last < 0 ? one : { ...one, series: one.series.slice(0, last + 1) };
}
