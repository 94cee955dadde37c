import { eventOf, formatMark, isThrowEvent } from '#rules';
import type { LoadedCompetition, LoadedDistance, LoadedVertical } from '../../platform/competition/loaded.js';
import type { ResultTable, TableRow } from '../../results/results.service.js';
import type { PrintedColumn, PrintedDocument } from '../printed-document.js';
import { column, footOf, headOf, type Printed } from './head.js';
import { byFlight, listLines, type ListLine } from './list-lines.js';

/**
 * The paper on which a competition is written down, or what has been written so far. It carries everything that a
 * sheet typed in afterwards needs. `table`: null for a blank one.
 */
export function fieldSheet(
  printed: Printed,
  loaded: LoadedCompetition,
  table: ResultTable | null,
  whole: boolean,
): PrintedDocument {
  const { competition, wording } = printed;
  const { labels } = wording;
  const lines = listLines(loaded.roster, competition, wording, whole);
  const rows = new Map((table?.rows ?? []).map((row) => [row.bib, row]));
  const cells = loaded.kind === 'vertical' ? atBar(printed, loaded, rows) : inRounds(printed, loaded, rows);
  const columns = [
    column(labels.order, 1.1, 'right'),
    column(labels.bib, 1, 'right'),
    column(labels.name, 3.6, 'left', true),
    column(labels.club, 2.4),
    ...cells.columns,
  ];
  return {
    title: `${labels.fieldSheet}: ${competition.title}`,
    lines: [
      ...headOf(printed),
      `${labels.startedAt}: ________  ${labels.endedAt}: ________  ${labels.weather}: ________________`,
    ],
    isLandscape: true,
    tables: byFlight(lines).map(({ flight, lines: own }) => ({
      caption: flight === null ? null : `${labels.flight} ${flight}`,
      isForWriting: true,
      columns,
      rows: own.map((line) => [line.order, line.bib, line.name, line.club, ...cells.of(line)]),
    })),
    notes: [
      loaded.kind === 'vertical' ? labels.cellsAtBar : labels.cells,
      isThrowEvent(competition.event) ? labels.safety : labels.safetyAtJumps,
    ],
    signatures: [labels.recorder, labels.chiefJudge, labels.referee],
    foot: footOf(printed),
  };
}

interface Cells {
  readonly columns: readonly PrintedColumn[];
  readonly of: (line: ListLine) => string[];
}

/** Round by round, with what is worked out at each new order. */
function inRounds(
  { wording }: Printed,
  { state: { setup } }: LoadedDistance,
  rows: ReadonlyMap<string, TableRow>,
): Cells {
  const { labels, decimal } = wording;
  const { plan } = setup;
  const stops = new Set([...plan.cuts.map(({ after }) => after), ...plan.reorderAfter]);
  stops.delete(plan.rounds);
  const hasWind = eventOf(setup.event).hasWind(setup.indoor);
  const rounds = Array.from({ length: plan.rounds }, (_, index) => index + 1);
  const trialText = (row: TableRow | undefined, round: number): string => {
    const trial = row?.series.find((one) => one.round === round);
    if (!trial) return '';
    return trial.wind === null ? decimal(trial.cell) : `${decimal(trial.cell)} (${decimal(trial.wind)})`;
  };
  return {
    columns: [
      ...rounds.flatMap((round) => [
        column(hasWind ? `${round} / ${labels.wind}` : String(round), hasWind ? 2 : 1.5, 'center'),
        ...(stops.has(round)
          ? [column(`${labels.bestOfRound} ${round}`, 1.4, 'center'), column(labels.orderFrom, 1, 'center')]
          : []),
      ]),
      column(labels.best, 1.5, 'center'),
      column(labels.place, 1, 'center'),
    ],
    of: ({ bib }) => {
      const row = rows.get(bib);
      return [
        ...rounds.flatMap((round) => [trialText(row, round), ...(stops.has(round) ? ['', ''] : [])]),
        decimal(row?.mark ?? ''),
        row?.place ? String(row.place) : '',
      ];
    },
  };
}

/** Height by height; empty columns for heights that are not announced. */
function atBar({ wording }: Printed, { state }: LoadedVertical, rows: ReadonlyMap<string, TableRow>): Cells {
  const { labels, decimal } = wording;
  const { heights } = state;
  const spare = Math.max(0, Math.min(3, 14 - heights.length));
  const text = (height: number): string => formatMark(height, state.setup.unit);
  return {
    columns: [
      ...heights.map((height) => column(decimal(text(height)), 1.2, 'center')),
      ...Array.from({ length: spare }, () => column('', 1.2, 'center')),
      column(labels.best, 1.3, 'center'),
      column(labels.failuresAtBest, 1.4, 'center'),
      column(labels.failuresToBest, 1.4, 'center'),
      column(labels.place, 1, 'center'),
    ],
    of: ({ bib }) => {
      const row = rows.get(bib);
      const cells = new Map(row?.vertical?.heights.map(({ height, cell }) => [height, cell ?? '']));
      const counted = row?.mark ? row.vertical : null;
      return [
        ...heights.map((height) => cells.get(text(height)) ?? ''),
        ...Array.from({ length: spare }, () => ''),
        decimal(row?.mark ?? ''),
        counted ? String(counted.failuresAtBest) : '',
        counted ? String(counted.failuresToBest) : '',
        row?.place ? String(row.place) : '',
      ];
    },
  };
}
