import type { ClubRow } from '#persistence';
import { Field, ID, ObjectType } from '@nestjs/graphql';
import { globalId } from '../inputs/global-id.js';

@ObjectType()
export class Club {
  @Field(() => ID)
  id: string;

  @Field()
  name: string;
}

export function clubObject(row: ClubRow): Club {
  return { id: globalId('Club', row.id), name: row.name };
}
