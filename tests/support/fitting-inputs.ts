const JUDGED = {
  outcome: 'VALID',
  wind: null,
  foul: null,
  protestedMark: null,
  implementGrams: null,
  implementId: null,
};

export const JUMPED = { outcome: 'FAILED', foul: null, incident: null, isProtested: false };

/** All that the checklist of a discus competition asks for. */
const CHECKS = [
  ...['SECTOR_CLEAR', 'SECTOR_CLOSED', 'CAGE_WHOLE', 'SURFACE', 'WARM_UP', 'RETRIEVAL', 'WEATHER'],
];

/** What a call needs beside examples of its types, so that nothing but the hostile field stops it. */
export const FITTING: Readonly<Record<string, object>> = {
  attemptRecord: { ...JUDGED, mark: '58.10', round: 1 },
  attemptCorrect: { ...JUDGED, mark: '58.11' },
  competitionCreate: {
    rules: 'WA',
    edition: null,
    event: 'DISCUS',
    qualifying: null,
    implementGrams: null,
    vertical: null,
  },
  competitionClear: { confirmed: CHECKS, despite: null },
  competitorEnter: { athleteId: null, clubId: null, bib: '77', seedMark: '41.20' },
  bibsAssign: { from: 50, isKeeping: false, isPreview: false },
  combinedComponentLink: { event: 'DISCUS' },
  combinedEntrantEnter: { athleteId: null, clubId: null, bib: '77' },
  combinedEventCreate: { rules: 'WA', edition: null, scoringSex: null },
  combinedMarkCorrect: { outcome: 'VALID', mark: '12.01', wind: null },
  combinedMarkRecord: { event: 'SHOT', outcome: 'VALID', mark: '12.00', wind: null },
  combinedStartSet: { status: 'DNS', fromEvent: null },
  combinedTimeCorrect: { outcome: 'FINISHED', time: '11.21', wind: null },
  combinedTimeRecord: { event: 'RUN_100', outcome: 'FINISHED', time: '11.20', wind: null },
  ageFactorsSet: { event: 'DISCUS', factors: [{ sex: 'M', age: '50', factor: '1.2' }] },
  categoryDefinitionAdd: {
    ...{ ageOn: { kind: 'NO_AGE' }, bands: [{ code: 'U14', minAge: 9, maxAge: 13 }], rules: null },
    ...{ validFrom: null, validUntil: null },
  },
  competitorExcuse: { to: 'Long jump' },
  competitorFlightSet: { flight: 'B' },
  competitorMatch: { athleteId: null },
  competitorStartSet: { status: 'DNS' },
  barSet: { height: '3.40', leavesOut: [] },
  jumpCorrect: { ...JUMPED, outcome: 'CLEARED' },
  jumpOffRecord: { ...JUMPED, height: '3.20', round: 1 },
  jumpOrderSet: { height: '3.20', trial: 2 },
  jumpRecord: { ...JUMPED, height: '3.20', trial: 1 },
  meetEntryTermsSet: { expectedRevision: 0, closesAt: '2026-06-10T18:00:00Z' },
  meetScoringSet: { preset: null },
  qualificationCreate: { finalId: null },
  qualificationFinalDraw: { finalId: null, reason: 'light fails', isPreview: false },
  startListDraw: { method: 'LOT', flights: 2, flightSize: null, isPreview: false },
  implementRegister: { event: 'DISCUS', competitorId: null },
  implementInspect: { replacesId: null, reason: null, dimensions: [] },
  implementRecheck: { replacesId: null, reason: null, dimensions: [] },
  enteredResultSet: { replacesId: null, reason: null, lines: [] },
  startingMarkAdd: {
    ...{ event: 'DISCUS', mark: '52.10', implementGrams: 1000, wind: null, onDate: '1998-06-06' },
    ...{ replacesId: null, reason: null },
  },
  enteredResultsImport: {
    csv: { text: 'event,place,bib,club\n100 m women,1,11,Heron' },
    isDryRun: false,
  },
  entriesImport: {
    csv: { text: 'competition,listed_name\nTest,Nobody Known' },
    ...{ isDryRun: true, athletes: [], clubs: [] },
  },
  pastResultsImport: {
    csv: {
      text: 'family_name,given_name,sex,date,meet,event,mark\nQuill,Maud,W,2019-06-08,Open,high-jump,1.71',
    },
    ...{ isDryRun: true, athletes: [], clubs: [] },
  },
  startingMarksImport: {
    csv: { text: 'event,mark,sex,date\nhigh-jump,1.71,W,1998-06-06' },
    isDryRun: false,
  },
  recordRatify: {
    ...{ kind: 'MEET_RECORD', decision: 'REFUSED', mark: '58.10' },
    ...{ recheck: null, measuring: null, despite: [] },
  },
  meetCreate: { timeZone: 'Europe/Lisbon', edition: null, endsOn: null },
  tokenIssue: { role: 'OFFICIAL', from: null, until: null },
  protestAppeal: { at: null },
  protestDecide: { at: null },
  protestLodge: { lodgedAt: null },
  protestWithdraw: { at: null },
  resultPost: { postedAt: null },
  timetableSet: {
    expectedRevision: 0,
    facilities: ['cage', 'hammer'].map((key) => ({ key, name: key })),
    sharedGrounds: [{ facilities: ['cage', 'hammer'], reason: 'one cage' }],
  },
};
