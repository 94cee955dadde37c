import { line, type DemoCompetition } from './competition.js';
import type { Client } from './client.js';
import { idOf } from './ids.js';

/** Veterans, who are called together with the boys of the javelin: each with their own javelin and their own result. */
export const JAVELIN_VETERANS: DemoCompetition = {
  title: 'Javelin, men 60, 600 g',
  input: {
    event: 'JAVELIN',
    rules: 'WMA',
    categorySex: 'M',
    categoryAge: '60',
    startsAt: '2026-05-16T15:30:00Z',
  },
  lines: [
    { ...line('Aldous Fernhollow'), flight: 'A' },
    { ...line('Bertram Coldwick'), flight: 'B' },
  ],
};

export const JAVELIN_GROUP = { title: 'Javelin, boys and veterans', facility: 'Runway north' } as const;

/** In turn within each flight. */
const ORDER = [
  ...['Milo Grantley-Fen', 'Aldous Fernhollow', 'Oskar Redmire'],
  ...['Leif Cobblestow', 'Bertram Coldwick', 'Idris Farrowdale'],
];

const STANDING = 'callingGroup { id version startList { competitor { id } } }';

interface Group {
  readonly id: string;
  readonly version: number;
  readonly startList: readonly { readonly competitor: { readonly id: string } }[];
}

/** Puts boys and veterans into one order, unless they are in it already. */
export async function groupJavelins(
  director: Client,
  meetId: string,
  boysId: string,
  veteransId: string,
  idsOf: (competitionId: string) => Promise<readonly { readonly id: string }[]>,
): Promise<void> {
  const { callingGroup } = await director.call<{ callingGroup: Group }>(
    'callingGroupCreate',
    {
      ...{ id: idOf(JAVELIN_GROUP.title), meetId, ...JAVELIN_GROUP },
      ...{ startsAt: '2026-05-16T15:30:00Z', warmUpMinutes: 30, competitionIds: [boysId, veteransId] },
    },
    STANDING,
  );
  const [boys, veterans] = [await idsOf(boysId), await idsOf(veteransId)];
  const turns = ORDER.map((who) => JAVELIN_VETERANS.lines.findIndex((one) => one.who === who));
  let boy = 0;
  const competitorIds = turns.map((veteran) => (veteran < 0 ? boys[boy++] : veterans[veteran])!.id);
  const now = callingGroup.startList.map(({ competitor }) => competitor.id);
  if (now.join() === competitorIds.join()) return;
  const input = { callingGroupId: callingGroup.id, expectedVersion: callingGroup.version, competitorIds };
  await director.call('callingOrderSet', input, STANDING);
}
