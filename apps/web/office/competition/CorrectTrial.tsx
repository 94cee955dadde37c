import { useSignal } from '@preact/signals';
import type { Unit } from '#rules';
import { formatMark } from '#rules';
import { readTyped } from '../../ui/typed.js';
import { WhyField } from '../../desk/screens/WhyField.jsx';
import { t } from '../../labels/languages.js';
import { o } from '../../labels/office/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useAct } from '../acting.js';
import type { Competition, Trial } from './competition-now.js';

const ANSWER = `{ entry { standing hold { message remedy } } userErrors { message rule remedy } }`;
const MUTATIONS = {
  attempt: `mutation OfficeCorrect($input: AttemptCorrectInput!) { attemptCorrect(input: $input) ${ANSWER} }`,
  jump: `mutation OfficeCorrectJump($input: JumpCorrectInput!) { jumpCorrect(input: $input) ${ANSWER} }`,
  takeBack: `mutation OfficeReverse($input: EntryReverseInput!) { entryReverse(input: $input) ${ANSWER} }`,
  replace: `mutation OfficeReplace($input: AttemptReplaceInput!) { attemptReplace(input: $input) ${ANSWER} }`,
};

const OUTCOMES = ['valid', 'foul', 'pass', 'unmeasured', 'retired'] as const;
const JUMP_OUTCOMES = ['cleared', 'failed', 'passed', 'retired'] as const;
type Outcome = (typeof OUTCOMES)[number] | (typeof JUMP_OUTCOMES)[number];

interface CorrectTrialProps {
  readonly competition: Competition;
  readonly who: string;
  readonly trial: Trial;
  readonly onClose: () => void;
}

/** One trial put right, taken back or given anew, with the reason. */
export function CorrectTrial({ competition, who, trial, onClose }: CorrectTrialProps) {
  const act = useAct();
  const why = useSignal('');
  const outcome = useSignal<Outcome | null>(null);
  const text = useSignal('');
  const { id: competitionId, vertical, table } = competition;
  const unit: Unit = competition.unit === 'CM' ? 'cm' : 'qin';
  const typed = readTyped(text.value, unit);
  const mark = typed.kind === 'mark' ? formatMark(typed.value, unit) : null;
  const isWhole = outcome.value !== null && (outcome.value !== 'valid' || mark !== null);
  const reason = why.value.trim();
  const send = async (mutation: string, parts: object) => {
    const done = await act(mutation, { competitionId, entryId: uuidV7(), reason, ...parts });
    if (done) onClose();
  };
  const attemptId = trial.entry;
  const correct = () =>
    send(vertical ? MUTATIONS.jump : MUTATIONS.attempt, {
      ...{ attemptId, outcome: outcome.value!.toUpperCase(), expectedVersion: table.version },
      ...(outcome.value === 'valid' && { mark }),
    });
  return (
    <Dialog title={`${who}, ${trial.where}: ${trial.cell}`} onClose={onClose}>
      <Choice<Outcome>
        legend={o('correct.was')}
        value={outcome.value}
        options={(vertical ? JUMP_OUTCOMES : OUTCOMES).map((value) => ({
          value,
          text: t(`outcome.${value}`),
        }))}
        onChoose={(value) => (outcome.value = value)}
      />
      {outcome.value === 'valid' && (
        <TextField label={t('mark')} value={text} hint={mark === null ? o('correct.mark') : mark} />
      )}
      <WhyField why={why} />
      <Button kind="main" isDisabled={!isWhole || reason === ''} onPress={correct}>
        {t('trial.correct')}
      </Button>
      <div class="pair-even">
        <Button
          kind="danger"
          isDisabled={reason === ''}
          onPress={() => send(MUTATIONS.takeBack, { targetEntryId: attemptId })}
        >
          {t('trial.takeBack')}
        </Button>
        <Button isDisabled={reason === ''} onPress={() => send(MUTATIONS.replace, { attemptId })}>
          {t('trial.replace')}
        </Button>
      </div>
    </Dialog>
  );
}
