import { useSignal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { useDesk } from '../desk-context.js';
import { passIn } from '../../offline/pass.js';
import { comeIn } from '../session.js';

export function SignInScreen() {
  return (
    <main class="page">
      <SignInForm />
    </main>
  );
}

/** Takes the token of a post, or the link that holds it. */
export function SignInForm() {
  const { store } = useDesk();
  const text = useSignal('');
  const problem = useSignal<string | null>(null);
  const isBusy = useSignal(false);
  const signIn = async (event: Event) => {
    event.preventDefault();
    isBusy.value = true;
    const failure = await comeIn(store, passIn(text.value));
    isBusy.value = false;
    const isAway = failure?.kind === 'unreachable' || failure?.kind === 'unavailable';
    problem.value = failure && t(isAway ? 'signIn.unreachable' : 'signIn.failed');
  };
  return (
    <section class="sign-in">
      <h2>{t('signIn.title')}</h2>
      <p>{t('signIn.how')}</p>
      <form onSubmit={signIn}>
        <label class="field">
          <span>{t('signIn.token')}</span>
          <input
            type="text"
            autocomplete="off"
            spellcheck={false}
            required
            value={text.value}
            onInput={({ currentTarget }) => (text.value = currentTarget.value)}
          />
        </label>
        {problem.value && (
          <p class="notice refused" role="alert">
            {problem.value}
          </p>
        )}
        <button type="submit" class="button main" disabled={isBusy.value}>
          {t('signIn.go')}
        </button>
      </form>
    </section>
  );
}
