import { useSignal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { o } from '../../labels/office/words.js';
import type { Failure } from '../../offline/api-client.js';
import { passIn } from '../../offline/pass.js';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';

/** By name and password, or with what the director handed out. */
export function SignInScreen() {
  const office = useOffice();
  const loginName = useSignal('');
  const password = useSignal('');
  const token = useSignal('');
  const problem = useSignal<string | null>(null);
  const isBusy = useSignal(false);
  const go = (way: () => Promise<Failure | null>) => async (event: Event) => {
    event.preventDefault();
    isBusy.value = true;
    const failure = await way();
    isBusy.value = false;
    const isAway = failure?.kind === 'unreachable' || failure?.kind === 'unavailable';
    problem.value = failure && (isAway ? t('signIn.unreachable') : o('signIn.wrong'));
    if (!failure) await office.findMeets();
  };
  return (
    <main class="office-main sign-in">
      <h2>{o('signIn.title')}</h2>
      {problem.value && (
        <p class="notice refused" role="alert">
          {problem.value}
        </p>
      )}
      <form onSubmit={go(() => office.session.signIn(loginName.value.trim(), password.value))}>
        <TextField label={o('signIn.name')} value={loginName} autocomplete="username" isRequired />
        <TextField
          label={o('signIn.password')}
          value={password}
          type="password"
          autocomplete="current-password"
          isRequired
        />
        <button type="submit" class="button main" disabled={isBusy.value}>
          {t('signIn.go')}
        </button>
      </form>
      <form onSubmit={go(() => office.session.comeIn(passIn(token.value)))}>
        <p>{o('signIn.orToken')}</p>
        <TextField label={t('signIn.token')} value={token} isRequired />
        <button type="submit" class="button" disabled={isBusy.value}>
          {o('signIn.withToken')}
        </button>
      </form>
    </main>
  );
}
