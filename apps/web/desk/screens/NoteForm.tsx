import { useSignal } from '@preact/signals';
import { NOTE_SUBJECTS, type NoteSubject } from '#rules';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { useOpen } from '../desk-context.js';
import { Refused } from './Refused.jsx';

/** Something happened that may matter later: what was seen and done, no diagnosis and no name. */
export function NoteForm({ onDone }: { readonly onDone: () => void }) {
  const { desk } = useOpen();
  const about = useSignal<NoteSubject | null>(null);
  const text = useSignal('');
  const whose = useSignal<string>('nobody');
  const seenAt = useSignal(Date.now());
  const write = async () => {
    if (about.value === null) return;
    const competitor = whose.value === 'nobody' ? null : whose.value;
    const note = { about: about.value, text: text.value.trim(), competitor, seenAt: seenAt.value };
    const verdict = await desk.enter({ kind: 'note', ...note }, () => t('note.kept'));
    if (verdict && verdict.standing !== 'refused') onDone();
  };
  return (
    <>
      <Choice<NoteSubject>
        legend={t('note.about')}
        value={about.value}
        options={NOTE_SUBJECTS.map((value) => ({ value, text: tCode('note', value) }))}
        onChoose={(value) => (about.value = value)}
      />
      <label class="field">
        <span>{t('note.text')}</span>
        <textarea
          rows={3}
          maxLength={1000}
          value={text.value}
          onInput={({ currentTarget }) => (text.value = currentTarget.value)}
        />
      </label>
      <p class="hint">{t('note.how')}</p>
      <label class="field">
        <span>{t('note.whom')}</span>
        <select value={whose.value} onChange={({ currentTarget }) => (whose.value = currentTarget.value)}>
          <option value="nobody">{t('note.nobody')}</option>
          {desk.people.value.map(({ key, bib, name }) => (
            <option key={key} value={key}>
              {bib} {name}
            </option>
          ))}
        </select>
      </label>
      <Refused />
      <Button kind="main" isDisabled={about.value === null || text.value.trim() === ''} onPress={write}>
        {t('note.write')}
      </Button>
    </>
  );
}
