import { randomUUID } from 'node:crypto';
import type { ApiClient } from './client.js';
import { attemptOf, enterInJournal, staffedMeet, type StaffedMeet } from './circle.js';

export interface Person {
  readonly givenName: string;
  readonly familyName: string;
  readonly birthDate?: string;
}

export const ADULT: Person = { givenName: 'Maren', familyName: 'Thistlewood', birthDate: '1994-03-17' };
export const CHILD: Person = { givenName: 'Wenna', familyName: 'Oakfold', birthDate: '2013-02-11' };

const CLAIM =
  'kind relation counts whyNot outstanding sentence isBeaten mark before wind attempt bib name of sex age implementGrams decision';
const MARK = 'mark wind implementGrams onDate holder club attempt startingMark place competition { title }';
const LIST = `kind of event implementGrams sex age season isIndoor
  best { ${MARK} } wouldBe { ${MARK} } windAssisted { ${MARK} } history { mark { ${MARK} } relation until }`;

/** A club with its athletes, a meet, and competitions in which they compete for it. */
export class RecordScene {
  private constructor(
    readonly api: ApiClient,
    readonly meet: StaffedMeet,
    readonly clubId: string,
    readonly club: string,
    /** In the order in which they were given; their bibs count from 1. */
    readonly athletes: readonly string[],
  ) {}

  static async open(api: ApiClient, people: readonly Person[] = [ADULT, CHILD]): Promise<RecordScene> {
    const club = `Harriers ${randomUUID()}`;
    const meet = await staffedMeet(api, { name: `Mill Field ${randomUUID()} 2026` });
    const made = await api.data(
      `mutation ($name: String!) { clubCreate(input: { name: $name }) { club { id } } }`,
      { name: club },
      api.adminToken,
    );
    const clubId = made.clubCreate.club.id as string;
    const athletes: string[] = [];
    for (const person of people) {
      const { athleteCreate } = await api.data(
        `mutation ($input: AthleteCreateInput!) { athleteCreate(input: $input) { athlete { id } } }`,
        { input: { sex: 'W', clubId, ...person } },
        api.adminToken,
      );
      athletes.push(athleteCreate.athlete.id);
    }
    return new RecordScene(api, meet, clubId, club, athletes);
  }

  /** A competition of all athletes; by default a discus of women. */
  async competition(input: object = {}, meet = this.meet): Promise<RecordedCompetition> {
    const made = await this.api.data(
      `mutation ($input: CompetitionCreateInput!) { competitionCreate(input: $input) {
         competition { id } userErrors { code message } } }`,
      {
        input: {
          meetId: meet.id,
          title: 'Discus, women',
          event: 'DISCUS',
          categorySex: 'W',
          implementGrams: 1000,
          startsAt: '2026-06-13T10:00:00Z',
          ...input,
        },
      },
      meet.director,
    );
    const id = made.competitionCreate.competition.id as string;
    const competitors: string[] = [];
    for (const [at, athleteId] of this.athletes.entries()) {
      const { competitorEnter } = await this.api.data(
        `mutation ($input: CompetitorEnterInput!) { competitorEnter(input: $input) {
           competitor { id } userErrors { code } } }`,
        { input: { competitionId: id, athleteId, bib: String(at + 1) } },
        meet.director,
      );
      competitors.push(competitorEnter.competitor.id);
    }
    return new RecordedCompetition(this.api, meet, id, await this.api.token('official', id), competitors);
  }

  /** One starting mark of the club, as the director of the meet; the whole payload. */
  async starting(input: object, token = this.meet.director): Promise<any> {
    const answer = await this.api.data(
      `mutation ($input: StartingMarkAddInput!) { startingMarkAdd(input: $input) {
         startingMark { id mark counts replacesId } isReplay userErrors { code path } } }`,
      {
        input: {
          clubId: this.clubId,
          event: 'DISCUS',
          mark: '50.00',
          implementGrams: 1000,
          sex: 'W',
          onDate: '1998-06-06',
          ...input,
        },
      },
      token,
    );
    return answer.startingMarkAdd;
  }

  async clubLists(token: string | null = null, args = ''): Promise<any[]> {
    const query = `query ($id: ID!) { club(id: $id) { recordLists${args} { ${LIST} } } }`;
    return (await this.api.data(query, { id: this.clubId }, token)).club.recordLists;
  }

