import { useSignal } from '@preact/signals';
import { o, oCode } from '../../labels/office/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Select } from '../../ui/Select.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useAct } from '../acting.js';
import type { Competition } from './competition-now.js';

const ANSWER = `{ entry { standing hold { message remedy } } userErrors { message rule remedy } }`;
const DISQUALIFY = `mutation OfficeDisqualify($input: CompetitorDisqualifyInput!) { competitorDisqualify(input: $input) ${ANSWER} }`;
const REINSTATE = `mutation OfficeReinstate($input: CompetitorReinstateInput!) { competitorReinstate(input: $input) ${ANSWER} }`;

/** Disqualified with the rule, or let in again. */
export function Disqualify({ competition }: { readonly competition: Competition }) {
  const act = useAct();
  const [who, rule, ownRule, why] = [useSignal(''), useSignal(''), useSignal(''), useSignal('')];
  const { id: competitionId, table, disqualificationRules: rules } = competition;
  const chosen = table.rows.find(({ competitor }) => competitor === who.value);
  const isOut = chosen?.status === 'DQ';
  const named = rule.value === 'other' ? ownRule.value.trim() : rule.value;
  const reason = why.value.trim();
  const decide = async () => {
    const head = { competitionId, entryId: uuidV7(), competitorId: who.value, reason };
    const done = await (isOut ? act(REINSTATE, head) : act(DISQUALIFY, { ...head, rule: named }));
    if (done) for (const field of [who, rule, ownRule, why]) field.value = '';
  };
  return (
    <details class="panel">
      <summary>{o('dq.title')}</summary>
      <div class="step">
        <Select
          label={o('standing.who')}
          value={who}
          options={table.rows.map(({ competitor, bib, name, status }) => ({
            value: competitor,
            text: `${bib} ${name}${status === 'DQ' ? ` (${o('dq.out')})` : ''}`,
          }))}
        />
        {chosen && !isOut && (
          <Select
            label={o('dq.rule')}
            value={rule}
            options={[
              ...rules.map((one) => ({
                value: one.rule.slice(0, 50),
                text: `${oCode('dqGround', one.ground)} – ${one.rule}`,
              })),
              { value: 'other', text: o('dq.otherRule') },
            ]}
          />
        )}
        {rule.value === 'other' && !isOut && <TextField label={o('dq.ownRule')} value={ownRule} />}
        <TextField label={o('reason')} value={why} />
        <Button
          kind={isOut ? 'plain' : 'danger'}
          isDisabled={!chosen || reason === '' || (!isOut && named === '')}
          onPress={decide}
        >
          {o(isOut ? 'dq.reinstate' : 'dq.disqualify')}
        </Button>
      </div>
    </details>
  );
}
