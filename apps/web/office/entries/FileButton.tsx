import { useSignal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { Button } from '../../ui/Button.jsx';
import { useOffice } from '../office.js';

interface FileButtonProps {
  readonly label: string;
  readonly address: string;
  /** Under which it is kept. */
  readonly name: string;
}

/** Fetches a file with the rights of whoever is signed in, and gives it to the browser to keep. */
export function FileButton({ label, address, name }: FileButtonProps) {
  const office = useOffice();
  const isBusy = useSignal(false);
  const fetchIt = async () => {
    isBusy.value = true;
    const file = await office.session.paper(address);
    isBusy.value = false;
    if (!file) {
      office.say({ kind: 'refused', text: e('away'), rule: null, remedy: null });
      return;
    }
    const link = document.createElement('a');
    link.href = URL.createObjectURL(file);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  };
  return (
    <Button onPress={() => void fetchIt()} isDisabled={isBusy.value}>
      {label}
    </Button>
  );
}
