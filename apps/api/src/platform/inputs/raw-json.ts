import { Transform } from 'class-transformer';

/** An input field of scalar JSON reaches the service as it was sent, not copied and not cleaned of odd keys. */
export function RawJson(): PropertyDecorator {
  return Transform(({ obj, key }: { obj: Record<string, unknown>; key: string }) => obj[key]);
}
