import type { Call, PublicCompetition } from '../formats/competition.js';
import type { Wording } from '../words/wording.js';
import { rowViews } from './row-view.js';
import { delayText, whereText } from './sentences.js';
import { linked, type Shown } from './shown.js';
import { flat, h, heard, type Part, type Tree } from './tree.js';
import { headCell, tableView } from './table.js';

/** One competition: what it is and where it stands, who is up, and the table. */
export function competitionView(competition: PublicCompetition, shown: Shown): Tree[] {
  const { wording } = shown;
  return flat([
    head(competition, shown),
    h('div', { class: 'now' }, now(competition, wording)),
    competition.isDisputed && h('p', { class: 'disputed' }, wording.say('disputed')),
    table(competition, shown),
  ]);
}

function head(competition: PublicCompetition, { wording, addresses, heading }: Shown): Tree {
  const { title, meet, state, changedAt } = competition;
  const where = whereText(competition, wording);
  return h(
    'header',
    { class: 'head' },
    h(
      `h${heading}`,
      { class: 'title' },
      linked(heading > 1 ? addresses?.('competition', competition.id) : undefined, title),
    ),
    h(
      'p',
      { class: 'where' },
      h('span', { class: 'state', 'data-state': state }, wording.sayCode('state', state)),
      where !== null && h('span', { class: 'round' }, where),
      linked(addresses?.('meet', meet.id), meet.name),
      changedAt !== null &&
        h(
          'span',
          { class: 'changed' },
          h('time', { datetime: changedAt }, wording.say('changed', { time: wording.time(changedAt) })),
        ),
    ),
  );
}

function now(competition: PublicCompetition, wording: Wording): Part {
  const { stop, state, calls, startsAt, delay, rows } = competition;
  const { say, time } = wording;
  if (stop !== null) {
    return [
      h('p', { class: 'stop' }, h('strong', {}, say(`stop.${stop.cause}`))),
      stop.notBefore !== null && h('p', {}, say('stop.until', { time: time(stop.notBefore) })),
    ];
  }
  if (state === 'scheduled') {
    return [
      delay !== null && h('p', { class: 'delay' }, delayText(delay, wording)),
      delay === null &&
        startsAt !== null &&
        h('p', {}, h('time', { datetime: startsAt }, say('starts', { time: time(startsAt) }))),
      h('p', {}, say('entered', { n: rows.length })),
    ];
  }
  if (calls.length === 0) return h('p', {}, wording.sayCode('state', state));
  const turns = [say('up'), say('next'), say('then')];
  return h(
    'ol',
    { class: 'calls' },
    calls.map((call, at) => h('li', {}, h('span', { class: 'turn' }, turns[at] ?? ''), ' ', callView(call))),
  );
}

function callView({ bib, name }: Call): Tree {
  const isBibAlone = name === `#${bib}`;
  return h('span', { class: 'called' }, isBibAlone ? name : [h('span', { class: 'bib' }, bib), ' ', name]);
}

function table(competition: PublicCompetition, shown: Shown): Tree {
  const { say } = shown.wording;
  const { rounds, title, kind } = competition;
  const numbers = Array.from({ length: rounds ?? 0 }, (_, at) => h('span', {}, String(at + 1)));
  const head = [
    headCell('place', heard(say('place'))),
    headCell('who', say('competitor')),
    headCell(
      'trials',
      heard(say('trials')),
      numbers.length > 0 && h('span', { class: 'numbers', 'aria-hidden': 'true' }, numbers),
    ),
    headCell('best', say('best')),
  ];
  return tableView({ caption: heard(title), kind, head, rows: rowViews(competition, shown) });
}
