import { randomUUID } from 'node:crypto';
import { call, signedInPerson } from './accounts.js';
import type { ApiClient } from './client.js';

/** A coach of one athlete, with a session, a throw in it and a focus. */
export interface NotebookScene {
  readonly coach: string;
  readonly athleteId: string;
  readonly sessionId: string;
  readonly throwId: string;
  readonly focusId: string;
}

export async function notebookScene(api: ApiClient, athleteId: string): Promise<NotebookScene> {
  const { accessToken: coach } = await signedInPerson(api, [{ role: 'COACH', on: athleteId }]);
  const ask = async (name: string, input: object, selection: string): Promise<any> => {
    const done = await call(api, name, input, `${selection} userErrors { code path message }`, coach);
    if (done.userErrors.length > 0) throw new Error(`${name}: ${JSON.stringify(done.userErrors)}`);
    return done;
  };
  const { session } = await ask('practiceSessionCreate', { onDate: '2026-04-14' }, 'session { id }');
  const thrown = throwOf(athleteId, { id: randomUUID() });
  await ask('throwsLog', { sessionId: session.id, throws: [thrown] }, 'results { status }');
  const focus = { athleteId, event: 'DISCUS', code: 'DT-14', how: 'DRILL', from: '2026-04-14' };
  const { id: focusId } = await ask('focusStart', focus, 'id');
  return { coach, athleteId, sessionId: session.id, throwId: thrown.id, focusId };
}

/** A throw of practice as a device sends it. */
export function throwOf(athleteId: string, changes: object = {}) {
  return {
    ...{ id: randomUUID(), athleteId, event: 'DISCUS', variant: 'FULL_TURN', implementGrams: 1000 },
    ...{ round: 1, outcome: 'VALID', mark: '31.20', isMeasured: true, effortPercent: 95 },
    ...changes,
  };
}

/** What was seen of a throw, as a device sends it. */
export function noteOf(changes: object = {}) {
  return {
    ...{ id: randomUUID(), observedAt: '2026-04-14T16:00:00Z', method: 'LIVE', markKnown: false },
    ...{ scope: ['DT-04', 'DT-14'], marks: [{ code: 'DT-14', severity: 2 }] },
    ...changes,
  };
}

const DRAFT = {
  ...{ event: 'DISCUS', looksLike: '{block} arm hangs', point: 'Carry your free arm', phase: 'P1' },
  ...{ segment: 'BLOCK_ARM', view: 'SIDE', variants: null, relevantFrom: 'BASICS', nearFouls: false },
};

/** What each mutation of the notebook needs so that it goes through; new at every call. */
export function notebookInput(name: string, { athleteId, throwId, focusId }: NotebookScene): object | null {
  const draft = () => ({ ...DRAFT, name: `Free arm ${randomUUID()}` });
  const inputs: Readonly<Record<string, () => object>> = {
    practiceSessionCreate: () => ({}),
    throwsLog: () => ({ throws: [throwOf(athleteId, { observation: noteOf() })] }),
    observationsLog: () => ({ observations: [noteOf({ throwId })] }),
    checklistSet: () => ({ event: 'DISCUS', codes: ['DT-04', 'DT-14'] }),
    stageSet: () => ({ event: 'DISCUS' }),
    focusStart: () => ({ event: 'DISCUS', code: 'DT-14' }),
    focusEnd: () => ({ focusId, to: '2026-05-14' }),
    videoAdd: () => ({ throwId, trial: null }),
    releaseSet: () => ({}),
    consentRecord: () => ({ on: '2026-04-14' }),
    faultDefine: () => ({ draft: draft() }),
    faultChange: () => ({ kind: 'HIDE', code: 'DT-02', name: null, into: null }),
    faultSplit: () => ({ code: 'DT-X01', drafts: [draft(), draft()] }),
  };
  return inputs[name]?.() ?? null;
}
