import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { Background } from '../platform/background/background.js';
import type { Analysis } from './findings/analyse.js';
import type { AnalysisTask } from './findings/task.js';

const WORKER = new URL('./analysis.worker', import.meta.url);

/** Two threads: a first answer never waits behind the thorough ones. */
@Injectable()
export class WorkerPools implements OnModuleDestroy {
  private readonly quick = new Background<AnalysisTask, Analysis>(WORKER, { maxQueue: 1_000 });
  private readonly thorough = new Background<AnalysisTask, Analysis>(WORKER, { maxQueue: 10_000 });

  first(task: AnalysisTask): Promise<Analysis> {
    return this.quick.run(task);
  }

  full(task: AnalysisTask): Promise<Analysis> {
    return this.thorough.run(task);
  }

  async onModuleDestroy(): Promise<void> {
    await Promise.all([this.quick.onModuleDestroy(), this.thorough.onModuleDestroy()]);
  }
}
