import { useMemo } from 'preact/hooks';
import { e } from '../../labels/entries/words.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';
import { Problems } from './Problems.jsx';
import { Questions } from './Questions.jsx';
import { TableWork } from './table-work.js';

/** A table: looked at, decided about, and then stored as a whole. */
export function ImportPart() {
  const office = useOffice();
  const work = useMemo(() => new TableWork(office), [office]);
  return (
    <>
      <TableSource work={work} />
      {work.kind.value === 'PAST' && <TextField label={e('import.source')} value={work.source} isRequired />}
      <Button kind="main" onPress={() => void work.look()} isDisabled={!work.mayLook || office.isBusy.value}>
        {e('import.look')}
      </Button>
      <Found work={work} />
    </>
  );
}

/** Which kind of table, as a file or pasted. */
function TableSource({ work }: { readonly work: TableWork }) {
  return (
    <>
      <Choice
        legend={e('import.kind')}
        options={[
          { value: 'ENTRIES' as const, text: e('import.entries') },
          { value: 'PAST' as const, text: e('import.past') },
        ]}
        value={work.kind.value}
        onChoose={(chosen) => {
          work.kind.value = chosen;
          work.forget();
        }}
      />
      <p class="hint">{e(work.kind.value === 'ENTRIES' ? 'import.entryColumns' : 'import.pastColumns')}</p>
      <label class="field">
        <span>{e('import.file')}</span>
        <input
          type="file"
          accept=".csv,.txt,.tsv,text/csv"
          onChange={({ currentTarget }) => void work.take(currentTarget.files?.[0])}
        />
      </label>
      <label class="field">
        <span>{e('import.paste')}</span>
        <textarea
          rows={6}
          spellcheck={false}
          disabled={work.file.value !== null}
          value={work.text.value}
          onInput={({ currentTarget }) => {
            work.text.value = currentTarget.value;
            work.forget();
          }}
        />
      </label>
    </>
  );
}

/** What the table comes to, what is wrong, and what is asked. */
function Found({ work }: { readonly work: TableWork }) {
  const office = useOffice();
  const looked = work.looked.value;
  if (!looked) return null;
  const { count, newAthleteCount: athletes, newClubCount: clubs, userErrors, needsReason } = looked;
  return (
    <div class="looked" role="region" aria-label={e('import.found')}>
      <p role="status">{e('import.counts', { count, athletes, clubs, problems: userErrors.length })}</p>
      <Problems problems={userErrors} />
      <Questions looked={looked} choices={work.choices} />
      {needsReason && <TextField label={e('reason')} value={work.reason} isRequired />}
      {userErrors.length === 0 && (
        <Button
          kind="main"
          onPress={() => void work.store()}
          isDisabled={!work.mayStore || office.isBusy.value}
        >
          {e('import.store', { count })}
        </Button>
      )}
    </div>
  );
}
