import { applyDecorators } from '@nestjs/common';
import { Field, ID, InputType } from '@nestjs/graphql';
import { Transform } from 'class-transformer';
import { IsOptional, Matches } from 'class-validator';
import { PASSWORD_LENGTH } from '../platform/identity/passwords.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';

/** A login name in the form in which it is kept: lower case, without blanks around it. */
function LoginName(): PropertyDecorator {
  return applyDecorators(
    Field(() => String, { description: 'Or an e-mail address. Capitals do not matter.' }),
    Transform(({ value }: { value: unknown }) =>
      typeof value === 'string' ? value.trim().toLowerCase() : value,
    ),
    Matches(/^[a-z0-9][a-z0-9._@+-]{2,119}$/, {
      message:
        '$property has 3 to 120 letters a to z, digits and . _ - + @, and begins with a letter or digit',
    }),
  );
}

/** A secret as it was typed. What it must be is said by the service, beside the login name. */
function Secret(description: string): PropertyDecorator {
  return applyDecorators(
    Field(() => String, { description }),
    Text(1, 4 * PASSWORD_LENGTH.most),
  );
}

/** What the person calls the device, for the list of sessions and the journal. */
function DeviceName(): PropertyDecorator {
  return applyDecorators(
    Field(() => String, {
      nullable: true,
      description:
        'What the device is called, such as "referee’s laptop": for the journal, so no name of a person.',
    }),
    IsOptional(),
    Text(1, 64),
  );
}

/** Why, for the record. */
export function Why(): PropertyDecorator {
  return applyDecorators(
    Field(() => String, { description: 'Why, for the record.' }),
    Text(1, 500),
  );
}

@InputType()
export class PersonCreateInput {
  @OwnId()
  id?: string | null;

  @LoginName()
  loginName: string;

  @Field({ description: 'For those who give roles; never public.' })
  @Text(1, 120)
  displayName: string;
}

@InputType()
export class PersonCloseInput {
  @Field(() => ID)
  @ObjectId('Person')
  personId: string;
}

@InputType()
export class SetupCodeIssueInput {
  @Field(() => ID)
  @ObjectId('Person')
  personId: string;
}

@InputType()
export class PasswordSetUpInput {
  @LoginName()
  loginName: string;

  @Secret('The one-time code, with or without the dashes.')
  setupCode: string;

  @Secret(`At least ${PASSWORD_LENGTH.least} characters, without the login name; any kind of character.`)
  password: string;

  @DeviceName()
  device?: string | null;
}

@InputType()
export class PasswordChangeInput {
  @Secret('The one that holds now.')
  current: string;

  @Secret(`At least ${PASSWORD_LENGTH.least} characters, without the login name; any kind of character.`)
  password: string;
}

@InputType()
export class SignInInput {
  @LoginName()
  loginName: string;

  @Secret('As it was typed.')
  password: string;

  @DeviceName()
  device?: string | null;
}

@InputType()
export class SessionRefreshInput {
  @Field({ description: 'Good for one time: keep the one that comes back.' })
  @Text(1, 200)
  refreshToken: string;
}

@InputType()
export class SignOutInput {
  @Field({ defaultValue: false, description: 'On every device; only for a person who signed in.' })
  isEverywhere: boolean;
}
