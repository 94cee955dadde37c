import type { MeetRow } from '#persistence';
import type { Wording } from '../labels/labels.js';
import type { PrintedDocument, PrintedTable } from '../printed-document.js';
import { column } from './head.js';

export interface ClubLine {
  readonly place: number;
  readonly club: string;
  readonly points: string;
}

export interface ClubTables {
  readonly isProvisional: boolean;
  readonly divisions: readonly { readonly name: string; readonly clubs: readonly ClubLine[] }[];
  readonly combined: readonly ClubLine[];
}

/** The clubs of a meet with their points, by division and altogether. */
export function clubList(meet: MeetRow, tables: ClubTables, wording: Wording): PrintedDocument {
  const { labels } = wording;
  return {
    title: `${labels.clubTable}: ${meet.name}`,
    lines: [
      `${meet.venue === '' ? '–' : meet.venue} · ${wording.day(meet.startsOn)}`,
      tables.isProvisional ? labels.provisional : labels.official,
    ],
    isLandscape: false,
    tables: [
      clubs(null, tables.combined, wording),
      ...tables.divisions.map(({ name, clubs: own }) => clubs(name, own, wording)),
    ],
    notes: tables.combined.length === 0 ? [labels.nobody] : [],
    signatures: [],
    foot: meet.name,
  };
}

function clubs(
  caption: string | null,
  lines: readonly ClubLine[],
  { labels, decimal }: Wording,
): PrintedTable {
  return {
    caption,
    isForWriting: false,
    columns: [
      column(labels.place, 1, 'right'),
      column(labels.club, 6, 'left', true),
      column(labels.points, 1.5, 'right'),
    ],
    rows: lines.map(({ place, club, points }) => [`${place}.`, club, decimal(points)]),
  };
}
