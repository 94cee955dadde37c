import { useSignal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';
import { CompetitionField } from './CompetitionField.jsx';
import { ENTER } from './documents.js';

/** One entry for a name as it is written; whoever is on record comes by a table, or at the desk. */
export function EntryPart() {
  const office = useOffice();
  const competitionId = useSignal('');
  const [name, club, bib, mark, reason] = [
    ...[useSignal(''), useSignal(''), useSignal(''), useSignal(''), useSignal('')],
  ] as const;
  const enter = async (event: Event) => {
    event.preventDefault();
    const input = {
      ...{ id: uuidV7(), competitionId: competitionId.value, listedName: name.value.trim() },
      listedClub: club.value.trim() || null,
      bib: bib.value.trim() || null,
      seedMark: mark.value.trim() || null,
      reason: reason.value.trim() || null,
    };
    const words = { done: e('entry.done', { name: name.value.trim() }), away: e('away') };
    if (!(await office.act(ENTER, input, words))) return;
    for (const field of [name, club, bib, mark]) field.value = '';
  };
  return (
    <form onSubmit={(event) => void enter(event)}>
      <CompetitionField value={competitionId} />
      <TextField label={e('entry.name')} value={name} isRequired />
      <TextField label={e('entry.club')} value={club} />
      <TextField label={e('entry.bib')} value={bib} hint={e('entry.bibHint')} />
      <TextField label={e('entry.mark')} value={mark} />
      <TextField label={e('reason')} value={reason} hint={e('entry.reasonHint')} />
      <button type="submit" class="button main" disabled={office.isBusy.value}>
        {e('entry.go')}
      </button>
    </form>
  );
}
