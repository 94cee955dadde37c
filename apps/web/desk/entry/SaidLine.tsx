import { isTrial } from '#rules';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { unitIn } from '../competition/head.js';
import type { Body } from '../competition/request.js';
import { useOpen, type Desk } from '../desk-context.js';
import type { OpenCompetition } from '../desk-store.js';
import { bodyText } from './body-text.js';

/** What became of the last entry, and the way to take it back as long as that is for the official to decide. */
export function SaidLine() {
  const { desk, open } = useOpen();
  const said = desk.said.value;
  const last = undoable(desk, open);
  if (!said && !last) return null;
  return (
    <div class="said">
      <p class={said ? `notice ${said.kind}` : 'said-nothing'} role="status">
        {said?.text} {said?.remedy}
      </p>
      {last && (
        <Button kind="quiet" label={last.text} onPress={() => desk.enter(last.reversal, () => last.text)}>
          {said ? t('undo', { what: '' }).trim() : last.text}
        </Button>
      )}
    </div>
  );
}

/** The last trial of this device, when taking it back would count at once. */
function undoable(
  desk: Desk,
  { folded, kept }: OpenCompetition,
): { readonly reversal: Body; readonly text: string } | null {
  const { journal, activity } = folded.state;
  const at = journal.findLastIndex(({ entry }, index) => isTrial(entry.kind) && activity.inEffect[index]);
  const entry = journal[at]?.entry;
  const person = entry && desk.aboutWhom(entry);
  if (!person || activity.reversed.has(entry.id)) return null;
  const reversal: Body = { kind: 'reversal', entry: entry.id, reason: t('undo.why') };
  if (desk.store.tryOut(reversal)?.standing !== 'accepted') return null;
  const { bib } = person;
  return { reversal, text: t('undo', { what: `${bib}: ${bodyText(entry, unitIn(kept.head))}` }) };
}
