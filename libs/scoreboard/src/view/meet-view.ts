import type { PublicAthlete, PublicClub, ClubCompetition } from '../formats/club.js';
import type { MeetCompetition, PublicMeet } from '../formats/meet.js';
import type { ResultLine } from '../formats/shared.js';
import { linked, type Shown } from './shown.js';
import { cell, headCell, nameCell, rowOf, tableView } from './table.js';
import { delayText, statusText, whereText } from './sentences.js';
import { flat, h, heard, seen, type Part, type Tree } from './tree.js';
import type { Wording } from '../words/wording.js';

/** A meet at a glance: when, what, where it stands, who leads. */
export function meetView(meet: PublicMeet, shown: Shown): Tree[] {
  const { wording, addresses, heading } = shown;
  const { name, venue, startsOn } = meet.meet;
  return flat([
    h(
      'header',
      { class: 'head' },
      h(
        `h${heading}`,
        { class: 'title' },
        linked(heading > 1 ? addresses?.('meet', meet.id) : undefined, name),
      ),
      h(
        'p',
        { class: 'where' },
        h('time', { datetime: startsOn }, wording.day(startsOn)),
        venue !== '' && h('span', {}, venue),
      ),
    ),
    tableView({
      caption: heard(wording.say('competitions')),
      kind: 'overview',
      head: [
        headCell('at', heard(wording.say('time'))),
        headCell('who', wording.say('competitions')),
        headCell('leader', wording.place(1)),
      ],
      rows: meet.competitions.map((one) => competitionLine(one, shown)),
    }),
  ]);
}

function competitionLine(competition: MeetCompetition, { wording, addresses }: Shown): Tree {
  const { id, title, startsAt, state, delay, stop, facility, height, leaders } = competition;
  const { say, time, sayCode } = wording;
  const bar = height === null ? null : { height, next: null };
  const where = whereText({ ...competition, bar, isJumpOff: false }, wording);
  return rowOf(
    id,
    state === 'running',
    cell('at', startsAt === null ? seen('–') : h('time', { datetime: startsAt }, time(startsAt))),
    nameCell(
      h('span', { class: 'name' }, linked(addresses?.('competition', id), title)),
      h(
        'span',
        { class: 'club' },
        h('span', { class: 'state', 'data-state': state }, sayCode('state', state)),
        where !== null && [' ', h('span', {}, where)],
        facility !== null && [' ', h('span', { class: 'facility' }, facility)],
      ),
      stop !== null && h('span', { class: 'stop' }, say(`stop.${stop.cause}`)),
      delay !== null && h('span', { class: 'delay' }, delayText(delay, wording)),
    ),
    cell('leader', leaderView(leaders, wording)),
  );
}

function leaderView(leaders: readonly ResultLine[], wording: Wording): Part {
  const first = leaders.filter(({ place }) => place === 1);
  return first.map(({ name, club, mark }) => [
    h(
      'span',
      { class: 'name' },
      h('span', { class: 'first' }, wording.place(1)),
      ' ',
      name,
      mark !== null && [' ', h('strong', { class: 'mark' }, wording.decimal(mark))],
    ),
    h('span', { class: 'club' }, club ?? ' '),
  ]);
}

/** How those stand who compete for a club, or one athlete: meet by meet. */
export function clubResultsView(results: PublicClub | PublicAthlete, shown: Shown): Tree[] {
  const { wording, addresses, heading } = shown;
  const isClub = results.format.includes('club');
  const kind = isClub ? 'club' : 'athlete';
  return flat([
    h(
      'header',
      { class: 'head' },
      h(
        `h${heading}`,
        { class: 'title' },
        linked(heading > 1 ? addresses?.(kind, results.id) : undefined, results.name),
      ),
    ),
    results.meets.length === 0 && h('p', {}, wording.say('noResults')),
    results.meets.map(({ meet, competitions }) =>
      h(
        'section',
        { class: 'of-meet' },
        h(
          `h${heading + 1}`,
          {},
          linked(addresses?.('meet', meet.id), meet.name),
          ' ',
          h('time', { class: 'club', datetime: meet.startsOn }, wording.day(meet.startsOn)),
        ),
        tableView({
          caption: heard(meet.name),
          kind: 'results',
          head: [
            headCell('place', heard(wording.say('place'))),
            headCell('who', wording.say(isClub ? 'competitor' : 'competitions')),
            headCell('best', wording.say('best')),
          ],
          rows: competitions.map((one) => linesOf(one, isClub, shown)),
        }),
      ),
    ),
  ]);
}

function linesOf(competition: ClubCompetition, isClub: boolean, { wording, addresses }: Shown): Part {
  const { id, title, state, lines } = competition;
  const event = linked(addresses?.('competition', id), title);
  const where = [h('span', { class: 'state', 'data-state': state }, wording.sayCode('state', state))];
  return lines.map((line) => {
    const status = statusText(line, wording);
    return rowOf(
      `${id} ${line.competitor}`,
      false,
      cell(
        'place',
        line.place === null ? seen('–') : [wording.place(line.place), line.isEqual && seen(' =')],
      ),
      nameCell(
        h(
          'span',
          { class: 'name' },
          isClub
            ? linked(line.athlete === null ? undefined : addresses?.('athlete', line.athlete), line.name)
            : event,
        ),
        h('span', { class: 'club' }, isClub ? [event, ' ', where] : where),
      ),
      cell(
        'best',
        line.mark !== null && h('strong', { class: 'mark' }, wording.decimal(line.mark)),
        line.wind !== null && h('span', { class: 'wind' }, wording.decimal(line.wind)),
        status !== null && h('span', { class: 'status-word' }, status),
      ),
    );
  });
}
