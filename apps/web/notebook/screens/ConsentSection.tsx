import { useSignal } from '@preact/signals';
import { dayText } from '../../labels/format.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useNotebook } from '../notebook.js';
import type { AthleteNotes } from '../shapes.js';

const PURPOSES = ['NOTES', 'VIDEO', 'ANALYSIS'] as const;

interface ConsentSectionProps {
  readonly athlete: AthleteNotes;
  readonly today: string;
}

/** What was agreed, by whom and when; a coach writes it down, the form itself stays where it is. */
export function ConsentSection({ athlete, today }: ConsentSectionProps) {
  return (
    <section>
      <h3>{n('consent.title')}</h3>
      <ul class="consents">
        {PURPOSES.map((purpose) => {
          const consent = athlete.consents.find((one) => one.purpose === purpose);
          return (
            <li key={purpose}>
              <strong>{n(`purpose.${purpose}`)}</strong>:{' '}
              {consent
                ? n(consent.isGiven ? 'consent.given' : 'consent.withdrawn', {
                    name: consent.name,
                    by: nCode('by', consent.by),
                    date: dayText(consent.on),
                  })
                : n('consent.none')}
            </li>
          );
        })}
      </ul>
      <p class="hint">{n('consent.how')}</p>
      {athlete.isCoach && <RecordConsent athlete={athlete} today={today} />}
    </section>
  );
}

function RecordConsent({ athlete, today }: ConsentSectionProps) {
  const notebook = useNotebook();
  const purpose = useSignal<(typeof PURPOSES)[number]>('NOTES');
  const by = useSignal<'GUARDIAN' | 'ATHLETE'>(athlete.isGrowing ? 'GUARDIAN' : 'ATHLETE');
  const given = useSignal<'yes' | 'no'>('yes');
  const name = useSignal('');
  const record = async (submit: Event) => {
    submit.preventDefault();
    const input = {
      ...{
        id: uuidV7(),
        athleteId: athlete.athleteId,
        purpose: purpose.value,
        isGiven: given.value === 'yes',
      },
      ...{ by: by.value, name: name.value.trim(), on: today },
    };
    if (await notebook.act('consentRecord', input, { done: n('consent.kept'), away: n('act.away') }))
      name.value = '';
  };
  return (
    <details class="thrown">
      <summary>{n('consent.record')}</summary>
      <form onSubmit={(submit) => void record(submit)}>
        <Choice
          legend={n('consent.purpose')}
          value={purpose.value}
          options={PURPOSES.map((value) => ({ value, text: n(`purpose.${value}`) }))}
          onChoose={(value) => (purpose.value = value)}
        />
        <Choice
          legend={n('consent.answer')}
          value={given.value}
          options={[
            { value: 'yes', text: n('consent.yes') },
            { value: 'no', text: n('consent.no') },
          ]}
          onChoose={(value) => (given.value = value)}
        />
        <Choice
          legend={n('consent.by')}
          value={by.value}
          options={[
            { value: 'GUARDIAN', text: n('by.GUARDIAN') },
            { value: 'ATHLETE', text: n('by.ATHLETE') },
          ]}
          onChoose={(value) => (by.value = value)}
        />
        <TextField label={n('consent.name')} value={name} isRequired />
        <button type="submit" class="button main" disabled={notebook.isBusy.value}>
          {n('consent.keep')}
        </button>
      </form>
    </details>
  );
}
