import { useSignal } from '@preact/signals';
import {
  ruleSet,
  type AttemptState,
  type FoulCode,
  type JumpState,
  type Outcome,
  type VerticalTrial,
} from '#rules';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { NumberPad } from '../../ui/NumberPad.jsx';
import { eventIn, unitIn } from '../competition/head.js';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { bodyText } from '../entry/body-text.js';
import { afterKey } from '../entry/keys.js';
import { judgementOf } from '../entry/trial-body.js';
import { readTyped } from '../../ui/typed.js';
import { WhyField } from './WhyField.jsx';

interface CorrectFormProps {
  readonly attempt: AttemptState | JumpState;
  readonly onEnter: (body: Body) => Promise<void>;
}

const OUTCOMES = ['valid', 'foul', 'pass', 'unmeasured', 'retired'] as const;
const JUMP_OUTCOMES = ['cleared', 'failed', 'passed', 'retired'] as const;

/** What the trial really was, as a whole. */
export function CorrectForm({ attempt, onEnter }: CorrectFormProps) {
  return 'height' in attempt ? (
    <CorrectJump attempt={attempt} onEnter={onEnter} />
  ) : (
    <CorrectAttempt attempt={attempt} onEnter={onEnter} />
  );
}

function CorrectAttempt({ attempt, onEnter }: CorrectFormProps & { readonly attempt: AttemptState }) {
  const { open } = useOpen();
  const unit = unitIn(open.kept.head);
  const outcome = useSignal<Outcome>(attempt.judgement.outcome);
  const foul = useSignal<FoulCode | null>(attempt.judgement.foul);
  const text = useSignal('');
  const why = useSignal('');
  const typed = readTyped(text.value, unit);
  const mark = typed.kind === 'mark' ? typed.value : attempt.judgement.mark;
  const isWhole = outcome.value !== 'valid' || mark !== null;
  const body: Body = {
    kind: 'correction',
    attempt: attempt.id,
    reason: why.value.trim(),
    outcome: outcome.value,
    mark: outcome.value === 'valid' ? mark : null,
    wind: null,
    foul: outcome.value === 'foul' ? foul.value : null,
    protested: null,
    implementGrams: null,
  };
  return (
    <>
      <Choice<Outcome>
        legend={t('trial.correct')}
        value={outcome.value}
        options={OUTCOMES.map((value) => ({ value, text: t(`outcome.${value}`) }))}
        onChoose={(value) => (outcome.value = value)}
      />
      {outcome.value === 'valid' && (
        <>
          <label class="mark-field active">
            <span>{t('mark')}</span>
            <input
              type="text"
              inputmode="none"
              autocomplete="off"
              value={text.value}
              onInput={({ currentTarget }) => (text.value = currentTarget.value)}
            />
            <span class="usual">{isWhole && bodyText(body, unit)}</span>
          </label>
          <NumberPad onKey={(key) => (text.value = afterKey(text.value, key))} />
        </>
      )}
      {outcome.value === 'foul' && (
        <FoulChoice foul={foul.value} onChoose={(value) => (foul.value = value)} />
      )}
      <WhyField why={why} />
      <Button kind="main" isDisabled={!isWhole || why.value.trim() === ''} onPress={() => onEnter(body)}>
        {t('trial.correct')}: {bodyText(body, unit)}
      </Button>
    </>
  );
}

function CorrectJump({ attempt, onEnter }: CorrectFormProps & { readonly attempt: JumpState }) {
  const outcome = useSignal<VerticalTrial>(attempt.judgement.outcome);
  const foul = useSignal<FoulCode | null>(attempt.judgement.foul);
  const why = useSignal('');
  const body: Body = {
    kind: 'jump-correction',
    attempt: attempt.id,
    reason: why.value.trim(),
    ...judgementOf(outcome.value, foul.value),
  };
  return (
    <>
      <Choice<VerticalTrial>
        legend={t('trial.correct')}
        value={outcome.value}
        options={JUMP_OUTCOMES.map((value) => ({ value, text: t(`outcome.${value}`) }))}
        onChoose={(value) => (outcome.value = value)}
      />
      {outcome.value === 'failed' && (
        <FoulChoice foul={foul.value} onChoose={(value) => (foul.value = value)} />
      )}
      <WhyField why={why} />
      <Button kind="main" isDisabled={why.value.trim() === ''} onPress={() => onEnter(body)}>
        {t('trial.correct')}
      </Button>
    </>
  );
}

interface FoulChoiceProps {
  readonly foul: FoulCode | null;
  readonly onChoose: (foul: FoulCode | null) => void;
}

function FoulChoice({ foul, onChoose }: FoulChoiceProps) {
  const { head } = useOpen().open.kept;
  const codes = ruleSet(head.rules, head.edition).fouls[eventIn(head)].map(({ value }) => value);
  return (
    <Choice<FoulCode | 'none'>
      legend={t('readBack.reason')}
      value={foul ?? 'none'}
      options={[
        { value: 'none' as const, text: t('readBack.noReason') },
        ...codes.map((value) => ({ value, text: tCode('foul', value) })),
      ]}
      onChoose={(value) => onChoose(value === 'none' ? null : value)}
    />
  );
}
