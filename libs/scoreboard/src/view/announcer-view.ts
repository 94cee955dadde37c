import type { PublicCompetition, Row } from '../formats/competition.js';
import { needTexts, statusText, whereText } from './sentences.js';
import type { Shown } from './shown.js';
import { flat, h, type Part, type Tree } from './tree.js';
import type { Wording } from '../words/wording.js';

const LEADING = 3;

/** For who announces: the next three with what is at stake for each, then who leads. */
export function announcerView(competition: PublicCompetition, { wording, heading }: Shown): Tree[] {
  const { say, sayCode, place, decimal } = wording;
  const { title, state, stop, calls, rows } = competition;
  const where = whereText(competition, wording) ?? sayCode('state', state);
  const byId = new Map(rows.map((row) => [row.competitor, row]));
  const words = [say('up'), say('next'), say('then')];
  const leaders = rows.filter((row) => row.place !== null && row.place <= LEADING);
  return flat([
    h(`h${heading}`, { class: 'turn-name' }, title),
    h('p', { class: 'stake' }, where),
    stop !== null && h('p', { class: 'stake' }, h('strong', {}, say(`stop.${stop.cause}`))),
    h(
      'ol',
      { class: 'turns' },
      calls.map(({ competitor, bib, name, club }, at) =>
        h(
          'li',
          {},
          h('p', { class: 'turn-word' }, `${words[at] ?? ''} · ${bib}`),
          h('p', { class: 'turn-name' }, name),
          h('p', { class: 'stake' }, club ?? ' '),
          stakeOf(byId.get(competitor), wording),
        ),
      ),
    ),
    leaders.length > 0 &&
      h(
        'ol',
        { class: 'leaders stake' },
        leaders.map((row) =>
          h(
            'li',
            {},
            `${place(row.place!)} ${row.name}, ${row.club ?? ''} `,
            h('strong', {}, decimal(row.mark ?? '')),
          ),
        ),
      ),
  ]);
}

function stakeOf(row: Row | undefined, wording: Wording): Part {
  if (!row) return null;
  const { place, decimal, say } = wording;
  const standing =
    row.place === null ? (statusText(row, wording) ?? '') : `${place(row.place)}, ${decimal(row.mark ?? '')}`;
  const needs = row.needs === null ? [] : needTexts(row.needs, wording).map(({ text }) => text);
  return h(
    'p',
    { class: 'stake' },
    [standing, ...(needs.length > 0 ? [`${say('needs')} ${needs.join(' · ')}`] : [])].join('. '),
  );
}
