import 'reflect-metadata';
import { type Type } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { GraphQLSchemaBuilderModule, GraphQLSchemaFactory } from '@nestjs/graphql';
import { lexicographicSortSchema, printSchema } from 'graphql';
import { CAPABILITIES } from '../capabilities.js';
import { PLATFORM_PROVIDERS } from '../platform/platform.module.js';

/** The schema as the server serves it, as text in a fixed order. Needs no database and no port. */
export async function schemaText(): Promise<string> {
  const context = await NestFactory.createApplicationContext(GraphQLSchemaBuilderModule, { logger: false });
  try {
    const schema = await context.get(GraphQLSchemaFactory).create(resolvers());
    return `${printSchema(lexicographicSortSchema(schema))}\n`;
  } finally {
    await context.close();
  }
}

/** Every resolver of the platform and of the capabilities. */
export function resolvers(): Type[] {
  const provided = CAPABILITIES.flatMap((module) => Reflect.getMetadata('providers', module) as Type[]);
  return [...PLATFORM_PROVIDERS, ...provided].filter((one) =>
    Reflect.hasMetadata('graphql:resolver_type', one),
  );
}
