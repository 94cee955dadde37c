import { isAboutList, type HoldCode } from '#rules';
import type { ApiClient, Failure } from '../../offline/api-client.js';
import type { Refusal } from '../../offline/outbox.js';
import { SendingLoop } from '../../offline/sending-loop.js';
import { unitIn } from '../competition/head.js';
import { requestOf } from '../competition/request.js';
import type { DeskStore, RecordClaim } from '../desk-store.js';
import { recordsToSee } from './claims.js';
import type { KeptCompetition, WaitingEntry } from './database.js';

interface Payload {
  readonly entry: { readonly sequence: number; readonly hold: { readonly code: HoldCode } | null } | null;
  readonly competition: { readonly version: number } | null;
  readonly userErrors: readonly Refusal[];
  /** Of marks. */
  readonly wouldBe?: readonly RecordClaim[];
}

/** Somebody else changed the competition since this was decided: not wrong, but to be looked at again. */
const CONFLICT = 'VERSION_CONFLICT';

/** Entries that say on which version they were decided. */
const NAMES_A_VERSION: ReadonlySet<string> = new Set([
  ...['correction', 'move', 'jump-correction', 'jump-move', 'sign-off'],
]);

/** Mutations that answer what a mark would be. */
const ABOUT_A_MARK: ReadonlySet<string> = new Set([
  'attemptRecord',
  'attemptCorrect',
  'attemptWindRecord',
  'jumpRecord',
  'jumpCorrect',
  'jumpOffRecord',
]);

/**
 * Sends what waits, in the order of entering, one at a time. An entry waits until the server has answered it: its id
 * makes sending again safe, however the answer was lost.
 */
export class Sending {
  private readonly loop = new SendingLoop('sectorline-desk-sending', () => this.sendAll());
  /** Lists of which a record from outside was beaten while this page was open. */
  private readonly knownRecords = new Set<string>();

  constructor(
    private readonly store: DeskStore,
    private readonly client: ApiClient,
    /** The server has more than this device knows. */
    private readonly readOn: (competitionId: string) => Promise<unknown>,
  ) {}

  /** Sends now, whatever pause was going on. */
  go(): void {
    this.loop.go();
  }

  private async sendAll(): Promise<'done' | 'later'> {
    // Entries of a competition for which this device has no right (any more) hold up no other competition.
    const closed = new Set<string>();
    for (;;) {
      const next = this.store.waiting.value.find(({ competitionId }) => !closed.has(competitionId));
      // What is not written yet is not sent: it would be gone if this device went down before the answer.
      if (!next || this.store.unsaved.value.has(next.entryId)) break;
      const failure = await this.sendOne(next).catch((): Failure => ({ kind: 'unavailable' }));
      if (failure && failure.kind !== 'no-right') {
        this.store.link.value = 'offline';
        return 'later';
      }
      if (failure) closed.add(next.competitionId);
      this.store.link.value = failure ? 'no-right' : 'online';
      this.loop.hasAnswer();
    }
    return closed.size > 0 ? 'later' : 'done';
  }

  /** Null: it has its answer. */
  private async sendOne(waiting: WaitingEntry): Promise<Failure | null> {
    const { store } = this;
    const kept = store.competitions.value.find(({ id }) => id === waiting.competitionId);
    const request = kept ? requestOf(waiting.body, unitIn(kept.head), waiting.basedOn) : null;
    if (!kept || !request) {
      await store.change(waiting.entryId, { state: 'refused', refusal: NOTHING_TO_SEND });
      return null;
    }
    const { mutation, input } = request;
    const head = {
      competitionId: waiting.competitionId,
      entryId: waiting.entryId,
      deviceAt: new Date(waiting.madeAtMs).toISOString(),
    };
    const answer = await this.client.send<Record<string, Payload>>(documentFor(mutation), {
      input: { ...head, ...input },
    });
    if (!answer.ok) {
      if (answer.failure.kind !== 'refused') return answer.failure;
      const { code, message } = answer.failure;
      await store.change(waiting.entryId, {
        state: 'refused',
        refusal: { code, message, rule: null, remedy: null },
      });
      return null;
    }
    await this.take(waiting, kept, answer.data[mutation]!);
    return null;
  }

  private async take(waiting: WaitingEntry, kept: KeptCompetition, payload: Payload): Promise<void> {
    const { entry, competition, userErrors } = payload;
    const [error] = userErrors;
    if (error || !entry || !competition) {
      const { code = '', message = '', rule = null, remedy = null } = error ?? {};
      const state = code === CONFLICT ? 'conflict' : 'refused';
      await this.store.change(waiting.entryId, { state, refusal: { code, message, rule, remedy } });
      await this.readOn(waiting.competitionId);
      return;
    }
    this.claim(payload.wouldBe ?? [], kept);
    const isNext =
      !isAboutList(waiting.body.kind) &&
      entry.sequence === (kept.items.at(-1)?.sequence ?? 0) + 1 &&
      competition.version === kept.version + 1;
    if (!isNext) {
      await this.readOn(waiting.competitionId);
      return;
    }
    const item = {
      sequence: entry.sequence,
      entry: this.store.entryOf(waiting, kept),
      hold: entry.hold?.code ?? null,
    };
    await this.moveOn(kept, competition.version);
    await this.store.keepCompetition({
      ...kept,
      items: [...kept.items, item],
      version: competition.version,
    });
  }

  private claim(claims: readonly RecordClaim[], kept: KeptCompetition): void {
    const records = recordsToSee(claims, kept, this.knownRecords);
    if (records.length > 0) this.store.claims.value = [...this.store.claims.value, ...records];
  }

  /** Nobody else came in between, so what was decided after this entry was decided on what it made. */
  private async moveOn(kept: KeptCompetition, version: number): Promise<void> {
    for (const { entryId, competitionId, basedOn, body } of this.store.waiting.value) {
      if (NAMES_A_VERSION.has(body.kind) && competitionId === kept.id && basedOn === kept.version)
        await this.store.change(entryId, { basedOn: version });
    }
  }
}

const NOTHING_TO_SEND: Refusal = {
  code: 'UNKNOWN_COMPETITION',
  message: 'This device does not know the competition of this entry.',
  rule: null,
  remedy: 'Open the competition once with a network, then send it again.',
};

const CLAIMS = 'wouldBe { kind relation bib mark before of }';

function documentFor(mutation: string): string {
  const type = `${mutation[0]!.toUpperCase()}${mutation.slice(1)}Input`;
  return `mutation Desk($input: ${type}!) {
    ${mutation}(input: $input) {
      entry { sequence hold { code } }
      competition { version }
      userErrors { code message rule remedy }
      ${ABOUT_A_MARK.has(mutation) ? CLAIMS : ''}
    }
  }`;
}
