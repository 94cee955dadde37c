import type {
  AgeBand,
  AgeDay,
  AgeFactor,
  AnyEntryKind,
  Authority,
  CompetitionSetup,
  EntryBody,
  EventCode,
  Measuring,
  PlanOverrides,
  RatificationProblemCode,
  Recheck,
  RuleSetCode,
  Stage,
  Verdict,
  VerticalBody,
  VerticalSetup,
} from '#rules';

export type { OfficialResultRow } from './official-rows.js';
export type { Authority, EventCode, PlanOverrides, RuleSetCode, Stage };
export type { EnteredLine, EnteredResultRow, MeetScoringRow } from './scoring-rows.js';

/*
 * What the tables hold, as plain values. Dates are `YYYY-MM-DD`; instants (`…At`) are RFC 3339 in UTC with
 * milliseconds; marks are whole units of the competition; ids are UUIDs in lower case.
 */

export type Unit = CompetitionSetup['unit'];
export type Sex = 'W' | 'M' | 'X';
/** How much of a name the public sees. */
export type NameDisplay = 'full' | 'initials' | 'bib';
export type CompetitionStatus = 'draft' | 'open' | 'official';

/** What an entry says, in the journal of whatever event. */
export type JournalBody = EntryBody | VerticalBody;
export type JournalKind = AnyEntryKind;

/** A refused entry is answered and not stored. */
export type StoredVerdict = Exclude<Verdict, { readonly standing: 'refused' }>;

export interface OrganisationRow {
  readonly id: string;
  readonly name: string;
}

export interface ClubRow {
  readonly organisationId: string;
  readonly id: string;
  readonly name: string;
}

export type Handedness = 'left' | 'right';

export interface AthleteRow {
  readonly organisationId: string;
  readonly id: string;
  readonly givenName: string;
  readonly familyName: string;
  readonly sex: Sex;
  readonly birthDate: string | null;
  readonly clubId: string | null;
  /** `null`: as the meet decides. */
  readonly display: NameDisplay | null;
  /** With which hand the athlete throws, or from which foot he jumps; `null`: nobody said. */
  readonly handedness: Handedness | null;
  /** Since when the names are a pseudonym; `null`: they are the athlete's. */
  readonly erasedAt: string | null;
}

export interface MeetRow {
  readonly organisationId: string;
  readonly id: string;
  readonly name: string;
  readonly venue: string;
  readonly startsOn: string;
  readonly endsOn: string;
  readonly timeZone: string;
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly minorsDisplay: NameDisplay;
  /** Signing off and reopening need a second person. */
  readonly needsSecondPerson: boolean;
  /** `null`: not public yet. */
  readonly publishedAt: string | null;
}

/** Standard in units of the competition; how many are filled up when too few reach it. */
export interface Qualifying {
  readonly standard: number;
  readonly fill: number;
}

/** The announced heights of a high jump or pole vault, in units of the competition, and the terms it is held on. */
export type VerticalTerms = Pick<VerticalSetup, 'heights' | 'combined' | 'passGivesUp' | 'tieForFirst'>;

export interface Scoring {
  /** Points per place as decimal strings or numbers, as the sheet gave them. */
  readonly places: readonly (number | string)[];
  readonly scorersPerClub?: number | null;
  readonly nonScorers?: 'out' | 'hold';
}

/** A mark from before, or from elsewhere, with which lists begin; it counts unless another row replaces it. */
export interface StartingMarkRow {
  readonly organisationId: string;
  readonly id: string;
  /** In whose lists it stands: at least one of the three. */
  readonly clubId: string | null;
  readonly meetId: string | null;
  readonly athleteId: string | null;
  readonly event: EventCode;
  readonly unit: Unit;
  readonly mark: number;
  /** As it is written: `+1.3` or `NWI`; only outdoors in horizontal jumps. */
  readonly wind: string | null;
  readonly indoor: boolean;
  /** Exactly where something is thrown. */
  readonly implementGrams: number | null;
  readonly sex: Sex;
  readonly age: string;
  readonly onDate: string;
  /** Where it was made. */
  readonly place: string | null;
  /** False: what it replaces is taken back. */
  readonly counts: boolean;
  readonly replacesId: string | null;
  /** Why it replaces another one, and only then. */
  readonly reason: string | null;
  /** Of the table that it came in, with its line; both or neither. */
  readonly importId: string | null;
  readonly importLine: number | null;
  readonly enteredBy: string;
  readonly enteredAt: string;
}

/** What a referee decided about a mark as a record, and on what: it holds while the mark is still the same. */
export interface RecordDecisionRow {
  readonly organisationId: string;
  readonly id: string;
  readonly competitionId: string;
  readonly attemptId: string;
  readonly competitorId: string;
  readonly kind: 'club record' | 'meet record';
  /** From 1 for each mark and kind; the greatest holds. */
  readonly revision: number;
  /** `withdrawn`: as if nothing had been decided. */
  readonly decision: 'ratified' | 'refused' | 'withdrawn';
  readonly mark: number;
  /** `+1.3`, `NWI` or `pending`. */
  readonly wind: string | null;
  readonly implementGrams: number | null;
  readonly recheck: Recheck | null;
  readonly measuring: Measuring | null;
  /** What spoke against it and was known. */
  readonly despite: readonly RatificationProblemCode[];
  readonly reason: string;
  readonly authority: Authority;
  readonly decidedBy: string;
  readonly decidedAt: string;
}

