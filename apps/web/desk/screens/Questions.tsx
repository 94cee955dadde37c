import { useSignal } from '@preact/signals';
import type { RulingDecision } from '#rules';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { unitIn } from '../competition/head.js';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { bodyText } from '../entry/body-text.js';

/** What waits for the referee. Who may decide finds the buttons for it here. */
export function Questions() {
  const { desk, open } = useOpen();
  const { questions, journal } = open.folded.state;
  const why = useSignal('');
  if (questions.length === 0) return null;
  const mayRule = open.kept.capacity !== 'official';
  const rule = async (entry: string, decision: RulingDecision) => {
    const body: Body = { kind: 'ruling', entry, decision, reason: why.value };
    const verdict = await desk.enter(body, () =>
      t(decision === 'count' ? 'question.count' : 'question.dismiss'),
    );
    if (verdict?.standing !== 'refused') why.value = '';
  };
  return (
    <section class="questions">
      <h3>{t('question.title')}</h3>
      {mayRule && (
        <label class="field">
          <span>{t('question.why')}</span>
          <input value={why.value} onInput={({ currentTarget }) => (why.value = currentTarget.value)} />
        </label>
      )}
      <ul class="list">
        {questions.map(({ entry, about }) => {
          const asked = journal.find((item) => item.entry.id === entry)?.entry;
          if (!asked) return null;
          const who = desk.aboutWhom(asked);
          return (
            <li key={entry} class="notice held">
              <p>
                {who && (
                  <strong>
                    {who.bib} {who.name}:{' '}
                  </strong>
                )}
                {bodyText(asked, unitIn(open.kept.head))}
                {'round' in asked && ` · ${t('standing.round', { round: asked.round })}`} ·{' '}
                {t(about === 'held' ? 'question.held' : 'question.protest')}
              </p>
              {mayRule && (
                <div class="pair">
                  <Button isDisabled={why.value.trim() === ''} onPress={() => rule(entry, 'count')}>
                    {t('question.count')}
                  </Button>
                  <Button isDisabled={why.value.trim() === ''} onPress={() => rule(entry, 'dismiss')}>
                    {t('question.dismiss')}
                  </Button>
                </div>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
