import { Module } from '@nestjs/common';
import { AgeFactorsService } from './age-factors.service.js';
import { CategoriesResolver } from './categories.resolver.js';
import { DefinitionsService } from './definitions.service.js';

/** Age categories and age factors. */
@Module({ providers: [DefinitionsService, AgeFactorsService, CategoriesResolver] })
export class CategoriesModule {}
