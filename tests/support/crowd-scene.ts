import type { ApiClient } from './client.js';
import { RecordScene, type RecordedCompetition } from './record-scene.js';

/** Everything of the scene that nobody outside may read, wherever it might come out. */
export const PRIVATE = {
  'a hidden name': ['Wenna', 'Oakfold', 'Tansy', 'Underhill'],
  'a birth date': ['1994-03-17', '2013-02-11', '2014-09-30'],
  'a note': ['a dog from the quarry', 'read to me wrongly'],
  'a reason of a failure': ['SECTOR'],
  'a meet that is not published': ['Fen Games', 'Hammer of the fen'],
  'a result that is kept back': ['Shot behind doors', '9.87'],
} as const;

const ADULT = { givenName: 'Maren', familyName: 'Thistlewood', birthDate: '1994-03-17' };
const CHILD = { givenName: 'Wenna', familyName: 'Oakfold', birthDate: '2013-02-11' };
const BY_BIB = { givenName: 'Tansy', familyName: 'Underhill', birthDate: '2014-09-30', display: 'BIB' };

export interface CrowdScene {
  readonly scene: RecordScene;
  /** Bib 1 is of age, bib 2 a child, bib 3 a child who is shown by the bib alone. */
  readonly discus: RecordedCompetition;
  readonly hidden: { readonly meetId: string; readonly competitionId: string };
}

/** A club meet with children in it, failures, corrections and a stop; and beside it a meet that is not published. */
export async function crowdScene(api: ApiClient): Promise<CrowdScene> {
  const scene = await RecordScene.open(api, [ADULT, CHILD, BY_BIB]);
  const discus = await scene.competition({ implementGrams: 750 });
  const wrong = await discus.record(1, 1, '35.22');
  await discus.enter('attemptCorrect', {
    ...{ attemptId: wrong, outcome: 'VALID', mark: '36.22' },
    ...{ reason: 'read to me wrongly', expectedVersion: await discus.version() },
  });
  await discus.record(2, 1, '31.05');
  await discus.record(3, 1, 'X', { foul: 'SECTOR' });
  await discus.record(1, 2, '34.90');
  await setScoring(api, scene);
  const { id: competitionId } = await withheld(scene);
  await api.data(
    `mutation ($input: CompetitionWithholdInput!) { competitionWithhold(input: $input) { userErrors { code } } }`,
    { input: { competitionId, isWithheld: true } },
    scene.meet.director,
  );
  return { scene, discus, hidden: await hiddenMeet(api, scene) };
}

async function setScoring(api: ApiClient, { meet }: RecordScene): Promise<void> {
  await api.data(
    `mutation ($input: MeetScoringSetInput!) { meetScoringSet(input: $input) { userErrors { code } } }`,
    { input: { meetId: meet.id, preset: 'DUAL' } },
    meet.director,
  );
}

async function hiddenMeet(api: ApiClient, scene: RecordScene): Promise<CrowdScene['hidden']> {
  const made = await api.data(
    `mutation ($input: MeetCreateInput!) { meetCreate(input: $input) { meet { id } } }`,
    { input: { name: 'Fen Games', startsOn: '2026-06-20', timeZone: 'UTC', rules: 'WA' } },
    api.adminToken,
  );
  const meetId = made.meetCreate.meet.id as string;
  const director = await api.token('director', meetId);
  const meet = { id: meetId, director, referee: director };
  const hammer = await scene.competition({ title: 'Hammer of the fen', event: 'HAMMER' }, meet);
  await hammer.record(1, 1, '41.00');
  return { meetId, competitionId: hammer.id };
}

async function withheld(scene: RecordScene): Promise<RecordedCompetition> {
  const shot = await scene.competition({ title: 'Shot behind doors', event: 'SHOT', implementGrams: 3000 });
  await shot.record(1, 1, '9.87');
  return shot;
}
