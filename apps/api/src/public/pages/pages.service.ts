import { announcerView, h, type Part, type PublicCompetition, type PublicMeet } from '#scoreboard';
import { Injectable } from '@nestjs/common';
import { FrontEnd } from '../../platform/web/front-end.js';
import { SnapshotsService } from '../snapshots.service.js';
import { globalId } from '../../platform/inputs/global-id.js';
import {
  athleteBoard,
  card,
  clubBoard,
  clubTableBoard,
  competitionBoard,
  embedCard,
  linksCard,
  meetBoard,
  pointsCard,
  shownTo,
} from './bodies.js';
import { competitionData, meetData, type AbsoluteAddress } from './json-ld.js';
import type { Page } from './page.js';
import { pageWord } from './page-words.js';
import { addressesFor, FOLDERS, type Visit } from './visit.js';

/** A page, and the states of the competitions on it: how long it may be kept depends on them. */
export interface Found {
  readonly page: Page;
  readonly states: readonly string[];
}

const LISTED_MEETS = 50;

/** The pages of a meet, its competitions, clubs and athletes; ids are UUIDs, `null`: not there, or not for the public. */
@Injectable()
export class PagesService {
  constructor(
    private readonly snapshots: SnapshotsService,
    private readonly frontEnd: FrontEnd,
  ) {}

  async index(visit: Visit): Promise<Found> {
    const { language } = visit;
    const meets = await this.snapshots.latestMeets(LISTED_MEETS);
    const address = addressesFor(visit);
    const { wording } = shownTo(visit, 'UTC');
    const lines = meets.map(({ id, name, venue, startsOn }) =>
      h(
        'li',
        {},
        h('a', { href: address('meet', globalId('Meet', id)) }, name),
        h('span', {}, [wording.day(startsOn), ...(venue === '' ? [] : [venue])].join(' · ')),
      ),
    );
    const title = pageWord('meets', language);
    const body = card(
      h('h1', {}, title),
      lines.length > 0 ? h('ul', { class: 'meets' }, lines) : h('p', {}, pageWord('noMeets', language)),
    );
    return { page: this.plain({ title, description: title, path: '/', body: [body] }), states: [] };
  }

  async meet(id: string, visit: Visit, asOf: string, kind: Page['kind']): Promise<Found | null> {
    const meet = await this.snapshots.meet(id);
    if (!meet) return null;
    const { name, venue, startsOn } = meet.meet;
    const { wording } = shownTo(visit, 'UTC');
    const description = [name, ...(venue === '' ? [] : [venue]), wording.day(startsOn)].join(', ');
    const board = meetBoard(meet, visit, asOf);
    const page = this.plain({
      ...{ title: name, description, path: `/meets/${meet.id}` },
      body: kind === 'plain' ? [card(board), ...this.aroundMeet(meet, visit)] : [board],
      data: meetData(meet, absolute(visit)),
    });
    return { page: { ...page, kind }, states: meet.competitions.map(({ state }) => state) };
  }

  async clubTable(id: string, visit: Visit, asOf: string, kind: Page['kind']): Promise<Found | null> {
    const table = await this.snapshots.clubTable(id);
    if (!table) return null;
    const { wording } = shownTo(visit, 'UTC');
    const title = `${wording.say('clubTable')}: ${table.meet.name}`;
    const board = clubTableBoard(table, visit, asOf);
    const links = this.links(visit, [
      [`/print/meets/${table.id}/club-table.pdf?lang=${visit.language}`, 'print'],
      [`/public/club-tables/${table.id}.csv`, 'table'],
      [`/public/club-tables/${table.id}.json`, 'data'],
    ]);
    const page = this.plain({
      ...{ title, description: title, path: `/meets/${table.id}/clubs` },
      trail: [[addressesFor(visit)('meet', table.id), table.meet.name]],
      body:
        kind === 'plain'
          ? [
              card(board),
              pointsCard(table, visit),
              links,
              embedCard('club-table', table.id, title, visit, this.frontEnd.element),
            ]
          : [board],
    });
    return { page: { ...page, kind }, states: [table.isProvisional ? 'running' : 'official'] };
  }

  async competition(id: string, visit: Visit, asOf: string, kind: Page['kind']): Promise<Found | null> {
    const competition = await this.snapshots.competition(id);
    if (!competition) return null;
    const { title, meet } = competition;
    const page = this.plain({
      ...{ title: `${title} · ${meet.name}`, description: this.summary(competition, visit) },
      path: `/competitions/${competition.id}`,
      trail: [[addressesFor(visit)('meet', meet.id), meet.name]],
      body: this.bodyOf(competition, visit, asOf, kind),
      data: kind === 'plain' ? competitionData(competition, absolute(visit)) : null,
    });
    const scripts = kind === 'announcer' ? ['/announcer.js'] : page.scripts;
    return {
      page: { ...page, kind, scripts: this.frontEnd.element ? scripts : [] },
      states: [competition.state],
    };
  }

