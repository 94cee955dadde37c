import { useSignal } from '@preact/signals';
import { a } from '../labels/account/words.js';
import { t } from '../labels/languages.js';
import type { Failure } from '../offline/api-client.js';
import { passIn } from '../offline/pass.js';
import type { Session } from '../offline/session.js';
import { TextField } from './TextField.jsx';

interface SignInFormProps {
  readonly title: string;
  readonly session: Session;
  readonly onIn: () => Promise<unknown>;
}

/** By name and password, or with what somebody handed out. */
export function SignInForm({ title, session, onIn }: SignInFormProps) {
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
    problem.value = failure && (isAway ? t('signIn.unreachable') : a('signIn.wrong'));
    if (!failure) await onIn();
  };
  return (
    <>
      <h2>{title}</h2>
      {problem.value && (
        <p class="notice refused" role="alert">
          {problem.value}
        </p>
      )}
      <form onSubmit={go(() => session.signIn(loginName.value.trim(), password.value))}>
        <TextField label={a('signIn.name')} value={loginName} autocomplete="username" isRequired />
        <TextField
          label={a('signIn.password')}
          value={password}
          type="password"
          autocomplete="current-password"
          isRequired
        />
        <button type="submit" class="button main" disabled={isBusy.value}>
          {t('signIn.go')}
        </button>
      </form>
      <form onSubmit={go(() => session.comeIn(passIn(token.value)))}>
        <p>{a('signIn.orToken')}</p>
        <TextField label={t('signIn.token')} value={token} isRequired />
        <button type="submit" class="button" disabled={isBusy.value}>
          {a('signIn.withToken')}
        </button>
      </form>
    </>
  );
}
