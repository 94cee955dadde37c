import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet, staffedMeet, type StaffedMeet } from '../support/circle.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const FACILITIES = [
  { key: 'cage', name: 'Cage, north' },
  { key: 'hammer', name: 'Hammer circle' },
  { key: 'javelin', name: 'Javelin runway' },
];
const ONE_CAGE = [{ facilities: ['cage', 'hammer'], reason: 'one cage' }];

const TIMETABLE = `timetable {
  revision reason facilities { key name } sharedGrounds { facilities reason }
  slots { competitions { id startsAt } facility { key } reportAt startsAt endsAt }
  clashes { slots kind reason competitors }
}`;
const ERRORS = `userErrors { code path message remedy }`;

const at = (clock: string): string => `2026-06-13T${clock}:00.000Z`;
const slot = (circle: Circle, facility: string, clock: string, minutes = 60): object => ({
  competitionIds: [circle.competition.id],
  facility,
  startsAt: at(clock),
  minutes,
});

async function set(meet: StaffedMeet, slots: object[], changes: object = {}): Promise<any> {
  const input = {
    meetId: meet.id,
    expectedRevision: 0,
    facilities: FACILITIES,
    sharedGrounds: ONE_CAGE,
    slots,
    ...changes,
  };
  const query = `mutation ($input: TimetableSetInput!) { timetableSet(input: $input) { ${TIMETABLE} ${ERRORS} } }`;
  return (await api.data(query, { input }, meet.director)).timetableSet;
}

async function delay(meet: StaffedMeet, circle: Circle, minutes: number, changes: object = {}): Promise<any> {
  const input = {
    competitionId: circle.competition.id,
    expectedRevision: 1,
    minutes,
    reason: 'the cage gate had to be mended',
    ...changes,
  };
  const query = `mutation ($input: TimetableDelayInput!) { timetableDelay(input: $input) { ${TIMETABLE} movedCompetitions ${ERRORS} } }`;
  return (await api.data(query, { input }, meet.director)).timetableDelay;
}

/** Two competitions of one meet, each with three competitors. */
async function day(): Promise<{ meet: StaffedMeet; discus: Circle; hammer: Circle; javelin: Circle }> {
  const meet = await staffedMeet(api);
  return {
    meet,
    discus: await Circle.open(api, discusSheet(3), meet),
    hammer: await Circle.open(api, discusSheet(3, { event: 'hammer' }), meet),
    javelin: await Circle.open(api, discusSheet(3, { event: 'javelin' }), meet),
  };
}

