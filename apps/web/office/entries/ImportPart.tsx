import { useSignal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';
import { ENTRIES_IMPORT, PAST_RESULTS_IMPORT, type LookedAt } from './documents.js';
import { Problems } from './Problems.jsx';
import { Questions } from './Questions.jsx';
import { base64Of, decisionsOf, isDecided, type Choices } from './table-choices.js';

type Kind = 'ENTRIES' | 'PAST';

/** A table: looked at, decided about, and then stored as a whole. */
export function ImportPart() {
  const office = useOffice();
  const kind = useSignal<Kind>('ENTRIES');
  const text = useSignal('');
  const file = useSignal<{ readonly name: string; readonly base64: string } | null>(null);
  const source = useSignal('');
  const reason = useSignal('');
  const looked = useSignal<LookedAt | null>(null);
  const choices = useSignal<Choices>({});
  const forget = () => {
    looked.value = null;
    choices.value = {};
  };
  const input = (): Record<string, unknown> => ({
    csv: file.value ? { base64: file.value.base64 } : { text: text.value },
    ...(kind.value === 'ENTRIES'
      ? { meetId: office.meetId.value, reason: reason.value.trim() || null }
      : { source: source.value.trim() }),
  });
  const send = async (more: object): Promise<LookedAt | null> => {
    office.isBusy.value = true;
    const query = kind.value === 'ENTRIES' ? ENTRIES_IMPORT : PAST_RESULTS_IMPORT;
    const answer = await office.read<{ table: LookedAt }>(query, { input: { ...input(), ...more } });
    office.isBusy.value = false;
    return answer?.table ?? null;
  };
  const look = async () => {
    forget();
    office.say(null);
    looked.value = await send({ isDryRun: true });
  };
  const store = async () => {
    const { fingerprint } = looked.value!;
    const decisions = decisionsOf(looked.value!, choices.value);
    const done = await send({ id: uuidV7(), fingerprint, ...decisions });
    if (!done) return;
    if (!done.isStored) {
      // The server says what else there is to decide or to correct.
      looked.value = done.fingerprint === null ? { ...looked.value!, userErrors: done.userErrors } : done;
      return;
    }
    const { count } = done;
    office.say({ kind: 'done', text: e('import.done', { count }), rule: null, remedy: null });
    forget();
    [text.value, file.value] = ['', null];
    office.round.value += 1;
    void office.look();
  };
  const isEmpty = file.value === null && text.value.trim() === '';
  const lacksSource = kind.value === 'PAST' && source.value.trim() === '';
  return (
    <>
      <Choice
        legend={e('import.kind')}
        options={[
          { value: 'ENTRIES' as const, text: e('import.entries') },
          { value: 'PAST' as const, text: e('import.past') },
        ]}
        value={kind.value}
        onChoose={(chosen) => {
          kind.value = chosen;
          forget();
        }}
      />
      <p class="hint">{e(kind.value === 'ENTRIES' ? 'import.entryColumns' : 'import.pastColumns')}</p>
      <label class="field">
        <span>{e('import.file')}</span>
        <input
          type="file"
          accept=".csv,.txt,.tsv,text/csv"
          onChange={async ({ currentTarget }) => {
            const [chosen] = currentTarget.files ?? [];
            forget();
            file.value = chosen ? { name: chosen.name, base64: await base64Of(chosen) } : null;
          }}
        />
      </label>
      <label class="field">
        <span>{e('import.paste')}</span>
        <textarea
          rows={6}
          spellcheck={false}
          disabled={file.value !== null}
          value={text.value}
          onInput={({ currentTarget }) => {
            text.value = currentTarget.value;
            forget();
          }}
        />
      </label>
      {kind.value === 'PAST' && <TextField label={e('import.source')} value={source} isRequired />}
      <Button
        kind="main"
        onPress={() => void look()}
        isDisabled={isEmpty || lacksSource || office.isBusy.value}
      >
        {e('import.look')}
      </Button>
      {looked.value && (
        <div class="looked" role="region" aria-label={e('import.found')}>
          <p role="status">
            {e('import.counts', {
              count: looked.value.count,
              athletes: looked.value.newAthleteCount,
              clubs: looked.value.newClubCount,
              problems: looked.value.userErrors.length,
            })}
          </p>
          <Problems problems={looked.value.userErrors} />
          <Questions looked={looked.value} choices={choices} />
          {looked.value.needsReason && <TextField label={e('reason')} value={reason} isRequired />}
          {looked.value.userErrors.length === 0 && (
            <Button
              kind="main"
              onPress={() => void store()}
              isDisabled={
                !isDecided(looked.value, choices.value) ||
                (looked.value.needsReason === true && reason.value.trim() === '') ||
                office.isBusy.value
              }
            >
              {e('import.store', { count: looked.value.count })}
            </Button>
          )}
        </div>
      )}
    </>
  );
}
