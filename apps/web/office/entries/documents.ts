/* What the entries of the office ask and send. */

const QUESTIONS = `
  newAthleteCount newClubCount fingerprint isStored
  athleteQuestions { line name birthDate club candidates {
    line why athlete { id givenName familyName birthDate club { name } } } }
  clubQuestions { line name candidates { id name } }
  userErrors { code message remedy ... on CsvFault { line column } }`;

export const ENTRIES_IMPORT = `mutation OfficeEntriesImport($input: EntriesImportInput!) {
  table: entriesImport(input: $input) { count: entryCount needsReason ${QUESTIONS} }
}`;

export const PAST_RESULTS_IMPORT = `mutation OfficePastResultsImport($input: PastResultsImportInput!) {
  table: pastResultsImport(input: $input) { count: resultCount ${QUESTIONS} }
}`;

export interface Problem {
  readonly code: string;
  readonly message: string;
  readonly remedy: string | null;
  readonly line?: number;
  readonly column?: string | null;
}

export interface Candidate {
  readonly line: number | null;
  readonly why: string;
  readonly athlete: {
    readonly id: string;
    readonly givenName: string;
    readonly familyName: string;
    readonly birthDate: string | null;
    readonly club: { readonly name: string } | null;
  } | null;
}

export interface AthleteQuestion {
  readonly line: number;
  readonly name: string;
  readonly birthDate: string | null;
  readonly club: string | null;
  readonly candidates: readonly Candidate[];
}

export interface ClubQuestion {
  readonly line: number;
  readonly name: string;
  readonly candidates: readonly { readonly id: string; readonly name: string }[];
}

/** What a table comes to. */
export interface LookedAt {
  readonly count: number;
  readonly newAthleteCount: number;
  readonly newClubCount: number;
  readonly needsReason?: boolean;
  readonly fingerprint: string | null;
  readonly isStored: boolean;
  readonly athleteQuestions: readonly AthleteQuestion[];
  readonly clubQuestions: readonly ClubQuestion[];
  readonly userErrors: readonly Problem[];
}

export const TERMS = `query OfficeEntryTerms($id: ID!) { meet(id: $id) { entryTerms {
  revision closesAt mostPerClub mostPerAthlete competitionLimits { competitionId mostPerClub } } } }`;

export interface Terms {
  readonly revision: number;
  readonly closesAt: string | null;
  readonly mostPerClub: number | null;
  readonly mostPerAthlete: number | null;
  readonly competitionLimits: readonly object[];
}

export const TERMS_SET = `mutation OfficeEntryTermsSet($input: MeetEntryTermsSetInput!) {
  meetEntryTermsSet(input: $input) { userErrors { message remedy } } }`;

export const ENTER = `mutation OfficeEnter($input: CompetitorEnterInput!) {
  competitorEnter(input: $input) { userErrors { message rule remedy } } }`;

export const BIBS = `mutation OfficeBibs($input: BibsAssignInput!) { bibsAssign(input: $input) {
  bibs { bib name club before isFixed } changedCount userErrors { message remedy } } }`;

export interface Bibs {
  readonly bibs: readonly {
    readonly bib: string;
    readonly name: string;
    readonly club: string | null;
    readonly before: readonly string[];
    readonly isFixed: boolean;
  }[];
  readonly changedCount: number;
  readonly userErrors: readonly { readonly message: string }[];
}

export const LIST = `query OfficeStartList($id: ID!) { competition(id: $id) { version draws { number }
  callList { name seedMark competitor { id bib club flight } } } }`;

export interface ListLine {
  readonly name: string | null;
  readonly seedMark: string | null;
  readonly competitor: {
    readonly id: string;
    readonly bib: string;
    readonly club: string | null;
    readonly flight: string | null;
  };
}

export interface StartList {
  readonly version: number;
  readonly draws: readonly { readonly number: number }[];
  readonly callList: readonly ListLine[] | null;
}

export const ORDER_SET = `mutation OfficeOrderSet($input: StartOrderSetInput!) {
  startOrderSet(input: $input) { userErrors { message rule remedy } } }`;

export const DRAW = `mutation OfficeDraw($input: StartListDrawInput!) {
  startListDraw(input: $input) { userErrors { message rule remedy } } }`;

export const COPY = `mutation OfficeMeetCopy($input: MeetCopyInput!) {
  meetCopy(input: $input) { meet { id } userErrors { message remedy } } }`;
