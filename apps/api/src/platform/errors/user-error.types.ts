import { Field, InterfaceType, ObjectType } from '@nestjs/graphql';

/** A business outcome other than success, as data in a payload's `userErrors`. */
@InterfaceType({
  description:
    'Why a mutation did not do what was asked. Codes are listed with each mutation; accept codes that you do not know.',
})
export abstract class UserError {
  @Field({ description: 'Stable, for programs.' })
  code: string;

  @Field({ description: 'One sentence for people.' })
  message: string;

  @Field(() => [String], { nullable: true, description: 'The input field at fault, from `input` inwards.' })
  path: readonly string[] | null;

  @Field(() => String, {
    nullable: true,
    description: 'The rule of competition behind it, where there is one.',
  })
  rule: string | null;

  @Field(() => String, { nullable: true, description: 'What to do now.' })
  remedy: string | null;
}

export interface RefusalParts {
  readonly code: string;
  readonly message: string;
  readonly path?: readonly string[];
  readonly rule?: string | null;
  readonly remedy?: string | null;
}

@ObjectType({ implements: () => [UserError], description: 'The plain form of a user error.' })
export class Refusal extends UserError {}

/** `path` starts below `input`, which is put before it. */
export function refusal(parts: RefusalParts): Refusal {
  return Object.assign(new Refusal(), {
    code: parts.code,
    message: parts.message,
    path: parts.path ? ['input', ...parts.path] : null,
    rule: parts.rule ?? null,
    remedy: parts.remedy ?? null,
  });
}