export interface CompetitionRow {
  readonly organisationId: string;
  readonly id: string;
  readonly meetId: string;
  readonly title: string;
  readonly event: EventCode;
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly indoor: boolean;
  readonly stage: Stage;
  readonly qualifying: Qualifying | null;
  /** Empty for a high jump or pole vault. */
  readonly plan: PlanOverrides;
  /** Exactly for a high jump or pole vault. */
  readonly vertical: VerticalTerms | null;
  readonly unit: Unit;
  readonly categorySex: Sex | null;
  readonly categoryAge: string | null;
  /** By which scheme `categoryAge` is meant; `null`: by the rule set's own. */
  readonly categoryScheme: string | null;
  readonly implementGrams: number | null;
  readonly scoring: Scoring | null;
  readonly status: CompetitionStatus;
  /** Rises with every change that a reader could see, never falls. */
  readonly version: number;
  /** The number of entries in the journal. */
  readonly lastSequence: number;
  readonly startsAt: string | null;
  /** `null`: it is called by itself. */
  readonly callingGroupId: string | null;
  /** Place among the competitions of the calling group, from 1; exactly with a group. */
  readonly callingPosition: number | null;
  /** Results are kept back from all who do not work at it: until a moment, or (`null`) until they are let go. */
  readonly isWithheld: boolean;
  readonly withheldUntil: string | null;
}

/** Age categories that an organisation lays down itself, for some days. */
export interface CategoryDefinitionRow {
  readonly organisationId: string;
  readonly id: string;
  readonly scheme: string;
  /** Under whose rules it counts without being named; `null`: it is named. */
  readonly rules: RuleSetCode | null;
  readonly validFrom: string | null;
  readonly validUntil: string | null;
  readonly ageOn: AgeDay;
  readonly bands: readonly AgeBand[];
  readonly source: string;
  readonly definedBy: string;
  readonly definedAt: string;
}

/** Age factors of a meet for one event; the newest revision counts. */
export interface AgeFactorsRow {
  readonly organisationId: string;
  readonly meetId: string;
  readonly event: EventCode;
  /** From 1; a new one for each change. */
  readonly revision: number;
  readonly source: string;
  readonly factors: readonly AgeFactor[];
  readonly setBy: string;
  readonly setAt: string;
}

/** Who is called in one order at one circle or runway; the competitions in it name it. */
export interface CallingGroupRow {
  readonly organisationId: string;
  readonly id: string;
  readonly meetId: string;
  readonly title: string;
  /** The circle, runway or pit, as the meet calls it. */
  readonly facility: string | null;
  readonly startsAt: string | null;
  readonly warmUpMinutes: number | null;
  /** Competitors of all its competitions in one order; `null`: one competition after the other. */
  readonly startOrder: readonly string[] | null;
  /** Rises with every change of the group itself, and by the versions of the competitions that leave it. */
  readonly version: number;
}

/** An absent key says nothing; `null` says that there is no place, or no mark. */
export interface WrittenResult {
  readonly place?: number | null;
  readonly mark?: string | null;
}

export interface CompetitorRow {
  readonly organisationId: string;
  readonly id: string;
  readonly competitionId: string;
  readonly athleteId: string | null;
  /** Only without an athlete. */
  readonly listedName: string | null;
  /** Only without a club. */
  readonly listedClub: string | null;
  readonly clubId: string | null;
  readonly bib: string;
  /** Place in the original order, from 1. */
  readonly position: number;
  readonly flight: string | null;
  readonly guest: boolean;
  readonly implementGrams: number | null;
  /** With which mark of the event the competitor was entered, in units of the competition; `null`: with none. */
  readonly seedMark: number | null;
  /** What a paper card says was the result; `null`: there is no card, or it says nothing. */
  readonly written: WrittenResult | null;
  /** Entered at the circle, and nobody has said yet who it is. */
  readonly isUnmatched: boolean;
}

export interface JournalRow {
  readonly organisationId: string;
  readonly competitionId: string;
  /** From 1, without gaps. */
  readonly sequence: number;
  readonly entryId: string;
  readonly kind: JournalKind;
  /** `body.kind` equals `kind`. */
  readonly body: JournalBody;
  readonly standing: StoredVerdict['standing'];
  readonly verdict: StoredVerdict;
  readonly authority: Authority;
  readonly actor: string;
  readonly device: string | null;
  /** The device's own clock, believed by nobody. */
  readonly deviceAt: string | null;
  readonly recordedAt: string;
  /** SHA-256 of what the device sent, 64 hexadecimal digits: the same id with another one is another entry. */
  readonly fingerprint: string;
}
