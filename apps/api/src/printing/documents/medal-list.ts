import type { CompetitionRow, MeetRow } from '#persistence';
import type { ResultTable } from '../../results/results.service.js';
import type { Wording } from '../labels/labels.js';
import type { PrintedDocument } from '../printed-document.js';
import { column } from './head.js';

export interface FinalOfMeet {
  readonly competition: CompetitionRow;
  readonly table: ResultTable;
}

/** The first three places of every final of a meet; equal places are all listed. */
export function medalList(meet: MeetRow, finals: readonly FinalOfMeet[], wording: Wording): PrintedDocument {
  const { labels, decimal } = wording;
  const rows = finals.flatMap(({ competition, table }) =>
    table.rows
      .filter(({ place }) => place !== null && place <= 3)
      .map((row) => [
        competition.title,
        `${row.place ?? ''}.`,
        row.name,
        row.club ?? '',
        decimal(row.mark ?? ''),
        table.isOfficial ? '' : labels.asItStands,
      ]),
  );
  return {
    title: `${labels.medals}: ${meet.name}`,
    lines: [`${meet.venue === '' ? '–' : meet.venue} · ${wording.day(meet.startsOn)}`],
    isLandscape: false,
    tables: [
      {
        caption: null,
        isForWriting: false,
        columns: [
          column(labels.event, 3.4, 'left', true),
          column(labels.place, 0.9, 'right'),
          column(labels.name, 3),
          column(labels.club, 2.4),
          column(labels.mark, 1.3, 'right'),
          column('', 1.6),
        ],
        rows,
      },
    ],
    notes: rows.length === 0 ? [labels.nobody] : [],
    signatures: [],
    foot: meet.name,
  };
}
