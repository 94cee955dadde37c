import type { CompetitorRow, NewCompetition, VerticalTerms } from '#persistence';
import { formatPoints, type CompetitionContent, type Scoring } from '#rules';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';

/** The competition that a sheet describes, before its first entry. */
export function competitionOf(
  content: CompetitionContent,
  place: Pick<NewCompetition, 'organisationId' | 'id' | 'meetId' | 'title'>,
): NewCompetition {
  const { card, information } = content;
  const { category, implementGrams, scoring, plan } = information;
  return {
    ...place,
    event: card.event,
    rules: card.rules,
    edition: card.edition,
    indoor: card.indoor,
    stage: card.stage,
    qualifying: card.qualifying,
    plan,
    vertical: content.kind === 'vertical' ? termsOf(content.card.heights) : null,
    unit: card.unit,
    categorySex: category.sex ?? null,
    categoryAge: category.age ?? null,
    implementGrams,
    scoring: scoring && scoringRow(scoring),
    startsAt: null,
  };
}

/** A sheet says nothing of the terms: those under which every sheet can have come about. */
function termsOf(heights: readonly number[]): VerticalTerms {
  return { heights, combined: false, passGivesUp: 'height', tieForFirst: 'jump-off' };
}

function scoringRow({ places, scorersPerClub, nonScorers }: Scoring): NonNullable<NewCompetition['scoring']> {
  return { places: places.map(formatPoints), scorersPerClub, nonScorers };
}

/** The start list of a sheet: names as they were written, to be matched with athletes later. */
export function competitorsOf(
  { card, information }: CompetitionContent,
  { organisationId, id: competitionId }: Pick<NewCompetition, 'organisationId' | 'id'>,
): CompetitorRow[] {
  return card.competitors.map(({ bib, name, club, flight, guest }, index) => ({
    organisationId,
    id: uuidV7(),
    competitionId,
    athleteId: null,
    listedName: name === '' ? null : name,
    listedClub: club,
    clubId: null,
    bib,
    position: index + 1,
    flight,
    guest,
    implementGrams: information.competitors[index]?.implementGrams ?? null,
    seedMark: null,
    isUnmatched: false,
    written: information.competitors[index]?.written ?? null,
  }));
}
