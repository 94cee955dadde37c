import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { t } from '../labels/languages.js';
import { Button } from './Button.jsx';

interface DialogProps {
  readonly title: string;
  readonly children: ComponentChildren;
  readonly onClose: () => void;
}

/** The browser's own dialog: it keeps the focus inside and closes with Escape. */
export function Dialog({ title, children, onClose }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog ref={ref} class="dialog" aria-labelledby={id} onCancel={onClose}>
      <div class="dialog-head">
        <h2 id={id}>{title}</h2>
        <Button kind="quiet" onPress={onClose}>
          {t('close')}
        </Button>
      </div>
      {children}
    </dialog>
  );
}
