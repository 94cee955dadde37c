import type { TestApi } from './api.js';

export interface MadeMeet {
  readonly meetId: string;
  readonly competitionId: string;
  /** Of the competition, after it was made. */
  readonly version: number;
  readonly director: string;
}

const MEET_CREATE = `mutation ($input: MeetCreateInput!) {
  meetCreate(input: $input) { meet { id } isReplay userErrors { code path message } }
}`;

const COMPETITION_CREATE = `mutation ($input: CompetitionCreateInput!) {
  competitionCreate(input: $input) { competition { id version } isReplay userErrors { code path message } }
}`;

/** A meet with one competition, for one test. What is given replaces the usual values. */
export async function makeMeet(api: TestApi, meet: object = {}, competition: object = {}): Promise<MadeMeet> {
  const { meetCreate } = await api.data(
    MEET_CREATE,
    {
      input: {
        name: 'Evening of throws',
        venue: 'Upper field',
        startsOn: '2026-05-30',
        timeZone: 'Europe/Lisbon',
        rules: 'WA',
        ...meet,
      },
    },
    api.adminToken,
  );
  const meetId = meetCreate.meet.id as string;
  const director = await api.token('director', meetId);
  const { competitionCreate } = await api.data(
    COMPETITION_CREATE,
    { input: { meetId, title: 'Discus women', event: 'DISCUS', ...competition } },
    director,
  );
  if (competitionCreate.userErrors.length > 0) throw new Error(JSON.stringify(competitionCreate.userErrors));
  return {
    meetId,
    competitionId: competitionCreate.competition.id,
    version: competitionCreate.competition.version,
    director,
  };
}

const ENTER = `mutation ($input: CompetitorEnterInput!) {
  competitorEnter(input: $input) {
    competitor { id bib position displayName club flight isGuest }
    competition { version }
    isReplay
    userErrors { code path message remedy }
  }
}`;

/** Enters somebody as the meet's director; the whole payload. */
export async function enter(api: TestApi, meet: MadeMeet, input: object): Promise<any> {
  const given = { competitionId: meet.competitionId, listedName: 'Nobody Known', bib: '1', ...input };
  return (await api.data(ENTER, { input: given }, meet.director)).competitorEnter;
}
