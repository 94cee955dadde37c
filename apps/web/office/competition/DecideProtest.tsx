import { useSignal } from '@preact/signals';
import { o, oCode } from '../../labels/office/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useAct } from '../acting.js';
import type { Competition, Protest } from './competition-now.js';

const ANSWER = `{ userErrors { message rule remedy } }`;
const DECIDE = `mutation OfficeDecide($input: ProtestDecideInput!) { protestDecide(input: $input) ${ANSWER} }`;
const APPEAL = `mutation OfficeAppeal($input: ProtestAppealInput!) { protestAppeal(input: $input) ${ANSWER} }`;
const WITHDRAW = `mutation OfficeWithdraw($input: ProtestWithdrawInput!) { protestWithdraw(input: $input) ${ANSWER} }`;

type Way = 'UPHELD' | 'DISMISSED' | 'APPEAL' | 'WITHDRAWAL';
type DepositEnd = 'RETURNED' | 'FORFEITED';

interface DecideProtestProps {
  readonly competition: Competition;
  readonly protest: Protest;
  readonly mayDecide: boolean;
}

/** What may be done about a protest now: decided, appealed, withdrawn. */
export function DecideProtest({ competition, protest, mayDecide }: DecideProtestProps) {
  const act = useAct();
  const way = useSignal<Way | null>(null);
  const [by, why, rule] = [useSignal(''), useSignal(''), useSignal('')];
  const deposit = useSignal<DepositEnd | null>(null);
  const { next } = protest;
  const isJury = next.includes('APPEAL_DECISION');
  const decides = mayDecide && (isJury || next.includes('DECISION'));
  const ways: Way[] = [
    ...(decides ? (['UPHELD', 'DISMISSED'] as const) : []),
    ...(next.includes('APPEAL') ? (['APPEAL'] as const) : []),
    ...(next.includes('WITHDRAWAL') ? (['WITHDRAWAL'] as const) : []),
  ];
  const isDecision = way.value === 'UPHELD' || way.value === 'DISMISSED';
  const send = async () => {
    const head = {
      ...{ competitionId: competition.id, entryId: uuidV7(), protestId: protest.id },
      ...{ by: by.value.trim(), reason: why.value.trim() },
    };
    const done = await (isDecision
      ? act(DECIDE, { ...head, outcome: way.value, rule: rule.value.trim() || null, deposit: deposit.value })
      : way.value === 'APPEAL'
        ? act(APPEAL, head)
        : act(WITHDRAW, { ...head, deposit: deposit.value }));
    if (done) way.value = null;
  };
  return (
    <div class="step">
      <Choice<Way>
        legend={o(isJury ? 'decide.jury' : 'decide.title')}
        value={way.value}
        options={ways.map((value) => ({ value, text: oCode('way', value) }))}
        onChoose={(value) => (way.value = value)}
      />
      {way.value !== null && (
        <>
          <TextField label={o('decide.by')} value={by} />
          <TextField label={o('reason')} value={why} />
          {isDecision && <TextField label={o('decide.rule')} value={rule} />}
          {protest.deposit !== null && way.value !== 'APPEAL' && (
            <Choice<DepositEnd>
              legend={o('decide.deposit')}
              value={deposit.value}
              options={(['RETURNED', 'FORFEITED'] as const).map((value) => ({
                value,
                text: oCode('deposit', value),
              }))}
              onChoose={(value) => (deposit.value = value)}
            />
          )}
          {isDecision && protest.trial !== null && <p class="hint">{o('decide.trialToo')}</p>}
          <Button kind="main" isDisabled={by.value.trim() === '' || why.value.trim() === ''} onPress={send}>
            {oCode('way', way.value)}
          </Button>
        </>
      )}
    </div>
  );
}
