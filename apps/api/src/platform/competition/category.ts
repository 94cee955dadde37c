import {
  categoryDefinitions as definitionStore,
  type CategoryDefinitionRow,
  type CompetitionRow,
  type MeetRow,
  type Reads,
} from '#persistence';
import type { CategoryDefinition, CompetitionCategory } from '#rules';

/** Age categories that the organisation lays down itself, as the rules take them: they go before the built-in ones. */
export async function ownDefinitions(at: Reads, organisationId: string): Promise<CategoryDefinition[]> {
  return (await definitionStore.ofOrganisation(at, organisationId)).map(asDefinition);
}

export function asDefinition(row: CategoryDefinitionRow): CategoryDefinition {
  const { scheme, rules, validFrom: from, validUntil: until, ageOn, bands, source } = row;
  return { scheme, rules, valid: { from, until }, ageOn, bands, cite: { rule: source, basis: 'read' } };
}

/** Who the competition is for, on its day. */
export function categoryOfCompetition(row: CompetitionRow, meet: MeetRow): CompetitionCategory {
  const { rules, categoryScheme: scheme, categorySex: sex, categoryAge: age } = row;
  return { rules, scheme, sex, age, onDate: competitionDay(row, meet) };
}

/** The day of the competition where it is held, `YYYY-MM-DD`; without a time the first day of the meet. */
export function competitionDay({ startsAt }: CompetitionRow, { startsOn, timeZone }: MeetRow): string {
  if (startsAt === null) return startsOn;
  const format = new Intl.DateTimeFormat('en', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const parts = new Map(format.formatToParts(new Date(startsAt)).map(({ type, value }) => [type, value]));
  return `${parts.get('year')!.padStart(4, '0')}-${parts.get('month')!}-${parts.get('day')!}`;
}
