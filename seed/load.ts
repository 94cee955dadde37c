import { Client } from './client.js';
import { makeMatch } from './club-match.js';
import { planDay } from './day-plan.js';
import { openDiscusTent } from './discus-tent.js';
import { idOf } from './ids.js';
import type { DemoCompetition, Line } from './competition.js';
import { drawHammerFinal } from './hammer.js';
import { HEPTATHLON_SHOT, runHeptathlon } from './heptathlon.js';
import { groupJavelins, JAVELIN_VETERANS } from './javelin-group.js';
import { protestLongJump } from './long-jump-protest.js';
import { COMPETITIONS, DISCUS, JAVELIN, LONG_JUMP, MEET, SHOT } from './meet.js';
import { CLUBS, PEOPLE } from './people.js';
import { enterRecords, ratifyShot } from './records.js';
import { runAtBar } from './run-at-bar.js';
import { runInRounds } from './run-in-rounds.js';
import { SQUAD_IDS } from './squad/load-squad.js';

export { enterSquad, loadSquad } from './squad/load-squad.js';

export const DEMO = {
  meetId: idOf(MEET.name),
  runningCompetitionId: idOf(DISCUS.title),
  coachedAthleteIds: [idOf(DISCUS.lines[0]!.who), ...SQUAD_IDS],
};

/**
 * Enters the demonstration meet through the API: the director sets it up, officials record, the referee signs.
 * Whatever is there already stays; so a load that was cut short is run again. The meet is published last.
 */
export async function loadDemo(baseUrl: string, adminToken: string): Promise<void> {
  const admin = new Client(baseUrl, adminToken);
  const { meet } = await admin.call<{ meet: { id: string } }>(
    'meetCreate',
    { id: DEMO.meetId, ...MEET },
    'meet { id }',
  );
  const post = async (role: string, on: string, label: string): Promise<Client> => {
    const { token } = await admin.call<{ token: string }>('tokenIssue', { role, on, label }, 'token');
    return new Client(baseUrl, token);
  };
  const director = await post('DIRECTOR', meet.id, 'Meet director');
  const athletes = await enterPeople(director);
  const ids = new Map<string, string>();
  for (const [index, competition] of COMPETITIONS.entries()) {
    const made = await setUp(director, meet.id, competition, athletes, index);
    ids.set(competition.title, made);
    const official = await post('OFFICIAL', made, `Tablet, ${competition.title}`);
    const implementIds = await prepare(official, meet.id, made, competition);
    await run(official, made, competition, implementIds);
    if (competition === HEPTATHLON_SHOT) await runHeptathlon(director, official, meet.id, athletes, made);
    if (competition.signedOff) await signOff(await post('REFEREE', meet.id, 'Referee'), made, competition);
  }
  await enterRecords(director, meet.id);
  const referee = await post('REFEREE', meet.id, 'Referee');
  await ratifyShot(referee, ids.get(SHOT.title)!);
  const longJump = ids.get(LONG_JUMP.title)!;
  await protestLongJump(referee, longJump, await startListOf(referee, longJump));
  await drawHammerFinal(director, meet.id, ids);
  const [boys, veterans] = [JAVELIN, JAVELIN_VETERANS].map(({ title }) => ids.get(title)!);
  await groupJavelins(director, meet.id, boys!, veterans!, (id) => startListOf(director, id));
  await planDay(director, meet.id, ids, new Map([[JAVELIN.title, [veterans!]]]));
  await makeMatch(director, meet.id);
  await director.call('meetPublish', { meetId: meet.id }, 'meet { id }');
}