describe('a timetable', () => {
  it('says when to report, when it starts and when it is expected to end; competitions start with it', async () => {
    const { meet, discus } = await day();
    const { timetable } = await set(meet, [{ ...slot(discus, 'cage', '14:00', 90), reportMinutes: 20 }]);
    expect(timetable).toMatchObject({ revision: 1, facilities: FACILITIES, clashes: [] });
    expect(timetable.slots).toEqual([
      {
        competitions: [{ id: discus.competition.id, startsAt: at('14:00') }],
        facility: { key: 'cage' },
        reportAt: at('13:40'),
        startsAt: at('14:00'),
        endsAt: at('15:30'),
      },
    ]);
  });

  it('names what cannot be at once, and takes it all the same', async () => {
    const { meet, discus, hammer, javelin } = await day();
    const slots = [
      slot(discus, 'cage', '14:00'),
      slot(hammer, 'hammer', '14:30'),
      slot(javelin, 'javelin', '14:30'),
    ];
    const { timetable, userErrors } = await set(meet, slots);
    expect(userErrors).toEqual([]);
    expect(timetable.clashes).toEqual([
      { slots: [0, 1], kind: 'ground', reason: 'one cage', competitors: 0 },
    ]);
  });

  it('is refused with every fault in its place', async () => {
    const { meet, discus } = await day();
    const twice = [slot(discus, 'cage', '14:00'), slot(discus, 'moon', '15:00')];
    const { timetable, userErrors } = await set(meet, twice);
    expect(timetable).toBeNull();
    expect(userErrors.map(({ code, path }: any) => `${code} ${path.join('.')}`)).toEqual([
      'UNKNOWN_FACILITY input.slots.1.facility',
      'SLOT_TWICE input.slots.1.competitionIds',
    ]);
    expect(userErrors.every(({ message, remedy }: any) => message && remedy)).toBe(true);
  });

  it('holds competitions of its own meet only', async () => {
    const { meet } = await day();
    const elsewhere = await Circle.open(api);
    const { userErrors } = await set(meet, [slot(elsewhere, 'cage', '14:00')]);
    expect(userErrors).toMatchObject([
      { code: 'UNKNOWN_COMPETITION', path: ['input', 'slots', '0', 'competitionIds', '0'] },
    ]);
  });

  it('is not changed by somebody who had read an older one', async () => {
    const { meet, discus } = await day();
    await set(meet, [slot(discus, 'cage', '14:00')]);
    const { userErrors } = await set(meet, [slot(discus, 'cage', '15:00')]);
    expect(userErrors).toMatchObject([{ code: 'VERSION_CONFLICT' }]);
  });

  it('is for the director alone to change', async () => {
    const { meet, discus } = await day();
    const answer = await api.send(
      `mutation ($input: TimetableSetInput!) { timetableSet(input: $input) { userErrors { code } } }`,
      { input: { meetId: meet.id, expectedRevision: 0, facilities: [], slots: [] } },
      discus.official,
    );
    expect(answer.errors).toMatchObject([{ extensions: { code: 'FORBIDDEN' } }]);
  });
});

describe('a delay', () => {
  it('moves what depends on it, tells the competitions and says why to everybody', async () => {
    const { meet, discus, hammer, javelin } = await day();
    const slots = [
      slot(discus, 'cage', '14:00'),
      slot(hammer, 'hammer', '15:00'),
      slot(javelin, 'javelin', '15:00'),
    ];
    await set(meet, slots);
    const before = (await hammer.read()).version;
    const { timetable, movedCompetitions } = await delay(meet, discus, 20);
    expect(timetable.slots.map(({ startsAt }: any) => startsAt)).toEqual([
      at('14:20'),
      at('15:20'),
      at('15:00'),
    ]);
    expect(movedCompetitions.sort()).toEqual([discus.competition.id, hammer.competition.id].sort());
    expect((await hammer.read()).version).toBe(before + 1);
    const seen = await api.data(
      `query ($id: ID!) { meet(id: $id) { timetable { reason slots { startsAt } } } }`,
      { id: meet.id },
      null,
    );
    expect(seen.meet.timetable.reason).toBe('the cage gate had to be mended');
  });

  it('of a competition that is not planned is refused', async () => {
    const { meet, discus, hammer } = await day();
    await set(meet, [slot(discus, 'cage', '14:00')]);
    expect((await delay(meet, hammer, 20)).userErrors).toMatchObject([{ code: 'NOT_PLANNED' }]);
  });
});

describe('a crew', () => {
  const CREW = `query ($id: ID!) { competition(id: $id) { crew { post name } } }`;

  it('is read by those who work at the meet, and by nobody else', async () => {
    const circle = await Circle.open(api);
    const members = [
      { post: 'CHIEF_JUDGE', name: 'Ottilie Brandmoor' },
      { post: 'RECORDER', name: 'Jem Saltern' },
    ];
    await api.data(
      `mutation ($input: CrewSetInput!) { crewSet(input: $input) { ${ERRORS} } }`,
      { input: { competitionId: circle.competition.id, members } },
      circle.director,
    );
    const crewFor = async (token: string | null): Promise<unknown> =>
      (await api.data(CREW, { id: circle.competition.id }, token)).competition.crew;
    expect(await crewFor(circle.official)).toEqual(members);
    expect(await crewFor(null)).toBeNull();
  });
});
