/** A text after one key of the number pad. */
export function afterKey(text: string, key: string): string {
  switch (key) {
    case 'clear':
      return '';
    case 'back':
      return text.slice(0, -1);
    case 'sign':
      return /^[-−]/.test(text) ? text.slice(1) : `-${text.replace(/^\+/, '')}`;
    default:
      return /^[A-Za-z]$/.test(text) ? key : `${text}${key}`;
  }
}
