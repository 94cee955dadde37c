import { useSignal } from '@preact/signals';
import { markText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { hasWind } from '../competition/board.js';
import { unitIn } from '../competition/head.js';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { bodyText } from '../entry/body-text.js';
import { CorrectForm } from './CorrectForm.jsx';
import { MoveForm } from './MoveForm.jsx';
import { WhyField } from './WhyField.jsx';
import { WindForm } from './WindForm.jsx';

type Way = 'correct' | 'wrongLine' | 'takeBack' | 'replace' | 'wind';

/** Puts one trial right: nothing is overwritten, each way is an entry with its reason. */
export function TrialDialog({ id }: { readonly id: string }) {
  const { desk, open } = useOpen();
  const way = useSignal<Way | null>(null);
  const attempt = open.folded.state.attempts.get(id);
  const close = () => (desk.trial.value = null);
  if (!attempt) return null;
  const { bib, name } = desk.personOf(attempt.competitor);
  const round = 'round' in attempt ? attempt.round : markText(attempt.height, unitIn(open.kept.head));
  const entry = open.folded.state.journal.find((item) => item.entry.id === id)?.entry;
  const enter = async (body: Body) => {
    const verdict = await desk.enter(body, (standing) =>
      t(standing === 'held' ? 'done.held' : 'done.recorded', {
        who: bib,
        what: bodyText(body, unitIn(open.kept.head)),
      }),
    );
    if (verdict?.standing !== 'refused') close();
  };
  const ways: Way[] = [
    ...(desk.isWindsOnly.value ? [] : (['correct', 'wrongLine', 'takeBack', 'replace'] as const)),
    ...(hasWind(open) ? ['wind' as const] : []),
  ];
  return (
    <Dialog title={t('trial.title', { who: `${bib} ${name}`, round })} onClose={close}>
      {entry && <p class="read-back-what small">{bodyText(entry, unitIn(open.kept.head))}</p>}
      {open.kept.capacity === 'official' && <p class="hint">{t('trial.waits')}</p>}
      <Choice<Way>
        legend={t('change')}
        value={way.value}
        options={ways.map((value) => ({ value, text: t(`trial.${value}`) }))}
        onChoose={(value) => (way.value = value)}
      />
      {way.value === 'correct' && <CorrectForm attempt={attempt} onEnter={enter} />}
      {way.value === 'wrongLine' && <MoveForm attempt={attempt} onEnter={enter} />}
      {way.value === 'wind' && <WindForm attempt={id} onEnter={enter} />}
      {way.value === 'takeBack' && (
        <WithReason
          word={t('trial.takeBack')}
          onReason={(reason) => enter({ kind: 'reversal', entry: id, reason })}
        />
      )}
      {way.value === 'replace' && (
        <WithReason
          word={t('trial.replace')}
          onReason={(reason) => enter({ kind: 'replacement', attempt: id, reason })}
        />
      )}
      {desk.said.value?.kind === 'refused' && (
        <p class="notice refused" role="alert" lang="en">
          {desk.said.value.text} {desk.said.value.remedy}
        </p>
      )}
    </Dialog>
  );
}

function WithReason({
  word,
  onReason,
}: {
  readonly word: string;
  readonly onReason: (reason: string) => Promise<void>;
}) {
  const why = useSignal('');
  return (
    <>
      <WhyField why={why} />
      <Button kind="danger" isDisabled={why.value.trim() === ''} onPress={() => onReason(why.value.trim())}>
        {word}
      </Button>
    </>
  );
}
