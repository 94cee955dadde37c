import {
  COMBINED_TIES,
  combinedSentence,
  combinedWindRule,
  combinedWindSentence,
  formatCombinedMark,
  formatWind,
  isCombinedComplete,
  meanWindText,
  standingRows,
  standingStages,
  type Cited,
  type CombinedStage as Stage,
  type CombinedWindRule,
  type ComponentResult,
  type StandingRow,
} from '#rules';
import { globalId } from '../platform/inputs/global-id.js';
import type { EntrantLine, LoadedCombined } from './combined-loaded.js';
import type {
  CombinedResult,
  CombinedRow,
  CombinedStage,
  CombinedStanding,
  CombinedWind,
} from './combined-standing.types.js';

/** Whole names for those who work at the meet, for everybody else what the meet shows. */
export type Audience = 'public' | 'crew';

/** How it stands now. `differsFromSigned` is for whoever has read what was archived. */
export function standingView(
  loaded: LoadedCombined,
  audience: Audience,
  differsFromSigned: boolean,
): CombinedStanding {
  const { row, state, meet } = loaded;
  const windRule = combinedWindRule(meet.startsOn);
  const stages = standingStages(state);
  const rows = standingRows(state, windRule.value);
  return {
    version: row.version,
    rules: `${row.rules} ${row.edition}`,
    isOfficial: state.signedOff,
    isProvisional: !state.signedOff,
    isComplete: isCombinedComplete(state),
    isDisputed: state.questions.length > 0,
    differsFromSigned,
    changedAt: loaded.changedAt,
    rows: rows.map((one, at) => rowView({ loaded, audience, stages, windRule }, one, rows[at - 1] ?? null)),
    stages: stages.map((stage) => stageView(loaded, stage)),
  };
}

interface View {
  readonly loaded: LoadedCombined;
  readonly audience: Audience;
  readonly stages: readonly Stage[];
  readonly windRule: Cited<CombinedWindRule>;
}

function rowView(view: View, row: StandingRow, before: StandingRow | null): CombinedRow {
  const { loaded, audience, windRule } = view;
  const line = loaded.entrants.find(({ entrant }) => entrant.id === row.entrant)!;
  const isWhole = row.place !== null && row.results.every((result) => result !== null);
  return {
    entrant: globalId('CombinedEntrant', row.entrant),
    bib: line.entrant.bib,
    name: nameFor(audience, line),
    club: line.club,
    place: row.place,
    isEqual: row.equal,
    total: row.total,
    status: row.status,
    decidedBy: row.decidedBy,
    reason: combinedSentence(row, before),
    reasonRule: row.place === null ? null : COMBINED_TIES[loaded.row.rules].cite.rule,
    results: resultsView(view, row, line.entrant.bib),
    wind: windView(row, windRule),
    isWindValidForRecords: isWhole && row.wind.legal === true,
  };
}

export function nameFor(audience: Audience, line: EntrantLine): string {
  return audience === 'crew' ? (line.name ?? line.displayName) : line.displayName;
}

function resultsView({ loaded, stages }: View, row: StandingRow, bib: string): CombinedResult[] {
  const { setup } = loaded.state;
  return setup.table.events.map((event, index) => {
    const result = row.results[index] ?? null;
    const after = stages[index]?.rows.find((one) => one.bib === bib);
    return {
      event,
      outcome: result && (result.outcome === 'valid' ? 'VALID' : result.outcome),
      mark: markOf(result, event),
      timing: result?.timing ?? null,
      wind: result === null || result.wind === null ? null : formatWind(result.wind),
      points: row.points[index] ?? null,
      isEntered: result !== null && result.entry !== null,
      entry: result?.entry ?? null,
      isProvisional: result?.entry === null && setup.linked.get(event)?.isOfficial === false,
      runningTotal: after?.total ?? null,
      placeAfter: after?.place ?? null,
    };
  });
}

function markOf(result: ComponentResult | null, event: CombinedResult['event']): string | null {
  if (result === null || result.hundredths === null) return null;
  return formatCombinedMark(result.hundredths, event, result.timing ?? 'electronic');
}

function windView({ wind }: StandingRow, { value, cite }: Cited<CombinedWindRule>): CombinedWind {
  return {
    mean: wind.meanTenths && meanWindText(wind.meanTenths),
    isLegal: wind.legal,
    reason: combinedWindSentence(wind, value),
    rule: cite.rule,
  };
}

function stageView({ entrants }: LoadedCombined, { event, rows }: Stage): CombinedStage {
  const idOf = new Map(entrants.map(({ entrant }) => [entrant.bib, globalId('CombinedEntrant', entrant.id)]));
  return {
    event,
    rows: rows.map(({ bib, points, total, place, equal }) => ({
      entrant: idOf.get(bib)!,
      ...{ points, total, place, isEqual: equal },
    })),
  };
}
