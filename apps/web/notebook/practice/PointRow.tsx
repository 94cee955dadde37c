import { useId } from 'preact/hooks';
import { n } from '../../labels/notebook/words.js';
import type { Seen } from './draft.js';

const ANSWERS = [0, 1, 2, 3, 'unseen'] as const satisfies readonly Seen[];

interface PointRowProps {
  readonly name: string;
  readonly looksLike: string | null;
  readonly caution: string | null;
  readonly seen: Seen | undefined;
  readonly onNote: (seen: Seen) => void;
}

/** One point of the checklist: not there, how far off, or not looked at. Nothing is chosen beforehand. */
export function PointRow({ name, looksLike, caution, seen, onNote }: PointRowProps) {
  const group = useId();
  return (
    <fieldset class="point">
      <legend>{name}</legend>
      {looksLike && <p class="hint">{looksLike}</p>}
      {caution && <p class="caution">{n('caution.pain')}</p>}
      <div class="answers">
        {ANSWERS.map((answer) => (
          <label key={answer} class="answer" data-answer={answer}>
            <input type="radio" name={group} checked={seen === answer} onClick={() => onNote(answer)} />
            <span>{n(`seen.${answer}`)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
