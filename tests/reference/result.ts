import { combinedResults } from './combined-points.js';
import { fractionText, type Fraction } from './fractions.js';
import { inPlaceOrder } from './horizontal-ranking.js';
import { stepsOf, validTrials, windIsLegal } from './marks.js';
import { cutsOf, orderOf } from './plan.js';
import {
  hasWind,
  isVertical,
  type AnySheet,
  type Competitor,
  type MeetSheet,
  type ResultRow,
  type Scoring,
  type Sheet,
} from './shapes.js';
import { bestTrial, standingOf, type Standing } from './standing.js';
import { clubOf, clubTable, pointsOf, type Scored } from './team-points.js';

function windLegalMark(sheet: Sheet, competitor: Competitor): string | null {
  const legal = validTrials(competitor.series ?? []).filter(
    (trial) => trial.steps !== null && (!hasWind(sheet) || windIsLegal(trial.wind)),
  );
  const best = Math.max(...legal.map((trial) => trial.steps ?? 0));
  return legal.find((trial) => trial.steps === best)?.mark ?? null;
}

function windColumns(sheet: Sheet, competitor: Competitor, mark: string | null): Partial<ResultRow> {
  if (isVertical(sheet)) return { windLegalMark: mark };
  const wind = bestTrial(sheet, competitor)?.wind ?? null;
  const known = hasWind(sheet) && wind !== null && wind !== 'NWI';
  return {
    wind,
    windLegal: known ? windIsLegal(wind) : null,
    windLegalMark: windLegalMark(sheet, competitor),
  };
}

function statusOf(competitor: Competitor, place: number | null): string | null {
  if (competitor.status !== undefined) return competitor.status;
  if (competitor.guest === true) return 'GUEST';
  return place === null ? 'NM' : null;
}

function rowOf(sheet: Sheet, standing: Standing, index: number): ResultRow {
  const competitor = sheet.competitors[index] as Competitor;
  const place = standing.places[index] ?? null;
  const mark = competitor.status === undefined ? standing.mark(index) : null;
  const wind = mark === null ? {} : windColumns(sheet, competitor, mark);
  return {
    bib: competitor.bib,
    place,
    equal: place !== null && standing.places.filter((other) => other === place).length > 1,
    mark,
    wind: null,
    windLegal: null,
    windLegalMark: null,
    status: statusOf(competitor, place),
    decidedBy: null,
    qualified: null,
    ...wind,
  };
}

/** Indices in the order of the result: placed, no mark, disqualified, did not start, guests. */
function resultOrder(sheet: Sheet, standing: Standing): number[] {
  const placed = inPlaceOrder(standing.places);
  const having = (status: string) =>
    sheet.competitors.flatMap((one, index) =>
      statusOf(one, standing.places[index] ?? null) === status ? [index] : [],
    );
  return [...placed, ...having('NM'), ...having('DQ'), ...having('DNS'), ...having('GUEST')];
}

function decide(standing: Standing, order: readonly number[], rows: ResultRow[]): void {
  rows.forEach((row, at) => {
    if (row.place === null) return;
    const above = rows[at - 1];
    if (above === undefined) row.decidedBy = 'first';
    else if (above.place === row.place) row.decidedBy = 'equal';
    else row.decidedBy = standing.separatedBy(order[at - 1] as number, order[at] as number);
  });
}

/** `Q` for the standard; `q` until `fill` is reached, with all who are level with the last of them; then the admitted. */
function qualify(sheet: Sheet, rows: ResultRow[]): void {
  const placed = rows.filter((row) => row.place !== null);
  if (sheet.qualifying !== undefined) {
    const standard = stepsOf(sheet.qualifying.standard);
    for (const row of placed)
      if (row.mark !== 'O' && stepsOf(row.mark ?? '') >= standard) row.qualified = 'Q';
    const lastFilled = placed[(sheet.qualifying.fill ?? 0) - 1];
    const lastPlace = sheet.qualifying.fill ? (lastFilled?.place ?? Infinity) : 0;
    for (const row of placed) if ((row.place ?? 0) <= lastPlace) row.qualified ??= 'q';
  }
  for (const row of rows) {
    const admission = sheet.admitted?.find((one) => one.bib === row.bib);
    if (admission) row.qualified ??= `q${admission.by}`;
  }
}

function differencesOf(sheet: Sheet, rows: readonly ResultRow[]): unknown[] {
  return sheet.competitors.flatMap((competitor) => {
    const { bib, written = {} } = competitor;
    const row = rows.find((one) => one.bib === bib) as ResultRow;
    return (['place', 'mark'] as const)
      .filter((key) => written[key] !== undefined && written[key] !== row[key])
      .map((key) => ({ bib, key, written: written[key], counted: row[key] }));
  });
}

function scoredOf(sheet: Sheet, rows: readonly ResultRow[]): Scored[] {
  return rows.map((row) => {
    const competitor = sheet.competitors.find((one) => one.bib === row.bib) as Competitor;
    return { club: clubOf(competitor), place: row.place };
  });
}

function bibs(sheet: Sheet, indices: readonly number[]): string[] {
  return indices.map((index) => sheet.competitors[index]?.bib ?? '');
}

interface Counted {
  document: Record<string, unknown>;
  scored: Scored[];
  points: Fraction[];
}

function countSheet(sheet: Sheet, scoring: Scoring | undefined): Counted {
  const standing = standingOf(sheet);
  const order = resultOrder(sheet, standing);
  const rows = order.map((index) => rowOf(sheet, standing, index));
  decide(standing, order, rows);
  qualify(sheet, rows);
  const scored = scoredOf(sheet, rows);
  const points = scoring ? pointsOf(scored, scoring) : [];
  rows.forEach((row, at) => {
    const own = points[at];
    if (own) row.points = fractionText(own);
  });
  const document: Record<string, unknown> = {
    format: 'sectorline-result/1',
    rules: sheet.rules,
    results: rows,
  };
  document['cuts'] = isVertical(sheet)
    ? []
    : cutsOf(sheet).map((cut) => ({ after: cut.after, through: bibs(sheet, cut.through) }));
  if (!isVertical(sheet)) {
    document['order'] = Object.fromEntries(
      [...orderOf(sheet)].map(([round, one]) => [round, bibs(sheet, one)]),
    );
  }
  if (sheet.competitors.some((one) => one.written)) document['differences'] = differencesOf(sheet, rows);
  document['problems'] = [];
  return { document, scored, points };
}

function countMeet(meet: MeetSheet): unknown {
  const counted = meet.sheets.map((sheet) => countSheet(sheet, meet.scoring));
  return {
    format: 'sectorline-meet-result/1',
    results: counted.map((one) => one.document),
    clubs: clubTable(
      counted.map((one) => one.scored),
      counted.map((one) => one.points),
    ),
    problems: [],
  };
}

/**
 * The result of a valid sheet, counted a second time by brute force. Left out are the edition, which only the rules
 * library knows, and the sentences (`because`) of differences.
 */
export function referenceResult(sheetJson: unknown): unknown {
  const sheet = sheetJson as AnySheet;
  if (sheet.format === 'sectorline-meet/1') return countMeet(sheet);
  if (sheet.format === 'sectorline-combined/1') {
    return { format: 'sectorline-result/1', results: combinedResults(sheet), problems: [] };
  }
  const { document, scored, points } = countSheet(sheet, sheet.scoring);
  return sheet.scoring ? { ...document, clubs: clubTable([scored], [points]) } : document;
}