  async meetLists(token: string | null = null, meet = this.meet): Promise<any[]> {
    const query = `query ($id: ID!) { meet(id: $id) { recordLists { ${LIST} } } }`;
    return (await this.api.data(query, { id: meet.id }, token)).meet.recordLists;
  }

  async bests(athlete: number, token: string | null = this.meet.director): Promise<any[]> {
    const query = `query ($id: ID!) { athlete(id: $id) { bests { ${LIST} } } }`;
    return (await this.api.data(query, { id: this.athletes[athlete] }, token)).athlete.bests;
  }
}

/** What is done in one competition. */
export class RecordedCompetition {
  constructor(
    readonly api: ApiClient,
    readonly meet: StaffedMeet,
    readonly id: string,
    readonly official: string,
    readonly competitors: readonly string[],
  ) {}

  /** One entry, as the referee unless a token says otherwise; the whole payload. */
  enter(mutation: string, input: object, token: string = this.meet.referee): Promise<any> {
    return enterInJournal(this.api, token, mutation, { competitionId: this.id, ...input });
  }

  /** Records a cell of a card and gives the id of the attempt. */
  async record(bib: number, round: number, cell: string, more: object = {}): Promise<string> {
    const input = { competitorId: this.competitors[bib - 1], round, ...attemptOf(cell), ...more };
    const { entry, userErrors } = await this.enter('attemptRecord', input, this.official);
    if (entry === null) throw new Error(JSON.stringify(userErrors));
    return entry.id as string;
  }

  /** What an entry of a mutation answers under `wouldBe`. */
  async wouldBe(mutation: string, input: object, token: string = this.official): Promise<any[]> {
    const type = `${mutation[0]?.toUpperCase()}${mutation.slice(1)}Input`;
    const answer = await this.api.data(
      `mutation ($input: ${type}!) { ${mutation}(input: $input) { wouldBe { ${CLAIM} } userErrors { code message } } }`,
      { input: { competitionId: this.id, entryId: randomUUID(), ...input } },
      token,
    );
    if (answer[mutation].userErrors.length > 0) throw new Error(JSON.stringify(answer[mutation].userErrors));
    return answer[mutation].wouldBe;
  }

  async version(): Promise<number> {
    const query = `query ($id: ID!) { competition(id: $id) { version } }`;
    return (await this.api.data(query, { id: this.id }, this.official)).competition.version;
  }

  async claims(token: string | null = this.official): Promise<any[]> {
    const query = `query ($id: ID!) { competition(id: $id) { claims { ${CLAIM} } } }`;
    return (await this.api.data(query, { id: this.id }, token)).competition.claims;
  }

  /** Ratifies a mark as a club record unless the input says otherwise; the whole payload. */
  async ratify(attemptId: string, mark: string, input: object = {}, token?: string): Promise<any> {
    const answer = await this.api.data(
      `mutation ($input: RecordRatifyInput!) { recordRatify(input: $input) {
         decision { id decision holds mark despite recheck measuring authority } isReplay
         competition { version } userErrors { code path remedy } } }`,
      {
        input: {
          competitionId: this.id,
          attemptId,
          kind: 'CLUB_RECORD',
          decision: 'RATIFIED',
          mark,
          recheck: 'PASSED',
          measuring: 'STEEL_TAPE',
          reason: 'weighed and measured',
          ...input,
        },
      },
      token ?? this.meet.referee,
    );
    return answer.recordRatify;
  }
}

/** Lists in words: `SHOT 4000 W U20: 12.10, 12.10 | would be 12.30 | wind 12.40`. */
export function inWords(lists: readonly any[]): string[] {
  const marks = (some: readonly any[]): string => some.map(({ mark }) => mark).join(', ');
  return lists.map(({ event, implementGrams, sex, age, season, isIndoor, best, wouldBe, windAssisted }) => {
    const roof = isIndoor === null ? null : isIndoor ? 'indoor' : 'outdoor';
    const head = [event, implementGrams, sex, age, season, roof].filter((part) => part !== null).join(' ');
    const more = [
      ...(wouldBe.length > 0 ? [` | would be ${marks(wouldBe)}`] : []),
      ...(windAssisted.length > 0 ? [` | wind ${marks(windAssisted)}`] : []),
    ];
    return `${head}: ${marks(best) || 'none'}${more.join('')}`;
  });
}
