import { n } from '../../labels/notebook/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { useNotebook } from '../notebook.js';
import type { AthleteNotes } from '../shapes.js';

const PARTS = ['SUMMARY', 'FOCUS', 'NOTES', 'ANALYSIS'] as const;

/** What of the notebook the athlete and the guardians may see; nothing unless it is ticked. */
export function ReleaseSection({ athlete }: { readonly athlete: AthleteNotes }) {
  const notebook = useNotebook();
  const isOpen = (what: string): boolean => athlete.releases.some((one) => one.what === what && one.isOpen);
  const set = (what: string, open: boolean) =>
    void notebook.act(
      'releaseSet',
      { id: uuidV7(), athleteId: athlete.athleteId, what, isOpen: open },
      { done: n(open ? 'release.opened' : 'release.closed'), away: n('act.away') },
    );
  return (
    <section>
      <h3>{n('release.title')}</h3>
      <p class="hint">{n('release.how')}</p>
      {PARTS.map((what) => (
        <label key={what} class="switch">
          <input
            type="checkbox"
            checked={isOpen(what)}
            disabled={notebook.isBusy.value}
            onChange={({ currentTarget: { checked } }) => set(what, checked)}
          />
          <span>{n(`release.${what}`)}</span>
        </label>
      ))}
    </section>
  );
}
