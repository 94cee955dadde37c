import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { e } from '../../labels/entries/words.js';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';
import { TERMS, TERMS_SET, type Terms } from './documents.js';

/** Until when, and how many. */
export function TermsPart() {
  const office = useOffice();
  const terms = useSignal<Terms | null>(null);
  const [closesAt, club, athlete] = [useSignal(''), useSignal(''), useSignal('')];
  const id = office.meetId.value;
  const round = office.round.value;
  useEffect(() => {
    void office.read<{ meet: { entryTerms: Terms | null } | null }>(TERMS, { id }).then((answer) => {
      const read = answer?.meet?.entryTerms ?? null;
      terms.value = read;
      closesAt.value = read?.closesAt ? localText(new Date(read.closesAt)) : '';
      club.value = String(read?.mostPerClub ?? '');
      athlete.value = String(read?.mostPerAthlete ?? '');
    });
  }, [id, round]);
  const save = (event: Event) => {
    event.preventDefault();
    const input = {
      ...{ meetId: id, expectedRevision: terms.value?.revision ?? 0 },
      closesAt: closesAt.value === '' ? null : new Date(closesAt.value).toISOString(),
      mostPerClub: numberIn(club.value),
      mostPerAthlete: numberIn(athlete.value),
      competitionLimits: terms.value?.competitionLimits ?? [],
    };
    void office.act(TERMS_SET, input, { done: e('terms.done'), away: e('away') });
  };
  return (
    <form onSubmit={save}>
      <TextField
        label={e('terms.closesAt')}
        value={closesAt}
        type="datetime-local"
        hint={e('terms.closesHint')}
      />
      <TextField label={e('terms.club')} value={club} type="number" hint={e('terms.noLimit')} />
      <TextField label={e('terms.athlete')} value={athlete} type="number" hint={e('terms.noLimit')} />
      <button type="submit" class="button main" disabled={office.isBusy.value}>
        {e('terms.go')}
      </button>
    </form>
  );
}

function numberIn(text: string): number | null {
  return text.trim() === '' ? null : Number(text);
}

/** As a field of date and time takes it: by the clock of this device. */
function localText(at: Date): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`;
}
