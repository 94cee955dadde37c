import { useLayoutEffect, useRef } from 'preact/hooks';
import { eventOf, type Unit } from '#rules';
import { localDecimals, markText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { NumberPad } from '../../ui/NumberPad.jsx';
import { hasWind } from '../competition/board.js';
import type { Turn } from '../competition/board-shape.js';
import { eventIn, unitIn } from '../competition/head.js';
import { useOpen } from '../desk-context.js';
import { afterKey } from './keys.js';
import { readTyped, readTypedWind, shownWhileTyping } from '../../ui/typed.js';

const OUTCOME_LETTERS = { foul: 'X', pass: '-', unmeasured: 'O', retired: 'R' } as const;

/** Takes the trial of whoever is up: digits and a decimal, or how else it ended. */
export function EntryPanel({ turn }: { readonly turn: Turn }) {
  const { desk, open } = useOpen();
  const draft = desk.draft.value;
  const unit = unitIn(open.kept.head);
  const typed = readTyped(draft.text, unit);
  const change = (part: Partial<typeof draft>) => {
    desk.said.value = null;
    desk.draft.value = { ...desk.draft.value, turn, ...part };
  };
  const isWindReadable = draft.wind === '' || readTypedWind(draft.wind) !== null;
  const isReady = (typed.kind === 'mark' || typed.kind === 'outcome') && isWindReadable;
  const readBack = (event: Event) => {
    event.preventDefault();
    if (isReady) change({ isReadBack: true });
  };
  const press = (key: string) => {
    const { field } = desk.draft.value;
    if (field === 'wind') change({ wind: afterKey(desk.draft.value.wind, key), isWindUnmeasured: false });
    else change({ text: afterKey(desk.draft.value.text, key) });
  };
  return (
    <form class="entry" onSubmit={readBack} noValidate>
      <MarkField unit={unit} onText={(text) => change({ text, field: 'mark' })} />
      {typed.kind === 'unreadable' && draft.text.length > 2 && <p class="hint">{unreadableText(unit)}</p>}
      {hasWind(open) && typed.kind !== 'outcome' && <WindField onChange={change} />}
      <div class="keys">
        <NumberPad onKey={press} extra={extraKeys(draft.field, unit)} />
        <div class="outcomes">
          {(['foul', 'pass', 'unmeasured', 'retired'] as const).map((outcome) => (
            <Button
              key={outcome}
              onPress={() => change({ text: OUTCOME_LETTERS[outcome], wind: '', isReadBack: true })}
            >
              <span class="letter" aria-hidden="true">
                {OUTCOME_LETTERS[outcome].replace('-', '–').replace('R', 'r')}
              </span>
              <span>{t(`outcome.${outcome}`)}</span>
            </Button>
          ))}
        </div>
      </div>
      <button type="submit" class="button main wide" disabled={!isReady}>
        {t('readBack')}
      </button>
    </form>
  );
}

function unreadableText(unit: Unit): string {
  return unit === 'cm'
    ? t('mark.unreadable', { example: localDecimals('48.62'), typed: '4862' })
    : t('mark.unreadable', { example: '47-6 1/4', typed: '47-6.25' });
}

/** A keyboard types here; the number pad does, too, without one of the screen's coming up. */
function MarkField({ unit, onText }: { readonly unit: Unit; readonly onText: (text: string) => void }) {
  const { desk, open } = useOpen();
  const { text, field } = desk.draft.value;
  const ref = useRef<HTMLInputElement>(null);
  // Before anything is painted: who types as soon as the next one is up loses no digit.
  useLayoutEffect(() => ref.current?.focus({ preventScroll: true }), []);
  const { minCm, maxCm } = eventOf(eventIn(open.kept.head)).plausible;
  const decimal = localDecimals('0.0')[1]!;
  return (
    <label class={`mark-field ${field === 'mark' ? 'active' : ''}`}>
      <span>{t('mark')}</span>
      <input
        ref={ref}
        type="text"
        inputmode="none"
        autocomplete="off"
        value={shownWhileTyping(text, unit, decimal)}
        onFocus={() => field === 'wind' && (desk.draft.value = { ...desk.draft.value, field: 'mark' })}
        onInput={({ currentTarget }) => onText(plainDigits(currentTarget.value, unit, decimal))}
      />
      <span class="usual">
        {t('mark.usual', { from: rangeText(minCm, unit), to: rangeText(maxCm, unit) })}
      </span>
    </label>
  );
}

/** What is kept while typing has no decimal sign of ours in it: it is put in anew as digits come. */
function plainDigits(shown: string, unit: Unit, decimal: string): string {
  const digits = shown.replace(decimal, '');
  return unit === 'cm' && /^\d+$/.test(digits) ? digits : shown;
}

function rangeText(cm: number, unit: Unit): string {
  return unit === 'cm' ? markText(cm, 'cm') : `${Math.floor((cm * 100) / 3048)}-0`;
}

function WindField({
  onChange,
}: {
  readonly onChange: (change: { wind?: string; isWindUnmeasured?: boolean; field?: 'wind' }) => void;
}) {
  const { desk } = useOpen();
  const { wind, isWindUnmeasured, field } = desk.draft.value;
  return (
    <div class="wind-line">
      <label class={`mark-field wind ${field === 'wind' ? 'active' : ''}`}>
        <span>{t('wind')}</span>
        <input
          type="text"
          inputmode="none"
          autocomplete="off"
          value={wind}
          placeholder={isWindUnmeasured ? 'NWI' : t('wind.later')}
          onFocus={() => field === 'mark' && onChange({ field: 'wind' })}
          onInput={({ currentTarget }) => onChange({ wind: currentTarget.value, field: 'wind' })}
        />
      </label>
      <Button
        isPressed={isWindUnmeasured}
        onPress={() => onChange({ wind: '', isWindUnmeasured: !isWindUnmeasured })}
      >
        {t('wind.none')}
      </Button>
    </div>
  );
}

function extraKeys(field: 'mark' | 'wind', unit: Unit) {
  if (field === 'wind') return [{ key: 'sign', text: '±', label: t('key.sign') }];
  if (unit === 'cm') return [];
  return [
    { key: '-', text: t('key.feet'), label: t('key.feet') },
    { key: '.25', text: '¼', label: '1/4' },
    { key: '.50', text: '½', label: '1/2' },
    { key: '.75', text: '¾', label: '3/4' },
  ];
}
