import { Module } from '@nestjs/common';
import { EntriesResolver } from './entries.resolver.js';
import { NotebookResolver } from './notebook.resolver.js';
import { NotebookService } from './notebook.service.js';
import { ObservationsService } from './observations.service.js';
import { PracticeResolver } from './practice.resolver.js';
import { PracticeService } from './practice.service.js';
import { VocabularyResolver } from './vocabulary.resolver.js';
import { VocabularyService } from './vocabulary.service.js';

/** The coach’s notebook: throws of practice, what was seen of a throw, and what is said of an athlete beside them. */
@Module({
  providers: [
    PracticeService,
    ObservationsService,
    NotebookService,
    VocabularyService,
    PracticeResolver,
    NotebookResolver,
    EntriesResolver,
    VocabularyResolver,
  ],
  exports: [NotebookService, VocabularyService],
})
export class TechniqueModule {}
