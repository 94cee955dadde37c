import type { Fraction } from '../quantities/fraction.js';
import { rankClubs, type ClubTies, type RankedClub } from './club-table.js';
import { placesOf, SCORING_PRESETS, type ScoringPresetCode } from './presets.js';
import type { Scoring } from './scoring.js';
import { scoreRows, type PlacedRow, type ScoredRow } from './shared-points.js';

/** A part of a match with a club table of its own; `null` or an empty list: any. */
export interface Division {
  readonly name: string;
  readonly sex: 'W' | 'M' | 'X' | null;
  /** Age categories as the events name them, such as `U18`. */
  readonly ages: readonly string[];
}

/** The points of each place, as the meet sets them itself. */
export interface OwnPlaces {
  readonly individual: readonly Fraction[];
  readonly relay: readonly Fraction[];
}

/** How a match of clubs over many events is scored. */
export interface MatchScoring {
  readonly places: ScoringPresetCode | OwnPlaces;
  /** How many teams the match has; `null`: the clubs for which somebody competes, in whatever event. */
  readonly teams: number | null;
  /** At most so many of a club score in one individual event; `null`: all. */
  readonly scorersPerClub: number | null;
  /** At most so many relay teams of a club score in one event; `null`: all. */
  readonly relaysPerClub: number | null;
  readonly nonScorers: Scoring['nonScorers'];
  readonly ties: ClubTies;
  /** Empty: there is only the table of all events. */
  readonly divisions: readonly Division[];
}

/** One event of a match: who was placed where. */
export interface MatchEvent {
  readonly isRelay: boolean;
  readonly sex: Division['sex'];
  readonly age: string | null;
  /** Best first, equals in the order of competition; guests and the unattached have no club. */
  readonly rows: readonly PlacedRow[];
}

export interface MatchResult {
  /** Teams that the points go by. */
  readonly teams: number;
  /** Each event with the points of its rows, in the order given. */
  readonly events: readonly (readonly ScoredRow[])[];
  readonly divisions: readonly { readonly division: Division; readonly clubs: readonly RankedClub[] }[];
  /**
   * The combined trophy: every event of some division, each once however many divisions it belongs to. Without
   * divisions, every event.
   */
  readonly combined: readonly RankedClub[];
}

/** The clubs of a match. The order of the events changes nothing but the order of `events`. */
export function scoreMatch(events: readonly MatchEvent[], scoring: MatchScoring): MatchResult {
  const teams = scoring.teams ?? teamsIn(events);
  const individual = scoringOf(scoring, 'individual', teams);
  const relay = scoringOf(scoring, 'relay', teams);
  const scored = events.map(({ isRelay, rows }) => scoreRows(rows, isRelay ? relay : individual));
  const tableOf = (belongs: (event: MatchEvent) => boolean): RankedClub[] =>
    rankClubs(
      scored.filter((_, index) => belongs(events[index]!)),
      scoring.ties,
    );
  const { divisions } = scoring;
  return {
    teams,
    events: scored,
    divisions: divisions.map((division) => ({
      division,
      clubs: tableOf((event) => belongsTo(event, division)),
    })),
    combined: tableOf(
      (event) => divisions.length === 0 || divisions.some((division) => belongsTo(event, division)),
    ),
  };
}

export function belongsTo({ sex, age }: Pick<MatchEvent, 'sex' | 'age'>, division: Division): boolean {
  const isOfSex = division.sex === null || division.sex === sex;
  return isOfSex && (division.ages.length === 0 || (age !== null && division.ages.includes(age)));
}

function teamsIn(events: readonly MatchEvent[]): number {
  const clubs = events.flatMap(({ rows }) => rows.map(({ club }) => club));
  return new Set(clubs.filter((club) => club !== null)).size;
}

function scoringOf(scoring: MatchScoring, kind: 'individual' | 'relay', teams: number): Scoring {
  const { places, scorersPerClub, relaysPerClub, nonScorers } = scoring;
  return {
    places: typeof places === 'string' ? placesOf(SCORING_PRESETS[places][kind], teams) : places[kind],
    scorersPerClub: kind === 'relay' ? relaysPerClub : scorersPerClub,
    nonScorers,
  };
}
