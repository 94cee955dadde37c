import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { useOpen } from '../desk-context.js';

/** Who does not start, or does after all. */
export function Starters() {
  const { desk, open } = useOpen();
  const { competitors } = open.folded.state;
  const enter = (competitor: string, status: 'DNS' | 'started') =>
    desk.enter({ kind: 'start', competitor, status }, () => t(status === 'DNS' ? 'more.dns' : 'more.starts'));
  return (
    <section>
      <h2>{t('more.people')}</h2>
      {desk.said.value?.kind === 'refused' && (
        <p class="notice refused" role="alert" lang="en">
          {desk.said.value.text} {desk.said.value.remedy}
        </p>
      )}
      <ul class="list starters">
        {competitors.map(({ key, status }) => {
          const { bib, name } = desk.personOf(key);
          const isAway = status === 'DNS';
          return (
            <li key={key}>
              <span>
                <span class="bib">{bib}</span> {name}
              </span>
              <Button
                kind="quiet"
                label={`${bib} ${name}: ${t(isAway ? 'more.starts' : 'more.dns')}`}
                onPress={() => enter(key, isAway ? 'started' : 'DNS')}
              >
                {t(isAway ? 'more.starts' : 'more.dns')}
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
