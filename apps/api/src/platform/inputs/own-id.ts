import { applyDecorators } from '@nestjs/common';
import { Field } from '@nestjs/graphql';
import { IsOptional, IsString } from 'class-validator';
import { Uuid } from '../scalars/uuid.js';

/** The id of something to be made, if the client makes it itself: then a request can be sent again without harm. */
export function OwnId(): PropertyDecorator {
  return applyDecorators(
    Field(() => Uuid, {
      nullable: true,
      description: 'Made by the client (version 7), so that sending the same again makes nothing twice.',
    }),
    IsOptional(),
    IsString(),
  );
}
