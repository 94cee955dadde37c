import {
  ATHLETE_FORMAT,
  CLUB_FORMAT,
  type ClubMeet,
  type PublicAthlete,
  type PublicClub,
  type PublicCompetition,
} from '#scoreboard';
import { competitionHead, resultLine } from './heads.js';

/** A competition with those of its competitors who are meant. */
export interface Appearance {
  readonly competition: PublicCompetition;
  readonly competitors: ReadonlySet<string>;
}

export function clubSnapshot(id: string, name: string, appearances: readonly Appearance[]): PublicClub {
  return { format: CLUB_FORMAT, id, version: versionOf(appearances), name, meets: meetsOf(appearances) };
}

export function athleteSnapshot(id: string, name: string, appearances: readonly Appearance[]): PublicAthlete {
  return { format: ATHLETE_FORMAT, id, version: versionOf(appearances), name, meets: meetsOf(appearances) };
}

function versionOf(appearances: readonly Appearance[]): number {
  return appearances.reduce((sum, { competition }) => sum + competition.version, 0);
}

/** In the order in which the appearances come. */
function meetsOf(appearances: readonly Appearance[]): ClubMeet[] {
  const meets = new Map<string, ClubMeet & { competitions: ClubMeet['competitions'][number][] }>();
  for (const { competition, competitors } of appearances) {
    const lines = competition.rows.filter(({ competitor }) => competitors.has(competitor)).map(resultLine);
    const known = meets.get(competition.meet.id) ?? { meet: competition.meet, competitions: [] };
    known.competitions.push({ ...competitionHead(competition), lines });
    meets.set(competition.meet.id, known);
  }
  return [...meets.values()];
}
