import type { Card, CardCompetitor } from '../card.js';
import type { DistanceEventCode } from '../codes.js';
import type { Trial } from '../trial.js';
import { checkCuts } from './check-cuts.js';
import { checkDistanceSeries } from './check-distance-series.js';
import { parseDistanceCell } from './distance-cell.js';
import { describe } from './kinds.js';
import type { ObjectReader } from './object-reader.js';
import type { Place } from './place.js';
import { bibsOf, membersOf, readCompetitors, trialsOf, type CompetitorDraft } from './read-competitors.js';
import { readPlan, type PlanReading } from './read-plan.js';
import { readAdmitted, readQualifying } from './read-qualification.js';
import type { Terms } from './read-terms.js';
import { checkLength, checkStarted } from './series-checks.js';
import { UnitWatch } from './unit-watch.js';

type Draft = CompetitorDraft<Trial>;

export interface DistanceReading {
  /** Not to be relied on when any problem has been reported; `undefined`: not even the parts are there. */
  readonly card: Card | undefined;
  readonly plan: PlanReading;
  readonly drafts: readonly (Draft | undefined)[];
}

/** Reads and checks all that decides a throw or a horizontal jump. */
export function readDistance(sheet: ObjectReader, terms: Terms, event: DistanceEventCode): DistanceReading {
  const units = new UnitWatch();
  const plan = readPlan(sheet, terms);
  const qualifying = readQualifying(sheet, units);
  const drafts = readCompetitors(sheet, (text, place) => readCell(text, place, sheet, terms, units));
  const admitted = readAdmitted(sheet, terms, drafts && bibsOf(drafts), plan.plan?.cuts);
  const unit = units.settle(sheet.findings);
  const reading = { plan, drafts: drafts ?? [], card: undefined };
  for (const draft of reading.drafts) {
    if (draft) checkCompetitor(draft, sheet, terms, plan, qualifying?.standard ?? null);
  }
  const { ruleSet, stage, indoor } = terms;
  const members = drafts && membersOf(drafts);
  if (!ruleSet || !stage || !plan.plan || !members) return reading;
  const card: Card = {
    rules: ruleSet.code,
    edition: ruleSet.edition,
    event,
    indoor: indoor ?? false,
    stage,
    qualifying: qualifying ?? null,
    plan: plan.plan,
    unit,
    competitors: members.map(competitorOf),
    admitted: admitted ?? [],
  };
  if (admitted) checkCuts(card, members, ruleSet.plan.cite.rule, sheet.findings);
  return { ...reading, card };
}

/** Reads a cell; `undefined`: a problem has been reported, and what the cell says is not relied on. */
function readCell(
  text: string,
  place: Place,
  { findings }: ObjectReader,
  { hasWind }: Terms,
  units: UnitWatch,
): Trial | undefined {
  const cell = parseDistanceCell(text);
  if (!cell) {
    const message = `${describe(text)} is no trial: write a mark like 52.98 or 47-06.25, or O, X, -, r.`;
    findings.report(place, 'CELL', message);
    return undefined;
  }
  if (cell.unit) units.note(place, cell.unit);
  if (cell.trial.wind !== null && hasWind === false) {
    const message = 'Wind is measured in long and triple jump outdoors only; write the cell without it.';
    findings.report(place, 'WIND_NOT_MEASURED', message);
  }
  return cell.trial;
}

function checkCompetitor(
  draft: Draft,
  { findings }: ObjectReader,
  { ruleSet }: Terms,
  { rounds, overrides }: PlanReading,
  standard: number | null,
): void {
  const series = draft.series ?? [];
  if (rounds !== undefined) {
    const rule = overrides.rounds === undefined ? (ruleSet?.plan.cite.rule ?? null) : null;
    checkLength(series, rounds, 'rounds', rule, findings);
  }
  const rule = ruleSet?.qualificationPlan.cite.rule ?? null;
  checkDistanceSeries(series, standard === null ? null : { standard, rule }, findings);
  checkStarted(draft, findings);
}

function competitorOf(draft: Draft): CardCompetitor {
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
