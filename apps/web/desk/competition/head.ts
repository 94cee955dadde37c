import {
  isDistanceEvent,
  parseMark,
  type AnyEntry,
  type CompetitionSetup,
  type EventCode,
  type HoldCode,
  type RuleSetCode,
  type Stage,
  type Unit,
  type VerticalEventCode,
  type VerticalSetup,
} from '#rules';
import { keyOf } from '../../offline/object-ids.js';

/** What the desk reads of a competition, beside its journal. */
export interface CompetitionHead {
  readonly id: string;
  readonly title: string;
  readonly event: string;
  readonly rules: RuleSetCode;
  readonly edition: string;
  readonly stage: string;
  readonly isIndoor: boolean;
  readonly unit: string;
  readonly implementGrams: number | null;
  readonly status: 'DRAFT' | 'OPEN' | 'OFFICIAL';
  readonly version: number;
  readonly meet: { readonly name: string };
  readonly plan: {
    readonly rounds: number;
    readonly cuts: readonly { readonly after: number; readonly through: number }[];
    readonly cutTies: string;
    readonly reorderAfter: readonly number[];
    readonly reorder: string;
  } | null;
  readonly qualifying: { readonly standard: string; readonly fill: number } | null;
  readonly vertical: {
    readonly heights: readonly string[];
    readonly isCombined: boolean;
    readonly passGivesUp: string;
    readonly tieForFirst: string;
  } | null;
  readonly callList: readonly CallLine[];
}

/** What a desk of an older build kept has not all of it. */
export interface CallLine {
  readonly name: string | null;
  readonly handedness?: 'LEFT' | 'RIGHT' | null;
  readonly isUnmatched?: boolean;
  readonly alsoEntered?: readonly { readonly title: string; readonly startsAt: string | null }[];
  readonly competitor: {
    readonly id: string;
    readonly bib: string;
    readonly displayName: string;
    readonly club: string | null;
    readonly flight: string | null;
    readonly isGuest: boolean;
    readonly implementGrams: number | null;
  };
}

/** One line of the journal as the API gives it. */
export interface JournalNode {
  readonly id: string;
  readonly sequence: number;
  readonly kind: string;
  readonly body: Readonly<Record<string, unknown>>;
  readonly holdCode: HoldCode | null;
  readonly authority: AnyEntry['by'];
  readonly actor: string;
  readonly recordedAt: string;
}

export interface JournalPage {
  readonly edges: readonly { readonly node: JournalNode }[];
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
}

const JOURNAL = `journal(first: 100, after: $after) {
  edges { node { id sequence kind body holdCode authority actor recordedAt } }
  pageInfo { hasNextPage endCursor }
}`;

/** The competition with the first page of its journal after a cursor. */
export const READ_COMPETITION = `query DeskCompetition($id: ID!, $after: String) {
  competition(id: $id) {
    id title event rules edition stage isIndoor unit implementGrams status version
    meet { name }
    plan { rounds cuts { after through } cutTies reorderAfter reorder }
    qualifying { standard fill }
    vertical { heights isCombined passGivesUp tieForFirst }
    callList {
      name handedness isUnmatched alsoEntered { title startsAt }
      competitor { id bib displayName club flight isGuest implementGrams }
    }
    ${JOURNAL}
  }
}`;

export const READ_JOURNAL = `query DeskJournal($id: ID!, $after: String) { competition(id: $id) { ${JOURNAL} } }`;

export const READ_VERSION = `query DeskVersion($id: ID!) { competition(id: $id) { version } }`;

/** A code of the API, such as NEXT_BEST, as the rules name it. */
function code<C extends string>(text: string): C {
  return text.toLowerCase().replaceAll('_', '-') as C;
}

export function eventIn(head: CompetitionHead): EventCode {
  return code<EventCode>(head.event);
}

export function unitIn(head: CompetitionHead): Unit {
  return code<Unit>(head.unit);
}

function sharedSetup(head: CompetitionHead) {
  return {
    rules: head.rules,
    edition: head.edition,
    indoor: head.isIndoor,
    stage: code<Stage>(head.stage),
    qualifying: head.qualifying && {
      standard: valueOf(head.qualifying.standard),
      fill: head.qualifying.fill,
    },
    unit: unitIn(head),
  };
}

function competitorsOf(head: CompetitionHead) {
  return head.callList.map(({ isUnmatched, competitor: { id, bib, club, flight, isGuest: guest } }) => ({
    key: keyOf(id),
    bib,
    name: null,
    club,
    flight,
    guest,
    ...(isUnmatched && { unmatched: true }),
  }));
}

function valueOf(mark: string): number {
  return parseMark(mark)?.value ?? 0;
}

/** What the rules need of a throw or a horizontal jump; null: it is another kind. */
export function distanceSetup(head: CompetitionHead): CompetitionSetup | null {
  const event = eventIn(head);
  if (!isDistanceEvent(event) || !head.plan) return null;
  const { cutTies, reorder, rounds, cuts, reorderAfter } = head.plan;
  return {
    ...sharedSetup(head),
    event,
    plan: { rounds, cuts, reorderAfter, cutTies: code(cutTies), reorder: code(reorder) },
    competitors: competitorsOf(head).map((one, at) => ({
      ...one,
      implementGrams: head.callList[at]!.competitor.implementGrams ?? head.implementGrams,
    })),
  };
}

/** What the rules need of a high jump or pole vault; null: it is another kind. */
export function verticalSetup(head: CompetitionHead): VerticalSetup | null {
  const event = eventIn(head);
  if (isDistanceEvent(event) || !head.vertical) return null;
  const { heights, isCombined, passGivesUp, tieForFirst } = head.vertical;
  return {
    ...sharedSetup(head),
    event: event satisfies VerticalEventCode,
    heights: heights.map(valueOf),
    combined: isCombined,
    passGivesUp: code(passGivesUp),
    tieForFirst: code(tieForFirst),
    competitors: competitorsOf(head),
  };
}
