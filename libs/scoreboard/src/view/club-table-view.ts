import type { ClubLine, PublicClubTable } from '../formats/club-table.js';
import { linked, type Shown } from './shown.js';
import { cell, headCell, nameCell, rowOf, tableView } from './table.js';
import { flat, h, heard, type Tree } from './tree.js';

/** The clubs of a meet with their points, altogether and by division. */
export function clubTableView(table: PublicClubTable, shown: Shown): Tree[] {
  const { wording, addresses, heading } = shown;
  const { say } = wording;
  const { meet, open } = table;
  return flat([
    h(
      'header',
      { class: 'head' },
      h(`h${heading}`, { class: 'title' }, say('clubTable')),
      h('p', { class: 'where' }, linked(addresses?.('meet', meet.id), meet.name)),
    ),
    h(
      'p',
      { class: 'provisional' },
      open.length > 0 ? say('provisional', { list: open.join(', ') }) : say('state.official'),
    ),
    clubs(null, table.clubs, shown),
    table.divisions.map(({ name, clubs: own }) => clubs(name, own, shown)),
  ]);
}

function clubs(division: string | null, lines: readonly ClubLine[], { wording }: Shown): Tree {
  const { say, place, decimal, language } = wording;
  return tableView({
    caption: division ?? heard(say('clubTable')),
    kind: 'clubs',
    head: [
      headCell('place', heard(say('place'))),
      headCell('who', say('club')),
      headCell('best', say('points')),
    ],
    rows: lines.map((line) =>
      rowOf(
        line.club,
        false,
        cell('place', place(line.place)),
        nameCell(
          h('span', { class: 'name' }, line.club),
          line.reason !== null && language === 'en' && h('span', { class: 'club' }, line.reason),
        ),
        cell('best', h('strong', { class: 'mark' }, decimal(line.points))),
      ),
    ),
  });
}
