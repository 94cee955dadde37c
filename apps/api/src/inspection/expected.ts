import type { CompetitionRow, ImplementRow, MeetRow } from '#persistence';
import { expectedImplement, registeredImplement, type ExpectedImplement, type Implement } from '#rules';
import type { RosterLine } from '../platform/roster/roster.js';

/** An implement that is thrown in a competition, and by whom. */
export interface Expected extends ExpectedImplement {
  /** In the order of competition. */
  readonly lines: readonly RosterLine[];
}

type Terms = Pick<CompetitionRow, 'rules' | 'event' | 'categorySex' | 'categoryAge' | 'implementGrams'>;

/**
 * What is thrown in a competition on the day of the meet: one implement for each mass, the competition's own first,
 * also while nobody is entered. Nothing where nobody says what is thrown.
 */
export function expectedIn(
  competition: Terms,
  roster: readonly RosterLine[],
  meet: Pick<MeetRow, 'startsOn'>,
): Expected[] {
  const { rules, event, categorySex: sex, categoryAge: age } = competition;
  const masses = new Set([
    competition.implementGrams,
    ...roster.map(({ competitor }) => competitor.implementGrams ?? competition.implementGrams),
  ]);
  return [...masses].flatMap((grams) => {
    const expected = expectedImplement({ rules, event, sex, age, onDate: meet.startsOn, grams });
    if (!expected) return [];
    const lines = roster.filter(
      ({ competitor }) => (competitor.implementGrams ?? competition.implementGrams) === grams,
    );
    return [{ ...expected, lines }];
  });
}

/** What an implement is held against when nobody says for which competition: what it is registered as. */
export function asRegistered(implement: ImplementRow, { rules, startsOn }: MeetRow): Implement {
  return registeredImplement(rules, implement.event, implement.grams, startsOn);
}

/** The same for one competition; `null`: an implement of that mass is not thrown in it. */
export function forCompetition(
  implement: ImplementRow,
  expected: readonly Expected[],
  { rules }: Terms,
  meet: MeetRow,
): Implement | null {
  if (expected.length === 0) return asRegistered(implement, { ...meet, rules });
  return expected.find((one) => one.implement.grams === implement.grams)?.implement ?? null;
}
