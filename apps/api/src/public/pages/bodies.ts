import {
  clubResultsView,
  clubTableView,
  competitionView,
  h,
  meetView,
  wordingOf,
  type Part,
  type PublicAthlete,
  type PublicClub,
  type PublicClubTable,
  type PublicCompetition,
  type PublicMeet,
  type Shown,
  type Tree,
} from '#scoreboard';
import type { ServedElement } from '../../platform/web/front-end.js';
import { pageWord } from './page-words.js';
import { addressesFor, type Visit } from './visit.js';

/** What can be put on other pages, by the attribute of the element that names it. */
export type Embeddable = 'competition' | 'meet' | 'club' | 'club-table';

export function shownTo(visit: Visit, timeZone: string): Shown {
  return { wording: wordingOf(visit.language, timeZone), addresses: addressesFor(visit), heading: 1 };
}

/** The table as it is now, inside the element that keeps it so where scripts run. */
export function liveBoard(
  what: Embeddable,
  id: string,
  visit: Visit,
  asOf: string,
  view: Tree[],
  shown: Shown,
): Tree {
  const { wording } = shown;
  const time = wording.time(asOf);
  return h(
    'sectorline-results',
    { [what]: id, heading: 1, lang: visit.language },
    h(
      'div',
      { class: 'board' },
      view,
      h(
        'footer',
        { class: 'foot' },
        h('p', { class: 'fresh' }, h('time', { datetime: asOf }, wording.say('asOf', { time }))),
      ),
    ),
  );
}

export function competitionBoard(competition: PublicCompetition, visit: Visit, asOf: string): Tree {
  const shown = shownTo(visit, competition.meet.timeZone);
  return liveBoard('competition', competition.id, visit, asOf, competitionView(competition, shown), shown);
}

export function meetBoard(meet: PublicMeet, visit: Visit, asOf: string): Tree {
  const shown = shownTo(visit, meet.meet.timeZone);
  return liveBoard('meet', meet.id, visit, asOf, meetView(meet, shown), shown);
}

export function clubTableBoard(table: PublicClubTable, visit: Visit, asOf: string): Tree {
  const shown = shownTo(visit, table.meet.timeZone);
  return liveBoard('club-table', table.id, visit, asOf, clubTableView(table, shown), shown);
}

export function clubBoard(club: PublicClub, visit: Visit, asOf: string): Tree {
  const shown = shownTo(visit, club.meets[0]?.meet.timeZone ?? 'UTC');
  return liveBoard('club', club.id, visit, asOf, clubResultsView(club, shown), shown);
}

export function athleteBoard(athlete: PublicAthlete, visit: Visit): Tree {
  const shown = shownTo(visit, athlete.meets[0]?.meet.timeZone ?? 'UTC');
  return h('div', { class: 'board' }, clubResultsView(athlete, shown));
}

export function card(...parts: readonly Part[]): Tree {
  return h('section', { class: 'card' }, parts);
}

/** Other forms of the same, as address and text. */
export function linksCard(visit: Visit, links: readonly (readonly [address: string, text: string])[]): Tree {
  return card(
    h('h2', {}, pageWord('more', visit.language)),
    h(
      'ul',
      { class: 'links' },
      links.map(([address, text]) => h('li', {}, h('a', { href: address }, text))),
    ),
  );
}

/** The line that puts the table on another page; nothing where the element was not built. */
export function embedCard(
  what: Embeddable,
  id: string,
  title: string,
  visit: Visit,
  element: ServedElement | null,
): Part {
  if (element === null) return null;
  const { language } = visit;
  return card(
    h(
      'details',
      {},
      h('summary', {}, pageWord('embed', language)),
      h('p', {}, pageWord('embedHow', language)),
      h(
        'pre',
        { class: 'line', tabindex: 0, role: 'group', 'aria-label': pageWord('embed', language) },
        h('code', {}, embedLine(what, id, title, visit.origin, element)),
      ),
    ),
  );
}

export function embedLine(
  what: Embeddable,
  id: string,
  title: string,
  origin: string,
  { address, integrity }: ServedElement,
): string {
  const name = title.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  return [
    `<script type="module" src="${origin}${address}" integrity="${integrity}" crossorigin></script>`,
    `<sectorline-results ${what}="${id}"><iframe src="${origin}/embed/${what}s/${id}" title="${name}" width="100%" height="640" loading="lazy"></iframe></sectorline-results>`,
  ].join('\n');
}

/** Where the points of the clubs come from. */
export function pointsCard({ events, meet }: PublicClubTable, visit: Visit): Part {
  const { wording } = shownTo(visit, meet.timeZone);
  const { language } = visit;
  if (events.length === 0) return null;
  return card(
    h('h2', {}, pageWord('pointsFrom', language)),
    h(
      'ul',
      { class: 'points' },
      events.map(({ title, isEntered, points }) =>
        h(
          'li',
          {},
          h('strong', {}, title),
          isEntered && ` (${pageWord('byHand', language)})`,
          `: ${points.map(({ club, points: own }) => `${club} ${wording.decimal(own)}`).join(', ') || '–'}`,
        ),
      ),
    ),
  );
}
