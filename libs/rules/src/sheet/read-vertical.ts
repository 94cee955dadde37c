import type { VerticalEventCode } from '../codes.js';
import type {
  HeightTrials,
  JumpOffRound,
  VerticalCard,
  VerticalCompetitor,
} from '../vertical/vertical-card.js';
import { parseVerticalCell } from '../vertical/vertical-cell.js';
import { checkJumpOff, checkVerticalSeries } from './check-vertical.js';
import type { Findings } from './findings.js';
import { describe } from './kinds.js';
import type { ObjectReader } from './object-reader.js';
import type { Place } from './place.js';
import { bibsOf, membersOf, readCompetitors, trialsOf, type CompetitorDraft } from './read-competitors.js';
import { readHeights } from './read-heights.js';
import { readJumpOff, type RoundDraft } from './read-jump-off.js';
import { readAdmitted, readQualifying } from './read-qualification.js';
import type { Terms } from './read-terms.js';
import { checkLength, checkStarted } from './series-checks.js';
import { UnitWatch } from './unit-watch.js';

type Draft = CompetitorDraft<HeightTrials>;

export interface VerticalReading {
  /** Not to be relied on when any problem has been reported; `undefined`: not even the parts are there. */
  readonly card: VerticalCard | undefined;
  readonly drafts: readonly (Draft | undefined)[];
}

/** Reads and checks all that decides a high jump or pole vault. */
export function readVertical(sheet: ObjectReader, terms: Terms, event: VerticalEventCode): VerticalReading {
  const { findings } = sheet;
  const units = new UnitWatch();
  const heights = readHeights(sheet, units);
  const qualifying = readQualifying(sheet, units);
  const drafts = readCompetitors(sheet, (text, place) => readCell(text, place, findings));
  const bibs = drafts && bibsOf(drafts);
  const admitted = readAdmitted(sheet, terms, bibs, []);
  const jumpOff = readJumpOff(sheet, units, bibs);
  const unit = units.settle(findings);
  for (const draft of drafts ?? []) {
    if (draft) checkCompetitor(draft, heights, qualifying?.standard ?? null, terms, findings);
  }
  const { ruleSet, stage, indoor } = terms;
  const members = drafts && membersOf(drafts);
  const reading = { drafts: drafts ?? [], card: undefined };
  if (!ruleSet || !stage || !members || !heights?.every((height) => height !== undefined)) return reading;
  const card: VerticalCard = {
    rules: ruleSet.code,
    edition: ruleSet.edition,
    event,
    indoor: indoor ?? false,
    stage,
    qualifying: qualifying ?? null,
    unit,
    heights,
    competitors: members.map(competitorOf),
    admitted: admitted ?? [],
    jumpOff: roundsOf(jumpOff ?? []),
  };
  if (!units.isMixed && areClear(members, findings)) {
    checkJumpOff(card, jumpOff ?? [], ruleSet.jumpOff.rule, findings);
  }
  return { ...reading, card };
}

function readCell(text: string, place: Place, findings: Findings): HeightTrials | undefined {
  const trials = parseVerticalCell(text);
  if (trials) return trials;
  const message = `${describe(text)} are no trials at a height: write them like O, XO, XXX, X-, Xr, - or r.`;
  findings.report(place, 'CELL', message);
  return undefined;
}

function checkCompetitor(
  draft: Draft,
  heights: readonly (number | undefined)[] | undefined,
  standard: number | null,
  { ruleSet }: Terms,
  findings: Findings,
): void {
  const series = draft.series ?? [];
  if (heights) checkLength(series, heights.length, 'heights', null, findings);
  const reaching =
    standard === null
      ? undefined
      : heights?.findIndex((height) => height === undefined || height >= standard);
  // A height that cannot be read may be the one that reaches the standard.
  const isKnown = reaching !== undefined && heights?.[reaching] !== undefined;
  checkVerticalSeries(series, isKnown ? reaching : null, ruleSet, findings);
  checkStarted(draft, findings);
}

function competitorOf(draft: Draft): VerticalCompetitor {
  return {
    bib: draft.bib ?? '',
    name: draft.name,
    club: draft.club,
    flight: draft.flight,
    status: draft.status ?? null,
    guest: draft.guest ?? false,
    series: trialsOf(draft),
  };
}

/** Whether nothing is wrong with what decides the places before the jump-off. */
function areClear(drafts: readonly Draft[], findings: Findings): boolean {
  if (bibsOf(drafts).size < drafts.length) return false;
  return drafts.every(
    ({ status, guest, series }) =>
      status !== undefined &&
      guest !== undefined &&
      series?.every(({ place, content }) => content !== undefined && !findings.hasAt(place)),
  );
}

/** The rounds up to the first that cannot be read whole: what follows it cannot be judged. */
function roundsOf(drafts: readonly (RoundDraft | undefined)[]): JumpOffRound[] {
  const rounds: JumpOffRound[] = [];
  for (const draft of drafts) {
    const tries = draft?.tries?.flatMap(({ bib, trial }) => (trial ? [{ bib, trial }] : []));
    if (draft?.height === undefined || tries?.length !== draft.tries?.length) break;
    rounds.push({ height: draft.height, tries: tries ?? [] });
  }
  return rounds;
}
