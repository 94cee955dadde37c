import { t, tCode } from '../../labels/languages.js';
import { Choice } from '../../ui/Choice.jsx';
import type { KeptImplement } from '../competition/implements.js';
import type { OpenCompetition } from '../desk-store.js';
import { useOpen } from '../desk-context.js';
import { gramsText } from './Beside.jsx';
import type { Draft } from './draft.js';

/** Which implement it was, where the register has any of the competitor's. */
export function ThrownImplement({ competitor }: { readonly competitor: string }) {
  const { desk, open } = useOpen();
  const own = open.kept.implements?.[competitor] ?? [];
  if (own.length === 0) return null;
  const thrown = thrownBy(open, competitor, desk.draft.value);
  return (
    <Choice<string>
      legend={t('implement')}
      value={thrown?.id ?? 'none'}
      options={[
        { value: 'none', text: t('implement.notNamed') },
        ...own.map(({ id, label, grams, standing }) => ({
          value: id,
          text: `${label} · ${gramsText(grams)} · ${tCode('implement', standing)}`,
        })),
      ]}
      onChoose={(implementId) => (desk.draft.value = { ...desk.draft.value, implementId })}
    />
  );
}

/** As it was said, otherwise the one of the competitor's last trial; null: none is named. */
export function thrownBy(
  { kept, folded }: OpenCompetition,
  competitor: string,
  { implementId }: Pick<Draft, 'implementId'>,
): KeptImplement | null {
  if (folded.kind !== 'distance') return null;
  const last = [...folded.state.attempts.values()]
    .filter((attempt) => attempt.competitor === competitor && attempt.judgement.outcome !== 'pass')
    .sort((a, b) => a.sequence - b.sequence)
    .at(-1);
  const id = implementId ?? last?.judgement.implementId;
  return kept.implements?.[competitor]?.find((one) => one.id === id) ?? null;
}
