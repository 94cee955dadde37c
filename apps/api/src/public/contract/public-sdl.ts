/**
 * The public contract: read-only, and of what everybody may see alone. Its types are the public formats
 * (`#scoreboard`), so there is no birth date, no contact, no note and no reason of a failure to be asked for. Marks,
 * heights and winds are decimal strings in the unit of the competition, instants RFC 3339 in UTC, dates `YYYY-MM-DD`.
 */
export const PUBLIC_SDL = /* GraphQL */ `
  "What everybody may see. Each answer is null where there is nothing, or nothing for the public."
  type Query {
    competition(id: ID!): Competition
    meet(id: ID!): Meet
    "Published meets, the latest first; 50 at most."
    meets(first: Int! = 10): [MeetHead!]!
    "The clubs of a meet as they stand; null also where clubs are not scored."
    clubTable(meetId: ID!): ClubTable
    club(id: ID!): Club
    "Of those alone who are shown by a whole name."
    athlete(id: ID!): Athlete
  }

  type MeetHead {
    id: ID!
    name: String!
    venue: String!
    startsOn: String!
    endsOn: String!
    "IANA name."
    timeZone: String!
  }

  "One competition at one version."
  type Competition {
    id: ID!
    "Rises with every change, never falls: whoever has a newer one throws an older one away."
    version: Int!
    changedAt: String
    meet: MeetHead!
    title: String!
    "Such as discus."
    event: String!
    "rounds or bar."
    kind: String!
    stage: String!
    isIndoor: Boolean!
    "Rule set and edition that decide."
    rules: String!
    "cm or quarter-inch."
    unit: String!
    "W, M or X."
    sex: String
    "Such as U18."
    age: String
    implementGrams: Int
    startsAt: String
    delay: Delay
    stop: SafetyStop
    "scheduled, running, unofficial, posted, under protest, official or amended; readers accept others."
    state: String!
    isDisputed: Boolean!
    isJumpOff: Boolean!
    round: Int
    rounds: Int
    bar: Bar
    "Who is up and the next ones, three at most."
    calls: [Call!]!
    qualifying: Qualifying
    cuts: [Cut!]!
    "At a bar, rising."
    heights: [String!]!
    rows: [Row!]!
    "Places as they would be if every protest succeeded; null: there is none."
    ifProtestsSucceed: [ProtestedPlace!]
  }

  "It begins later than planned."
  type Delay {
    plannedAt: String!
    startsAt: String!
    reason: String!
  }

  "Nobody is called until the all-clear."
  type SafetyStop {
    "lightning, weather or safety."
    cause: String!
    since: String!
    "The earliest moment at which it may go on; the referee decides."
    notBefore: String
  }

  type Bar {
    height: String!
    next: String
  }

  type Call {
    competitor: ID!
    bib: String!
    name: String!
    club: String
    round: Int!
    flight: String
    height: String
  }

  type Qualifying {
    standard: String!
    fill: Int!
  }

  type Cut {
    afterRound: Int!
    "The mark of the last one who goes on now; null: nobody has to be beaten yet."
    line: String
    through: [ID!]!
  }

  type Row {
    competitor: ID!
    "Leads to the public results of the athlete; null: there are none under a whole name."
    athlete: ID
    bib: String!
    "What is shown of the name."
    name: String!
    club: String
    isGuest: Boolean!
    place: Int
    isEqual: Boolean!
    mark: String
    wind: String
    isWindLegal: Boolean
    "NM, DQ, DNS or GUEST."
    status: String
    "Q, q, qR, qJ or qD."
    qualified: String
    "Why the row stands where it stands."
    reason: String!
    rule: String
    "The same in parts, to be said in another language."
    why: Why
    trials: [Trial!]!
    heights: [HeightCell!]!
    jumpOff: [HeightCell!]!
    needs: Needs
  }

  type Trial {
    round: Int!
    "As on a field card: the mark, X, -, r, O for valid and not measured."
    cell: String!
    wind: String
    isWindPending: Boolean!
    protested: String
    isBest: Boolean!
  }

  type HeightCell {
    height: String!
    cell: String
  }

  "What separates a row from the one placed just before."
  union Why = MarkWhy | HeightWhy

  type MarkWhy {
    nth: Int
    level: [String!]!
    own: String
    other: String
    isUndecidable: Boolean!
  }

  type HeightWhy {
    "first, height, failures at height, total failures, jump-off or equal."
    decidedBy: String!
    own: Countback!
    other: Countback
    isJumpedOff: Boolean!
  }

  type Countback {
    height: String!
    failuresAtHeight: Int!
    totalFailures: Int!
  }

  "What is needed with the next trial."
  type Needs {
    places: [NeededPlace!]!
    cut: NeededCut
    standard: String
  }

  type NeededPlace {
    place: Int!
    mark: String!
    trial: Int
    isShared: Boolean!
  }

  type NeededCut {
    afterRound: Int
    isIn: Boolean!
    mark: String
    isEqualEnough: Boolean
  }

  type ProtestedPlace {
    competitor: ID!
    place: Int
    mark: String
  }

  "A meet at a glance."
  type Meet {
    id: ID!
    version: Int!
    changedAt: String
    meet: MeetHead!
    competitions: [MeetCompetition!]!
    hasClubTable: Boolean!
  }

  type MeetCompetition {
    id: ID!
    version: Int!
    title: String!
    event: String!
    startsAt: String
    state: String!
    sex: String
    age: String
    stage: String!
    facility: String
    endsAt: String
    competitors: Int!
    delay: Delay
    stop: SafetyStop
    round: Int
    rounds: Int
    height: String
    "The first three places; more when they are shared."
    leaders: [ResultLine!]!
  }

  type ResultLine {
    competitor: ID!
    athlete: ID
    bib: String!
    name: String!
    club: String
    place: Int
    isEqual: Boolean!
    mark: String
    wind: String
    status: String
  }

  type ClubTable {
    "Of the meet."
    id: ID!
    version: Int!
    meet: MeetHead!
    isProvisional: Boolean!
    open: [String!]!
    clubs: [ClubLine!]!
    divisions: [ClubDivision!]!
    events: [ScoredEvent!]!
  }

  type ClubDivision {
    name: String!
    clubs: [ClubLine!]!
  }

  type ClubLine {
    place: Int!
    club: String!
    "Exact: 7.5, or a fraction such as 19/3."
    points: String!
    reason: String
  }

  type ScoredEvent {
    title: String!
    isProvisional: Boolean!
    isEntered: Boolean!
    points: [ClubPoints!]!
  }

  type ClubPoints {
    club: String!
    points: String!
  }

  "How those who compete for one club stand, the latest meet first."
  type Club {
    id: ID!
    version: Int!
    name: String!
    meets: [ResultsAtMeet!]!
  }

  "What somebody has come to, the latest meet first."
  type Athlete {
    id: ID!
    version: Int!
    name: String!
    meets: [ResultsAtMeet!]!
  }

  type ResultsAtMeet {
    meet: MeetHead!
    competitions: [ResultsInCompetition!]!
  }

  type ResultsInCompetition {
    id: ID!
    version: Int!
    title: String!
    event: String!
    startsAt: String
    state: String!
    lines: [ResultLine!]!
  }
`;
