import type { Session } from '../../offline/session.js';
import { SendingLoop } from '../../offline/sending-loop.js';
import type { Writing } from './database.js';
import type { NoteStore } from './note-store.js';

interface Payload {
  readonly userErrors: readonly {
    readonly code: string;
    readonly message: string;
    readonly rule: string | null;
    readonly remedy: string | null;
  }[];
}

/** Sends what was written, in the order of writing: an id of the device's own makes sending again safe. */
export class NoteSending {
  private readonly loop = new SendingLoop('sectorline-notebook-sending', () => this.sendAll());

  constructor(
    private readonly store: NoteStore,
    private readonly session: Session,
    private readonly onAnswer: (link: 'online' | 'offline' | 'no-right') => void,
  ) {}

  go(): void {
    this.loop.go();
  }

  private async sendAll(): Promise<'done' | 'later'> {
    for (;;) {
      const [next] = this.store.waiting.value;
      if (!next) return 'done';
      const answer = await this.session.send<Record<string, Payload>>(documentOf(next), {
        input: next.input,
      });
      if (answer.ok) await this.take(next, answer.data[next.mutation]!);
      else if (answer.failure.kind === 'refused') {
        const { code, message } = answer.failure;
        await this.store.change(next.entryId, {
          state: 'refused',
          refusal: { code, message, rule: null, remedy: null },
        });
      } else {
        this.onAnswer(answer.failure.kind === 'no-right' ? 'no-right' : 'offline');
        return 'later';
      }
      this.onAnswer('online');
      this.loop.hasAnswer();
    }
  }

  private async take({ entryId }: Writing, { userErrors }: Payload): Promise<void> {
    const [refusal] = userErrors;
    if (refusal) await this.store.change(entryId, { state: 'refused', refusal });
    else await this.store.drop(entryId);
  }
}

function documentOf({ mutation }: Writing): string {
  const type = `${mutation[0]!.toUpperCase()}${mutation.slice(1)}Input`;
  return `mutation Notebook($input: ${type}!) { ${mutation}(input: $input) { userErrors { code message rule remedy } } }`;
}
