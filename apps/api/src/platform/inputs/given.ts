/** An optional input field that was sent with a value: neither left out nor null. */
export function isGiven<T>(value: T | null | undefined): value is T {
  return value !== null && value !== undefined;
}
