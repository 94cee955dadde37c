import { useSignal, type Signal } from '@preact/signals';
import { o, oCode } from '../../labels/office/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { Select } from '../../ui/Select.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useAct } from '../acting.js';
import { trialsOf, type Competition } from './competition-now.js';
import { whenToday } from './when-today.js';

const LODGE = `mutation OfficeLodge($input: ProtestLodgeInput!) { protestLodge(input: $input) { userErrors { message rule remedy } } }`;

/** A protest written down as it came in. */
export function LodgeProtest({ competition }: { readonly competition: Competition }) {
  const act = useAct();
  const form = useSignal<'ORAL' | 'WRITTEN'>('ORAL');
  const [ground, by, at, who] = [useSignal('RULES'), useSignal(''), useSignal(''), useSignal('')];
  const [trial, why, deposit] = [useSignal(''), useSignal(''), useSignal('')];
  const isPaid = useSignal(false);
  const { id: competitionId, table, protestTimes } = competition;
  const row = table.rows.find(({ competitor }) => competitor === who.value);
  const time = protestTimes.find((one) => one.ground === ground.value);
  const lodge = async () => {
    const done = await act(LODGE, {
      ...{ competitionId, entryId: uuidV7(), form: form.value, ground: ground.value },
      ...{ lodgedBy: by.value.trim(), lodgedAt: whenToday(at.value), reason: why.value.trim() },
      ...{ competitorId: who.value || null, trialId: (row && trial.value) || null },
      ...{ deposit: deposit.value.trim() || null, isDepositPaid: isPaid.value },
    });
    if (done) for (const field of [by, at, who, trial, why, deposit]) field.value = '';
  };
  return (
    <details>
      <summary>{o('lodge.title')}</summary>
      <div class="step">
        <Choice<'ORAL' | 'WRITTEN'>
          legend={o('lodge.form')}
          value={form.value}
          options={(['ORAL', 'WRITTEN'] as const).map((value) => ({ value, text: oCode('form', value) }))}
          onChoose={(value) => (form.value = value)}
        />
        <Select
          label={o('lodge.ground')}
          value={ground}
          options={protestTimes.map((one) => ({ value: one.ground, text: oCode('ground', one.ground) }))}
        />
        {time && <p class="hint">{timeText(time)}</p>}
        <TextField label={o('lodge.by')} value={by} hint={o('lodge.byHint')} />
        <TextField label={o('lodge.at')} value={at} type="time" />
        <About competition={competition} who={who} trial={trial} />
        <TextField label={o('lodge.why')} value={why} />
        <TextField label={o('lodge.deposit')} value={deposit} />
        <label class="switch">
          <input
            type="checkbox"
            checked={isPaid.value}
            onChange={({ currentTarget }) => (isPaid.value = currentTarget.checked)}
          />
          <span>{o('lodge.isPaid')}</span>
        </label>
        <Button
          isDisabled={ground.value === '' || by.value.trim() === '' || why.value.trim() === ''}
          onPress={lodge}
        >
          {o('lodge.go')}
        </Button>
      </div>
    </details>
  );
}

interface AboutProps {
  readonly competition: Competition;
  readonly who: Signal<string>;
  readonly trial: Signal<string>;
}

/** For whom it is, and about which of the trials. */
function About({ competition: { table }, who, trial }: AboutProps) {
  const row = table.rows.find(({ competitor }) => competitor === who.value);
  return (
    <>
      <Select
        label={o('lodge.for')}
        value={who}
        options={table.rows.map(({ competitor, bib, name }) => ({
          value: competitor,
          text: `${bib} ${name}`,
        }))}
      />
      {row && (
        <Select
          label={o('lodge.trial')}
          value={trial}
          none={o('lodge.result')}
          options={trialsOf(row).map((one) => ({ value: one.entry, text: `${one.where}: ${one.cell}` }))}
        />
      )}
    </>
  );
}

/** Until when such a protest is taken. */
function timeText({ isTaken, minutes, rule }: Competition['protestTimes'][number]): string {
  if (!isTaken) return o('lodge.notTaken', { rule });
  return minutes === null ? o('lodge.anyTime', { rule }) : o('lodge.minutes', { minutes, rule });
}
