import { useSignal } from '@preact/signals';
import { verticalProgressOf, type VerticalState } from '#rules';
import { markText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import type { Turn } from '../competition/board-shape.js';
import { useOpen } from '../desk-context.js';
import { HeightForm } from './HeightForm.jsx';
import { UprightsForm } from './UprightsForm.jsx';

const OUTCOMES = [
  { outcome: 'cleared', letter: 'O' },
  { outcome: 'failed', letter: 'X' },
  { outcome: 'passed', letter: '–' },
  { outcome: 'retired', letter: 'r' },
] as const;

/** At a bar: where it is, how the jump ended, where it goes next. */
export function BarPanel({ state, turn }: { readonly state: VerticalState; readonly turn: Turn | null }) {
  const { desk } = useOpen();
  const { phase, bar, nextHeight, awaits, winner } = verticalProgressOf(state);
  const { unit } = state.setup;
  const choose = (outcome: (typeof OUTCOMES)[number]['outcome']) => {
    desk.said.value = null;
    desk.draft.value = { ...desk.draft.value, turn, outcome, isReadBack: true };
  };
  return (
    <div class="entry">
      {phase !== 'complete' && phase !== 'official' && (
        <p class="bar">
          <span>{t('bar')}</span> <strong>{markText(turn?.height ?? bar, unit)}</strong>
          {nextHeight !== null && <span>{t('bar.next', { height: markText(nextHeight, unit) })}</span>}
        </p>
      )}
      {winner?.choosesHeight && (
        <p class="notice held">{t('bar.chooses', { who: desk.personOf(winner.competitor).name })}</p>
      )}
      {awaits === 'height' && <p class="notice held">{t('bar.awaits')}</p>}
      {turn && (
        <div class="outcomes at-bar">
          {OUTCOMES.map(({ outcome, letter }) => (
            <Button
              key={outcome}
              kind={outcome === 'cleared' ? 'main' : 'plain'}
              onPress={() => choose(outcome)}
            >
              <span class="letter" aria-hidden="true">
                {letter}
              </span>
              <span>{t(`outcome.${outcome}`)}</span>
            </Button>
          ))}
        </div>
      )}
      {phase !== 'complete' && phase !== 'official' && <BarActions state={state} turn={turn} />}
    </div>
  );
}

/** What is done between the jumps. */
function BarActions({ state, turn }: { readonly state: VerticalState; readonly turn: Turn | null }) {
  const { desk } = useOpen();
  const isSetting = useSignal(false);
  const isPlacing = useSignal(false);
  const { awaits, jumpOff } = verticalProgressOf(state);
  const behindZeroCm = state.competitors.find(({ key }) => key === turn?.key)?.behindZeroCm ?? null;
  const isOpenJumpOff = jumpOff?.phase === 'due' || jumpOff?.phase === 'running';
  return (
    <>
      <div class="call-actions">
        <Button kind={awaits === 'height' ? 'main' : 'quiet'} onPress={() => (isSetting.value = true)}>
          {t('bar.set')}
        </Button>
        {state.setup.event === 'pole-vault' && turn && (
          <Button kind="quiet" onPress={() => (isPlacing.value = true)}>
            {t('bar.uprights')} {behindZeroCm === null ? '' : t('bar.uprightsAt', { cm: behindZeroCm })}
          </Button>
        )}
        {isOpenJumpOff && (
          <Button
            kind="quiet"
            onPress={() =>
              desk.enter({ kind: 'jump-off-declined', reason: t('jumpOff.decline') }, () =>
                t('jumpOff.decline'),
              )
            }
          >
            {t('jumpOff.decline')}
          </Button>
        )}
      </div>
      {isSetting.value && (
        <Dialog title={t('bar.set')} onClose={() => (isSetting.value = false)}>
          <HeightForm state={state} onDone={() => (isSetting.value = false)} />
        </Dialog>
      )}
      {isPlacing.value && turn && (
        <Dialog
          title={t('bar.uprightsSet', { who: desk.personOf(turn.key).name })}
          onClose={() => (isPlacing.value = false)}
        >
          <UprightsForm competitor={turn.key} now={behindZeroCm} onDone={() => (isPlacing.value = false)} />
        </Dialog>
      )}
    </>
  );
}
