import type { OnModuleDestroy } from '@nestjs/common';
import { Piscina } from 'piscina';

/** TypeScript in a thread of its own, when the program itself runs from its sources. */
const FROM_SOURCES = ['--conditions=source', '--import', '@swc-node/register/esm-register'];

const KEPT_MS = 60_000;

/**
 * Long computing beside the server, in one thread that starts when it is needed: whoever records never waits for it.
 * The module of the worker exports one function by default; `In` and `Out` are copied between the threads.
 */
export class Background<In, Out> implements OnModuleDestroy {
  private readonly pool: Piscina<In, Out>;

  /** @param module of the worker, by its URL without the ending, e.g. `new URL('./press.worker', import.meta.url)` */
  constructor(module: URL, { maxQueue = 100 }: { readonly maxQueue?: number } = {}) {
    const isSource = import.meta.url.endsWith('.ts');
    this.pool = new Piscina<In, Out>({
      filename: `${module.href}${isSource ? '.ts' : '.js'}`,
      execArgv: isSource ? FROM_SOURCES : [],
      minThreads: 0,
      maxThreads: 1,
      idleTimeout: KEPT_MS,
      maxQueue,
    });
  }

  run(input: In): Promise<Out> {
    return this.pool.run(input);
  }

  async onModuleDestroy(): Promise<void> {
    await this.pool.destroy();
  }
}
