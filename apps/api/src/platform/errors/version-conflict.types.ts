import { Field, Int, ObjectType } from '@nestjs/graphql';
import { refusal, UserError } from './user-error.types.js';

@ObjectType({
  implements: () => [UserError],
  description: 'Somebody else changed it since; nothing was changed now.',
})
export class VersionConflict extends UserError {
  @Field(() => Int)
  currentVersion: number;
}

export function versionConflict(currentVersion: number, what = 'competition'): VersionConflict {
  const plain = refusal({
    code: 'VERSION_CONFLICT',
    path: ['expectedVersion'],
    message: `The ${what} is at version ${currentVersion} by now.`,
    remedy: 'Read it again, and decide again.',
  });
  return Object.assign(new VersionConflict(), plain, { currentVersion });
}
