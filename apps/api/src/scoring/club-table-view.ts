import type { EnteredResultRow, MeetScoringRow } from '#persistence';
import {
  clubTieWords,
  formatPoints,
  parsePlacePoints,
  SCORING_PRESETS,
  scoreMatch,
  type MatchScoring,
  type PointsTable as PresetTable,
  type RankedClub,
} from '#rules';
import type { CombinedScore } from '../combined/combined-scores.service.js';
import { combinedEventObject } from '../platform/objects/combined-event.type.js';
import { competitionObject } from '../platform/objects/competition.type.js';
import type { ClubStanding, ClubTable } from './club-table.types.js';
import { enteredEvent, enteredView } from './entered-view.js';
import type { MeetScoring, PointsTable } from './scoring.types.js';
import type { StandingEvent } from './standing-events.js';

/** What counts at one moment. */
export interface Scored {
  readonly scoring: MeetScoringRow;
  readonly events: readonly StandingEvent[];
  readonly combined: readonly CombinedScore[];
  readonly entered: readonly EnteredResultRow[];
}

/** The table of the clubs with where every point comes from. */
export function clubTableView({ scoring, events, combined, entered }: Scored): ClubTable {
  const match = scoreMatch(
    [...[...events, ...combined].map(({ event }) => event), ...entered.map(enteredEvent)],
    matchScoringOf(scoring),
  );
  const linesOf = (at: number) =>
    (match.events[at] ?? []).map((line) => ({ ...line, points: formatPoints(line.points) }));
  const open = events.filter(({ isProvisional }) => isProvisional);
  return {
    scoring: scoringView(scoring),
    teams: match.teams,
    isProvisional: open.length > 0 || combined.some(({ isProvisional }) => isProvisional),
    openCompetitions: open.map(({ row }) => competitionObject(row)),
    divisions: match.divisions.map(({ division, clubs }) => ({
      name: division.name,
      clubs: clubs.map(clubView),
    })),
    combined: match.combined.map(clubView),
    competitions: events.map(({ row, isProvisional }, at) => ({
      competition: competitionObject(row),
      isProvisional,
      lines: linesOf(at),
    })),
    combinedEvents: combined.map(({ row, isProvisional }, at) => ({
      combinedEvent: combinedEventObject(row),
      isProvisional,
      lines: linesOf(events.length + at),
    })),
    enteredResults: entered.map((row, at) => ({
      result: enteredView(row),
      lines: linesOf(events.length + combined.length + at),
    })),
  };
}

function clubView({ place, club, points, tie }: RankedClub): ClubStanding {
  return { place, club, points, reason: tie && clubTieWords(tie) };
}

function matchScoringOf(row: MeetScoringRow): MatchScoring {
  const { teams, scorersPerClub, relaysPerClub, nonScorers, clubTies: ties, divisions } = row;
  return { places: placesIn(row), teams, scorersPerClub, relaysPerClub, nonScorers, ties, divisions };
}

function placesIn({ preset, places }: MeetScoringRow): MatchScoring['places'] {
  if (preset !== null) return preset;
  const read = (texts: readonly string[] = []) => texts.map((text) => parsePlacePoints(text)!);
  return { individual: read(places?.individual), relay: read(places?.relay) };
}

export function scoringView(row: MeetScoringRow): MeetScoring {
  return {
    revision: row.revision,
    preset: row.preset,
    individual: pointsView(row, 'individual'),
    relay: pointsView(row, 'relay'),
    teams: row.teams,
    scorersPerClub: row.scorersPerClub,
    relaysPerClub: row.relaysPerClub,
    nonScorers: row.nonScorers,
    clubTies: row.clubTies,
    divisions: row.divisions,
  };
}

function pointsView({ preset, places }: MeetScoringRow, kind: 'individual' | 'relay'): PointsTable {
  if (preset === null) {
    return { places: places?.[kind] ?? [], source: null, isConfirmed: true, note: null };
  }
  const { points, cite }: PresetTable = SCORING_PRESETS[preset][kind];
  return {
    places: points === 'one per team' ? null : points.map(String),
    source: cite.rule,
    isConfirmed: cite.basis === 'read',
    note: cite.note ?? null,
  };
}
