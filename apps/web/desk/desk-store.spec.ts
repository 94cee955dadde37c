import { editionsOf } from '#rules';
import type { CompetitionHead } from './competition/head.js';
import type { Body } from './competition/request.js';
import { DeskStore } from './desk-store.js';
import type { KeptCompetition, WaitingEntry } from './keeping/database.js';
import type { Keeper, Kept } from './keeping/keeper.js';

/** Keeps nothing until it is let. */
class SlowKeeper {
  readonly kept: WaitingEntry[] = [];
  private readonly open: (() => void)[] = [];

  async keepEntries(entries: readonly WaitingEntry[]): Promise<void> {
    await new Promise<void>((done) => this.open.push(done));
    this.kept.push(...entries);
  }

  async keepCompetition(): Promise<void> {}

  write(): void {
    this.open.splice(0).forEach((done) => done());
  }
}

const ID = 'Q29tcGV0aXRpb246MQ';

const HEAD: CompetitionHead = {
  id: ID,
  title: 'Discus',
  event: 'DISCUS',
  rules: 'WA',
  edition: editionsOf('WA').at(-1)!,
  stage: 'FINAL',
  isIndoor: false,
  unit: 'CM',
  implementGrams: null,
  status: 'OPEN',
  version: 1,
  meet: { name: 'Meet' },
  plan: { rounds: 6, cuts: [], cutTies: 'NEXT_BEST', reorderAfter: [], reorder: 'REVERSE' },
  qualifying: null,
  vertical: null,
  callList: ['a', 'b'].map((id) => ({
    name: null,
    competitor: {
      id,
      bib: id,
      displayName: id,
      club: null,
      flight: null,
      isGuest: false,
      implementGrams: null,
    },
  })),
};

const COMPETITION: KeptCompetition = {
  id: ID,
  head: HEAD,
  items: [],
  cursor: null,
  version: 1,
  capacity: 'official',
};

function attempt(competitor: string, mark: number | null): Body {
  const judged = {
    outcome: 'valid',
    mark,
    wind: null,
    foul: null,
    protested: null,
    implementGrams: null,
  } as const;
  return { kind: 'attempt', competitor, round: 1, ...judged };
}

describe('what is entered at the desk', () => {
  let keeper: SlowKeeper;
  let store: DeskStore;
  beforeEach(() => {
    keeper = new SlowKeeper();
    const settings = {
      vibrates: false,
      sounds: false,
      language: null,
      mode: 'all',
      deviceId: null,
      group: null,
      open: ID,
    } as const;
    const kept: Kept = { signIn: null, settings, competitions: [COMPETITION], outbox: [] };
    store = new DeskStore(keeper as unknown as Keeper, kept);
  });

  const up = (): string | null => {
    const folded = store.open.value?.folded;
    return folded?.kind === 'distance'
      ? (folded.state.competitors.find(({ series }) => series[0] === null)?.key ?? null)
      : null;
  };

  it('is shown at once, is called saved when it is written, and is sent after that', async () => {
    let sent = 0;
    store.onEntered = () => (sent += 1);
    const entering = store.enter(attempt('a', 4000));
    expect(up()).toBe('b');
    expect(store.unsaved.value.size).toBe(1);
    expect([keeper.kept.length, sent]).toEqual([0, 0]);
    keeper.write();
    expect((await entering)?.standing).toBe('accepted');
    expect(store.unsaved.value.size).toBe(0);
    expect([keeper.kept.length, sent]).toEqual([1, 1]);
  });

  it('is given back when it can never be right, and kept nowhere', async () => {
    expect((await store.enter(attempt('a', null)))?.standing).toBe('refused');
    expect(store.outbox.value).toEqual([]);
  });

  it('waits no longer when the server has it', async () => {
    const entering = store.enter(attempt('a', 4000));
    keeper.write();
    await entering;
    const [waiting] = store.waiting.value;
    const entry = store.entryOf(waiting!, COMPETITION);
    await store.keepCompetition({
      ...COMPETITION,
      version: 2,
      items: [{ sequence: 1, entry, hold: null }],
    });
    expect(store.waiting.value).toEqual([]);
    expect(up()).toBe('b');
  });

  it('may be somebody who is on no list, with trials before the server has heard of anybody', async () => {
    const key = '00000000-0000-7000-8000-000000000001';
    const late = { kind: 'late-entry', competitor: key, bib: 'a', flight: null } as const;
    const name = { listedName: 'Runa Askvold', listedClub: null };
    const entering = [store.enter({ ...late, ...name }, key), store.enter(attempt(key, 4000))];
    keeper.write();
    const verdicts = await Promise.all(entering);
    expect(verdicts.map((verdict) => verdict?.standing)).toEqual(['accepted', 'accepted']);
    const { kept, folded } = store.open.value!;
    // The bib is worn already.
    expect(kept.head.callList.at(-1)).toMatchObject({ name: 'Runa Askvold', competitor: { bib: 'a/2' } });
    expect(folded.kind === 'distance' && folded.state.card.competitors.at(-1)?.bib).toBe('a/2');
    const bibs = [
      { competitor: 'a', bib: 'b' },
      { competitor: 'b', bib: 'a' },
    ];
    void store.enter({ kind: 'bibs', bibs, reason: 'swapped' });
    expect(store.open.value!.kept.head.callList.map(({ competitor }) => competitor.bib)).toEqual([
      ...['b', 'a', 'a/2'],
    ]);
    // What the server has is as it was.
    expect(store.competitions.value[0]!.head.callList).toHaveLength(2);
  });

  it('does not come back when an older reading is late', async () => {
    const entering = store.enter(attempt('a', 4000));
    keeper.write();
    await entering;
    const entry = store.entryOf(store.waiting.value[0]!, COMPETITION);
    const answered = { ...COMPETITION, version: 2, items: [{ sequence: 1, entry, hold: null }] };
    // Both are on their way at the same time.
    await Promise.all([store.keepCompetition(answered), store.keepCompetition(COMPETITION)]);
    expect([store.competitions.value[0]!.version, store.waiting.value.length, up()]).toEqual([2, 0, 'b']);
  });

  it('is not called saved when the device cannot write', async () => {
    keeper.keepEntries = () => Promise.reject(new Error('The disk is full.'));
    await expect(store.enter(attempt('a', 4000))).rejects.toThrow('full');
    expect([store.isFailing.value, store.unsaved.value.size]).toEqual([true, 1]);
  });
});
