import type { ComponentChildren } from 'preact';

export interface ButtonProps {
  readonly children: ComponentChildren;
  readonly onPress: () => void;
  /** `main`: what is done most; `danger`: what takes something away. */
  readonly kind?: 'main' | 'plain' | 'danger' | 'quiet';
  readonly label?: string;
  readonly isDisabled?: boolean;
  readonly isPressed?: boolean;
  readonly autoFocus?: boolean;
}

/** At least 48 pixels high: for a thumb, in gloves, in the rain. */
export function Button({
  children,
  onPress,
  kind = 'plain',
  label,
  isDisabled,
  isPressed,
  autoFocus,
}: ButtonProps) {
  return (
    <button
      type="button"
      class={`button ${kind}`}
      onClick={onPress}
      disabled={isDisabled ?? false}
      aria-label={label}
      aria-pressed={isPressed}
      ref={(element) => {
        if (autoFocus && element && !element.dataset.focused) {
          element.dataset.focused = 'yes';
          element.focus();
        }
      }}
    >
      {children}
    </button>
  );
}
