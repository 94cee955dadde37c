import { n, nCode } from '../../labels/notebook/words.js';
import { localDecimals } from '../../labels/format.js';
import { Choice } from '../../ui/Choice.jsx';
import type { Thrown } from '../keeping/database.js';
import { useNotebook } from '../notebook.js';
import type { AthleteNotes } from '../shapes.js';
import { firstVariant } from './practice-day.js';

export const EVENTS = ['DISCUS', 'SHOT', 'HAMMER', 'JAVELIN', 'LONG_JUMP', 'TRIPLE_JUMP', 'HIGH_JUMP'];
const EFFORTS = [70, 80, 90, 100];

/** What is thrown and how, and how hard it is meant to be: said before the throw, kept for the next one. */
export function ThrownForm({ athlete, thrown }: { readonly athlete: AthleteNotes; readonly thrown: Thrown }) {
  const { store } = useNotebook();
  const { vocabularies, thrown: all } = store.kept.value;
  const change = (part: Partial<Thrown>) =>
    void store.keep({ thrown: { ...all, [athlete.athleteId]: { ...thrown, ...part } } });
  const variants = vocabularies[thrown.event]?.variants ?? [thrown.variant];
  const isJump = thrown.event.endsWith('JUMP');
  const text = [
    nCode('event', thrown.event),
    nCode('variant', thrown.variant),
    ...(thrown.implementGrams === null ? [] : [massText(thrown.implementGrams)]),
    thrown.effortPercent === null
      ? n('effort.unsaid')
      : n('effort.percent', { percent: thrown.effortPercent }),
  ].join(' · ');
  return (
    <details class="thrown" open={thrown.implementGrams === null && !isJump}>
      <summary>{text}</summary>
      <div class="fields">
        <label class="field">
          <span>{n('thrown.event')}</span>
          <select
            value={thrown.event}
            onChange={({ currentTarget: { value } }) =>
              change({ event: value, variant: firstVariant(value) })
            }
          >
            {EVENTS.map((event) => (
              <option key={event} value={event}>
                {nCode('event', event)}
              </option>
            ))}
          </select>
        </label>
        <label class="field">
          <span>{n('thrown.variant')}</span>
          <select
            value={thrown.variant}
            onChange={({ currentTarget: { value } }) => change({ variant: value })}
          >
            {variants.map((variant) => (
              <option key={variant} value={variant}>
                {nCode('variant', variant)}
              </option>
            ))}
          </select>
        </label>
        {!isJump && (
          <label class="field">
            <span>{n('thrown.grams')}</span>
            <input
              type="text"
              inputMode="numeric"
              autocomplete="off"
              value={thrown.implementGrams ?? ''}
              onChange={({ currentTarget: { value } }) => change({ implementGrams: gramsIn(value) })}
            />
          </label>
        )}
      </div>
      <EffortChoice percent={thrown.effortPercent} onChoose={(effortPercent) => change({ effortPercent })} />
    </details>
  );
}

interface EffortChoiceProps {
  readonly percent: number | null;
  readonly onChoose: (percent: number | null) => void;
}

function EffortChoice({ percent, onChoose }: EffortChoiceProps) {
  return (
    <>
      <Choice
        legend={n('effort.title')}
        value={percent === null ? 'none' : String(percent)}
        options={[
          ...EFFORTS.map((effort) => ({ value: String(effort), text: `${effort} %` })),
          { value: 'none', text: n('effort.unsaid') },
        ]}
        onChoose={(value) => onChoose(value === 'none' ? null : Number(value))}
      />
      <p class="hint">{n('effort.why')}</p>
    </>
  );
}

function gramsIn(text: string): number | null {
  const grams = Number(text.trim());
  return Number.isInteger(grams) && grams >= 1 && grams <= 100_000 ? grams : null;
}

/** `1 kg`, `1.25 kg`, `600 g`. */
export function massText(grams: number): string {
  return grams < 1000 ? `${grams} g` : `${localDecimals(String(grams / 1000))} kg`;
}
