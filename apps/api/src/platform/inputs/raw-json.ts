import { applyDecorators } from '@nestjs/common';
import { Transform, Type } from 'class-transformer';

/**
 * An input field of scalar JSON reaches the service as it was sent, not copied and not cleaned of odd keys. The type
 * keeps class-transformer from walking into it, where a key named "constructor" would be taken for a class.
 */
export function RawJson(): PropertyDecorator {
  return applyDecorators(
    Type(() => Boolean),
    Transform(({ obj, key }: { obj: Record<string, unknown>; key: string }) => obj[key]),
  );
}