  async club(id: string, visit: Visit, asOf: string, kind: Page['kind']): Promise<Found | null> {
    const club = await this.snapshots.club(id);
    if (!club) return null;
    const board = clubBoard(club, visit, asOf);
    const page = this.plain({
      ...{ title: club.name, description: club.name, path: `/clubs/${club.id}` },
      body:
        kind === 'plain'
          ? [
              card(board),
              this.links(visit, [[`/public/clubs/${club.id}.json`, 'data']]),
              embedCard('club', club.id, club.name, visit, this.frontEnd.element),
            ]
          : [board],
    });
    return { page: { ...page, kind }, states: statesOf(club.meets) };
  }

  async athlete(id: string, visit: Visit): Promise<Found | null> {
    const athlete = await this.snapshots.athlete(id);
    if (!athlete) return null;
    const page = this.plain({
      ...{ title: athlete.name, description: athlete.name, path: `/athletes/${athlete.id}` },
      body: [
        card(athleteBoard(athlete, visit)),
        this.links(visit, [[`/public/athletes/${athlete.id}.json`, 'data']]),
      ],
    });
    return { page, states: statesOf(athlete.meets) };
  }

  /** For an address that leads nowhere. */
  nothing(visit: Visit): Page {
    const title = pageWord('notHere', visit.language);
    return this.plain({ title, description: title, path: '/', body: [card(h('h1', {}, title))] });
  }

  private plain(page: Pick<Page, 'title' | 'description' | 'path' | 'body'> & Partial<Page>): Page {
    const scripts = this.frontEnd.element ? [this.frontEnd.element.address] : [];
    return { kind: 'plain', trail: [], data: null, scripts, ...page };
  }

  private bodyOf(
    competition: PublicCompetition,
    visit: Visit,
    asOf: string,
    kind: Page['kind'],
  ): readonly Part[] {
    const { id, title, meet } = competition;
    if (kind === 'announcer') {
      const shown = shownTo(visit, meet.timeZone);
      return [h('sectorline-announcer', { competition: id }, announcerView(competition, shown))];
    }
    const board = competitionBoard(competition, visit, asOf);
    if (kind !== 'plain') return [board];
    const links = this.links(visit, [
      [`/print/competitions/${id}/result.pdf?lang=${visit.language}`, 'print'],
      [`/public/competitions/${id}.csv`, 'table'],
      [`/public/competitions/${id}.json`, 'data'],
      [`/public/competitions/${id}.sheet.json`, 'sheet'],
      [`/competitions/${id}/announcer?lang=${visit.language}`, 'announcer'],
      [`/competitions/${id}/screen?lang=${visit.language}`, 'screen'],
    ]);
    return [card(board), links, embedCard('competition', id, title, visit, this.frontEnd.element)];
  }

  private aroundMeet({ id, meet, hasClubTable }: PublicMeet, visit: Visit): readonly Part[] {
    const { language } = visit;
    const { wording } = shownTo(visit, 'UTC');
    const clubs = `/meets/${id}/clubs?lang=${language}`;
    return [
      hasClubTable && card(h('p', {}, h('a', { href: clubs }, wording.say('clubTable')))),
      this.links(visit, [
        [`/print/meets/${id}/first-three.pdf?lang=${language}`, 'print'],
        [`/public/meets/${id}.csv`, 'table'],
        [`/public/meets/${id}.json`, 'data'],
        [`/public/meets/${id}.ics`, 'calendar'],
        [`/meets/${id}/screen?lang=${language}`, 'screen'],
      ]),
      embedCard('meet', id, meet.name, visit, this.frontEnd.element),
    ];
  }

  private links(visit: Visit, links: readonly (readonly [string, Parameters<typeof pageWord>[0]])[]): Part {
    return linksCard(
      visit,
      links.map(([address, word]) => [address, pageWord(word, visit.language)] as const),
    );
  }

  /** What a link to it says in a message. */
  private summary({ rows, state, meet }: PublicCompetition, visit: Visit): string {
    const { wording } = shownTo(visit, meet.timeZone);
    const leaders = rows
      .filter(({ place }) => place !== null && place <= 3)
      .map(({ place, name, mark }) => `${wording.place(place!)} ${name} ${wording.decimal(mark ?? '')}`);
    return [wording.sayCode('state', state), ...leaders].join(' · ');
  }
}

function absolute({ origin }: Visit): AbsoluteAddress {
  return (kind, id) => `${origin}/${FOLDERS[kind]}/${id}`;
}

function statesOf(
  meets: readonly { readonly competitions: readonly { readonly state: string }[] }[],
): string[] {
  return meets.flatMap(({ competitions }) => competitions.map(({ state }) => state));
}