/** Clubs and athletes; gives the athletes' ids by name. */
async function enterPeople(director: Client): Promise<ReadonlyMap<string, string>> {
  const clubs = new Map<string, string>();
  for (const name of CLUBS) {
    const { club } = await director.call<{ club: { id: string } }>(
      'clubCreate',
      { id: idOf(name), name },
      'club { id }',
    );
    clubs.set(name, club.id);
  }
  const athletes = new Map<string, string>();
  for (const [name, { given, family, sex, born, club }] of Object.entries(PEOPLE)) {
    const input = {
      id: idOf(name),
      givenName: given,
      familyName: family,
      sex,
      birthDate: born,
      clubId: club === null ? null : clubs.get(club),
    };
    const { athlete } = await director.call<{ athlete: { id: string } }>(
      'athleteCreate',
      input,
      'athlete { id }',
    );
    athletes.set(name, athlete.id);
  }
  return athletes;
}

/** The competition with its start list; gives its id. Bibs count on from one competition to the next. */
async function setUp(
  director: Client,
  meetId: string,
  { title, input, heights, lines }: DemoCompetition,
  athletes: ReadonlyMap<string, string>,
  index: number,
): Promise<string> {
  const { competition } = await director.call<{ competition: { id: string } }>(
    'competitionCreate',
    { id: idOf(title), meetId, title, ...input, vertical: heights ? { heights } : null },
    'competition { id }',
  );
  for (const [at, { who, flight }] of lines.entries()) {
    const entry = {
      id: idOf(`${title}: ${who}`),
      competitionId: competition.id,
      athleteId: athletes.get(who),
      bib: String(100 * (index + 1) + at + 1),
      flight: flight ?? null,
    };
    await director.call('competitorEnter', entry, 'competitor { id }');
  }
  return competition.id;
}

/** What comes before the first trial, at the discus: gives by name the implements that are thrown. */
async function prepare(
  official: Client,
  meetId: string,
  competitionId: string,
  competition: DemoCompetition,
): Promise<ReadonlyMap<string, string>> {
  if (competition !== DISCUS) return new Map();
  const list = await startListOf(official, competitionId);
  const reporting = list.map(({ id }, index) => ({ line: competition.lines[index]!, competitorId: id }));
  return openDiscusTent(official, meetId, competition, reporting);
}

/** Records as officials do: who does not start, then whoever is called, until the card says no more. */
async function run(
  official: Client,
  competitionId: string,
  competition: DemoCompetition,
  implementIds: ReadonlyMap<string, string>,
): Promise<void> {
  const list = await startListOf(official, competitionId);
  for (const line of competition.lines) {
    if (line.didNotStart) await markAbsent(official, competitionId, competition, line, list);
  }
  const lines = new Map(list.map(({ id }, index) => [id, competition.lines[index]!]));
  const place = { official, competitionId, competition, lines, implementIds };
  await (competition.heights ? runAtBar(place, competition.heights) : runInRounds(place));
}

async function startListOf(official: Client, id: string): Promise<readonly { readonly id: string }[]> {
  const query = `query ($id: ID!) { competition(id: $id) { startList { id } } }`;
  const { startList } = await official.send<{ startList: { id: string }[] }>(query, 'competition', { id });
  return startList;
}

async function markAbsent(
  official: Client,
  competitionId: string,
  { title, lines }: DemoCompetition,
  line: Line,
  list: readonly { readonly id: string }[],
): Promise<void> {
  const input = {
    competitionId,
    entryId: idOf(`${title}: ${line.who} does not start`),
    competitorId: list[lines.indexOf(line)]?.id,
    status: 'DNS',
  };
  await official.call('competitorStartSet', input, 'entry { standing }');
}

async function signOff(referee: Client, id: string, { title }: DemoCompetition): Promise<void> {
  const query = `query ($id: ID!) { competition(id: $id) { version status } }`;
  const { version, status } = await referee.send<{ version: number; status: string }>(query, 'competition', {
    id,
  });
  if (status === 'OFFICIAL') return;
  const input = { competitionId: id, entryId: idOf(`${title}: signed`), expectedVersion: version };
  await referee.call('competitionSignOff', input, 'entry { standing }');
}
