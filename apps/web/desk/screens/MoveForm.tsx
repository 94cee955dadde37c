import { useSignal } from '@preact/signals';
import type { AttemptState, JumpState } from '#rules';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { moveTo, shiftFrom } from '../entry/moves.js';
import { WhyField } from './WhyField.jsx';

interface MoveFormProps {
  readonly attempt: AttemptState | JumpState;
  readonly onEnter: (body: Body) => Promise<void>;
}

type Target = string;

/** The trial stands on a wrong line: whose is it? Whoever has one there gets this line's, in one entry. */
export function MoveForm({ attempt, onEnter }: MoveFormProps) {
  const { desk, open } = useOpen();
  const target = useSignal<Target | null>(null);
  const why = useSignal(t('why.line'));
  const shift = shiftFrom(open.folded, attempt.id);
  const body = target.value === null ? null : moveTo(open.folded, attempt.id, target.value, why.value.trim());
  const others = desk.people.value.filter(({ key }) => key !== attempt.competitor);
  return (
    <>
      <Choice<Target>
        legend={t('trial.where')}
        value={target.value}
        options={others.map(({ key, bib, name }) => ({ value: key, text: `${bib} ${name}` }))}
        onChoose={(key) => (target.value = key)}
      />
      <WhyField why={why} />
      <Button kind="main" isDisabled={!body || why.value.trim() === ''} onPress={() => body && onEnter(body)}>
        {t(body && 'moves' in body && body.moves.length > 1 ? 'trial.swap' : 'trial.moveTo')}{' '}
        {target.value !== null && desk.personOf(target.value).bib}
      </Button>
      {shift && (
        <Button
          isDisabled={why.value.trim() === ''}
          onPress={() => onEnter({ kind: 'move', moves: shift, reason: why.value.trim() })}
        >
          {t('trial.shift')}
        </Button>
      )}
    </>
  );
}
