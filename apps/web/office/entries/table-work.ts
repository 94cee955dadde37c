import { signal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import type { Office } from '../office.js';
import { ENTRIES_IMPORT, PAST_RESULTS_IMPORT, type LookedAt } from './documents.js';
import { base64Of, decisionsOf, isDecided, type Choices } from './table-choices.js';

export type TableKind = 'ENTRIES' | 'PAST';

/** A table on its way in: what it is, what the server found in it, and what was decided about that. */
export class TableWork {
  readonly kind = signal<TableKind>('ENTRIES');
  readonly text = signal('');
  readonly file = signal<string | null>(null);
  readonly source = signal('');
  readonly reason = signal('');
  readonly looked = signal<LookedAt | null>(null);
  readonly choices = signal<Choices>({});

  constructor(private readonly office: Office) {}

  get mayLook(): boolean {
    const isEmpty = this.file.value === null && this.text.value.trim() === '';
    return !isEmpty && (this.kind.value === 'ENTRIES' || this.source.value.trim() !== '');
  }

  /** Everything that was asked is decided, and nothing is wrong. */
  get mayStore(): boolean {
    const looked = this.looked.value;
    if (!looked || !isDecided(looked, this.choices.value)) return false;
    return looked.needsReason !== true || this.reason.value.trim() !== '';
  }

  /** Another table: what was found in the last one says nothing about it. */
  forget(): void {
    this.looked.value = null;
    this.choices.value = {};
  }

  async take(file: File | undefined): Promise<void> {
    this.forget();
    this.file.value = file ? await base64Of(file) : null;
  }

  async look(): Promise<void> {
    this.forget();
    this.office.say(null);
    this.looked.value = await this.send({ isDryRun: true });
  }

  async store(): Promise<void> {
    const looked = this.looked.value!;
    const decisions = decisionsOf(looked, this.choices.value);
    const done = await this.send({ id: uuidV7(), fingerprint: looked.fingerprint, ...decisions });
    if (!done) return;
    if (!done.isStored) {
      // The server says what else there is to decide or to correct.
      this.looked.value = done.fingerprint === null ? { ...looked, userErrors: done.userErrors } : done;
      return;
    }
    const text = e('import.done', { count: done.count });
    this.office.say({ kind: 'done', text, rule: null, remedy: null });
    this.forget();
    this.text.value = '';
    this.file.value = null;
    this.office.round.value += 1;
    void this.office.look();
  }

  private async send(more: object): Promise<LookedAt | null> {
    const isOfEntries = this.kind.value === 'ENTRIES';
    const csv = this.file.value === null ? { text: this.text.value } : { base64: this.file.value };
    const about = isOfEntries
      ? { meetId: this.office.meetId.value, reason: this.reason.value.trim() || null }
      : { source: this.source.value.trim() };
    const query = isOfEntries ? ENTRIES_IMPORT : PAST_RESULTS_IMPORT;
    this.office.isBusy.value = true;
    const answer = await this.office.read<{ table: LookedAt }>(query, { input: { csv, ...about, ...more } });
    this.office.isBusy.value = false;
    return answer?.table ?? null;
  }
}
