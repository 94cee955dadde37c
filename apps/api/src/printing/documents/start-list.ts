import type { RosterLine } from '../../platform/roster/roster.js';
import type { PrintedDocument } from '../printed-document.js';
import { column, footOf, headOf, type Printed } from './head.js';
import { byFlight, listLines } from './list-lines.js';

/** Who competes, in the order of competition. */
export function startList(printed: Printed, roster: readonly RosterLine[], whole: boolean): PrintedDocument {
  const { competition, wording } = printed;
  const { labels } = wording;
  const lines = listLines(roster, competition, wording, whole);
  const hasImplements = lines.some(({ implement }) => implement !== '');
  return {
    title: `${labels.startList}: ${competition.title}`,
    lines: headOf(printed),
    isLandscape: false,
    tables: byFlight(lines).map(({ flight, lines: own }) => ({
      caption: flight === null ? null : `${labels.flight} ${flight}`,
      isForWriting: false,
      columns: [
        column(labels.order, 1, 'right'),
        column(labels.bib, 1.2, 'right'),
        column(labels.name, 5, 'left', true),
        column(labels.club, 4),
        ...(hasImplements ? [column(labels.implement, 1.6, 'right')] : []),
      ],
      rows: own.map(({ order, bib, name, club, implement }) => [
        ...[order, bib, name, club],
        ...(hasImplements ? [implement] : []),
      ]),
    })),
    notes: lines.length === 0 ? [labels.nobody] : [],
    signatures: [],
    foot: footOf(printed),
  };
}
