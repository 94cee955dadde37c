import { o } from '../../labels/office/words.js';
import { SignInForm } from '../../ui/SignInForm.jsx';
import { useOffice } from '../office.js';

export function SignInScreen() {
  const office = useOffice();
  return (
    <main class="office-main sign-in">
      <SignInForm title={o('signIn.title')} session={office.session} onIn={() => office.findMeets()} />
    </main>
  );
}
