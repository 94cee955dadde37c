import type { PublicClubTable, PublicCompetition, PublicMeet, ResultLine, Row } from '#scoreboard';
import { writeCsv, type CsvExportColumn } from '../../platform/csv/csv-writer.js';

/* What everybody may see, as tables for spreadsheets: the same numbers as in the documents, a row for each line. */

/** Of what a result always has. */
const LINE: readonly CsvExportColumn<ResultLine>[] = [
  { name: 'place', holds: 'number', of: ({ place }) => place },
  { name: 'is_equal', holds: 'text', of: ({ isEqual }) => String(isEqual) },
  { name: 'bib', holds: 'text', of: ({ bib }) => bib },
  { name: 'name', holds: 'text', of: ({ name }) => name },
  { name: 'club', holds: 'text', of: ({ club }) => club },
  { name: 'mark', holds: 'number', of: ({ mark }) => mark },
  { name: 'wind', holds: 'number', of: ({ wind }) => wind },
  { name: 'status', holds: 'text', of: ({ status }) => status },
];

/** The result with every trial, the columns of which are named by their rounds or heights. */
export function competitionCsv({ kind, rounds, heights, rows }: PublicCompetition): string {
  const trials = kind === 'bar' ? heights.map(heightColumn) : roundColumns(rounds ?? 0);
  const columns: readonly CsvExportColumn<Row>[] = [
    ...LINE,
    { name: 'qualified', holds: 'text', of: ({ qualified }) => qualified },
    ...trials,
    { name: 'reason', holds: 'text', of: ({ reason }) => reason },
    { name: 'rule', holds: 'text', of: ({ rule }) => rule },
  ];
  return writeCsv(columns, rows);
}

function roundColumns(rounds: number): CsvExportColumn<Row>[] {
  const trialIn = ({ trials }: Row, round: number) => trials.find((trial) => trial.round === round) ?? null;
  return Array.from({ length: rounds }, (_, at): CsvExportColumn<Row>[] => [
    { name: `trial_${at + 1}`, holds: 'number', of: (row) => trialIn(row, at + 1)?.cell ?? null },
    { name: `wind_${at + 1}`, holds: 'number', of: (row) => trialIn(row, at + 1)?.wind ?? null },
  ]).flat();
}

function heightColumn(height: string, at: number): CsvExportColumn<Row> {
  return { name: `at_${height}`, holds: 'text', of: (row) => row.heights[at]?.cell ?? null };
}

/** Every competition of a meet with its first three; one without any has a row of its own. */
export function meetCsv({ competitions }: PublicMeet): string {
  type Line = {
    readonly competition: PublicMeet['competitions'][number];
    readonly leader: ResultLine | null;
  };
  const lines = competitions.flatMap((competition): Line[] =>
    competition.leaders.length === 0
      ? [{ competition, leader: null }]
      : competition.leaders.map((leader) => ({ competition, leader })),
  );
  const columns: readonly CsvExportColumn<Line>[] = [
    { name: 'competition', holds: 'text', of: ({ competition }) => competition.title },
    { name: 'event', holds: 'text', of: ({ competition }) => competition.event },
    { name: 'starts_at', holds: 'text', of: ({ competition }) => competition.startsAt },
    { name: 'facility', holds: 'text', of: ({ competition }) => competition.facility },
    { name: 'state', holds: 'text', of: ({ competition }) => competition.state },
    ...LINE.map(({ of, ...column }) => ({ ...column, of: ({ leader }: Line) => leader && of(leader) })),
  ];
  return writeCsv(columns, lines);
}

export function clubTableCsv({ clubs, divisions }: PublicClubTable): string {
  const lines = [
    ...clubs.map((line) => ({ ...line, division: null })),
    ...divisions.flatMap(({ name, clubs: own }) => own.map((line) => ({ ...line, division: name }))),
  ];
  return writeCsv(
    [
      { name: 'division', holds: 'text', of: ({ division }) => division },
      { name: 'place', holds: 'number', of: ({ place }) => place },
      { name: 'club', holds: 'text', of: ({ club }) => club },
      { name: 'points', holds: 'number', of: ({ points }) => points },
      { name: 'reason', holds: 'text', of: ({ reason }) => reason },
    ],
    lines,
  );
}
