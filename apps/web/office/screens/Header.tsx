import { timeText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { a } from '../../labels/account/words.js';
import { o } from '../../labels/office/words.js';
import { Button } from '../../ui/Button.jsx';
import { useOffice } from '../office.js';

/** Which meet, who works here, and of when is what is shown. */
export function Header() {
  const office = useOffice();
  const { session, meets } = office;
  const name = meets.value?.find(({ id }) => id === office.meetId.value)?.name;
  const many = (meets.value?.length ?? 0) > 1;
  return (
    <header class="head">
      <div class="head-title">
        <h1>{name ?? o('office')}</h1>
        {name && <p>{o('office')}</p>}
      </div>
      {session.grants.value !== null && (
        <div class="who">
          {many && (
            <label>
              <span class="unseen">{o('meet.choose')}</span>
              <select
                value={office.meetId.value ?? ''}
                onChange={({ currentTarget }) => {
                  office.meetId.value = currentTarget.value;
                  void office.look();
                }}
              >
                {meets.value!.map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.name}
                  </option>
                ))}
              </select>
            </label>
          )}
          <LinkState />
          <span>{t('more.signedInAs', { label: session.name.value })}</span>
          <Button kind="quiet" onPress={() => session.forget()}>
            {a('signOut')}
          </Button>
        </div>
      )}
    </header>
  );
}

/** The office needs a network, and says so when there is none. */
function LinkState() {
  const { link, asOfMs } = useOffice();
  const time = asOfMs.value === null ? '–' : timeText(asOfMs.value);
  return (
    <p class={`link ${link.value}`} role="status" data-link={link.value}>
      {link.value === 'offline'
        ? o('link.away', { time })
        : link.value === 'no-right'
          ? t('link.no-right')
          : o('link.asOf', { time })}
    </p>
  );
}
