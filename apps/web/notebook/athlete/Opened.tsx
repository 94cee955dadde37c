import { useSignal } from '@preact/signals';
import { dayText, localDecimals } from '../../labels/format.js';
import { tCode } from '../../labels/languages.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { Button } from '../../ui/Button.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { implementText } from '../plots/AttemptsPlot.jsx';
import type { HistoryThrow } from './findings.js';

interface OpenedProps {
  readonly about: string;
  readonly attempts: readonly string[];
  readonly history: readonly HistoryThrow[];
}

/** Opens a number: the attempts behind it, one by one. */
export function Opened({ about, attempts, history }: OpenedProps) {
  const isOpen = useSignal(false);
  if (attempts.length === 0) return null;
  const ids = new Set(attempts);
  const rows = history.filter(({ id }) => ids.has(id));
  const text = attempts.length === 1 ? n('list.openOne') : n('list.open', { count: attempts.length });
  return (
    <>
      <span class="opens">
        <Button kind="quiet" label={`${text}: ${about}`} onPress={() => (isOpen.value = true)}>
          {text}
        </Button>
      </span>
      {isOpen.value && (
        <Dialog title={about} onClose={() => (isOpen.value = false)}>
          {rows.length < attempts.length && (
            <p class="hint">{n('list.older', { count: attempts.length - rows.length })}</p>
          )}
          <ol class="attempts">
            {rows.map((one) => (
              <li key={one.id}>
                <strong>{resultText(one)}</strong> {dayText(one.onDate)},{' '}
                {one.occasionName || n('list.practice')}, {n('list.round', { round: one.round })},{' '}
                {implementText(one)}
                {!one.isMeasured && one.mark !== null && `, ${n('mark.estimated')}`}
              </li>
            ))}
          </ol>
        </Dialog>
      )}
    </>
  );
}

export function resultText({ mark, outcome, foul }: HistoryThrow): string {
  if (mark !== null) return localDecimals(mark);
  const word = nCode('outcome', outcome);
  return foul === null ? word : `${word} (${tCode('foul', foul)})`;
}
