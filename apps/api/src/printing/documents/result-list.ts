import { reasonsOf, verticalReasonsOf, type Reason, type VerticalReason } from '#rules';
import { placeReason } from '#wording';
import type { LoadedCompetition } from '../../platform/competition/loaded.js';
import type { ResultTable, TableRow } from '../../results/results.service.js';
import type { Wording } from '../labels/labels.js';
import type { PrintedDocument, PrintedTable } from '../printed-document.js';
import { column, footOf, headOf, type Printed } from './head.js';

/** The result as it stands, with every trial and the reason of every place. */
export function resultList(printed: Printed, loaded: LoadedCompetition, table: ResultTable): PrintedDocument {
  const { competition, wording } = printed;
  const { labels } = wording;
  const state = table.isOfficial ? labels.official : labels.provisional;
  const changed = table.changedAt === null ? '' : ` · ${wording.moment(table.changedAt)}`;
  return {
    title: `${labels.result}: ${competition.title}`,
    lines: [...headOf(printed), `${state} · ${labels.version} ${table.version}${changed}`],
    isLandscape: true,
    tables: [
      standing(printed, loaded, table),
      ...(table.vertical?.jumpOff.length ? [jumpOff(printed, table)] : []),
    ],
    notes: table.isDisputed ? [labels.disputed] : [],
    signatures: table.isOfficial ? [labels.chiefJudge, labels.referee] : [],
    foot: footOf(printed),
  };
}

function standing({ wording }: Printed, loaded: LoadedCompetition, { rows }: ResultTable): PrintedTable {
  const reasons = reasonsIn(loaded);
  const { labels, decimal } = wording;
  const hasWind = rows.some(({ wind }) => wind !== null);
  return {
    caption: null,
    isForWriting: false,
    columns: [
      column(labels.place, 0.8, 'right'),
      column(labels.bib, 0.8, 'right'),
      column(labels.name, 3, 'left', true),
      column(labels.club, 2.2),
      column(labels.mark, 1.2, 'right'),
      ...(hasWind ? [column(labels.wind, 0.9, 'right')] : []),
      column(labels.series, 5),
      column(labels.reason, 4.2),
    ],
    rows: rows.map((row) => [
      placeOf(row),
      row.bib,
      row.name,
      row.club ?? '',
      decimal(row.mark ?? row.status ?? ''),
      ...(hasWind ? [decimal(row.wind ?? '')] : []),
      seriesOf(row, decimal),
      reasonOf(row, reasons.get(row.bib), wording),
    ]),
  };
}

type AnyReason = Reason | VerticalReason;

/** By bib. */
function reasonsIn(loaded: LoadedCompetition): ReadonlyMap<string, AnyReason> {
  const reasons: readonly AnyReason[] =
    loaded.kind === 'vertical' ? verticalReasonsOf(loaded.state.card) : reasonsOf(loaded.state.card);
  return new Map(reasons.map((reason) => [reason.bib, reason]));
}

function reasonOf(
  { status }: TableRow,
  reason: AnyReason | undefined,
  { reasons: words, decimal: decimals }: Wording,
): string {
  if (!reason) return '';
  return placeReason(reason, { words, decimals, isOver: status !== null });
}

function placeOf({ place, isEqual }: TableRow): string {
  return place === null ? '–' : `${isEqual ? '=' : ''}${place}.`;
}

function seriesOf(row: TableRow, decimal: (text: string) => string): string {
  if (row.vertical) {
    return row.vertical.heights
      .filter(({ cell }) => cell !== null)
      .map(({ height, cell }) => `${decimal(height)} ${cell ?? ''}`)
      .join('  ');
  }
  return row.series
    .map(({ cell, wind }) => (wind === null ? decimal(cell) : `${decimal(cell)} (${decimal(wind)})`))
    .join('  ');
}

function jumpOff({ wording }: Printed, { vertical, rows }: ResultTable): PrintedTable {
  const { labels, decimal } = wording;
  const rounds = vertical?.jumpOff ?? [];
  const bibs = new Map(rows.map((row) => [row.competitor, row]));
  const who = [...new Set(rounds.flatMap(({ tries }) => tries.map(({ competitor }) => competitor)))];
  return {
    caption: labels.jumpOff,
    isForWriting: false,
    columns: [
      column(labels.bib, 1, 'right'),
      column(labels.name, 4, 'left', true),
      ...rounds.map(({ height }) => column(decimal(height), 1.2, 'center')),
    ],
    rows: who.map((competitor) => [
      bibs.get(competitor)?.bib ?? '',
      bibs.get(competitor)?.name ?? '',
      ...rounds.map(({ tries }) => tries.find((one) => one.competitor === competitor)?.cell ?? ''),
    ]),
  };
}
