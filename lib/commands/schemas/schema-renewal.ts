import type { SeenFile } from '../../publish/serve/file-looks.ts';
import type { Effects } from '../effects.ts';
import type { ShopPageMaker } from '../serve/page-maker.ts';
import { outsideText } from '../told/failure-text.ts';
import { renewSchemas } from './renew-schemas.ts';

/** Renews the schemas for editors after each save, while nothing that a reader waits for is to be done. */
export class SchemaRenewal {
  readonly #effects: Effects;
  readonly #maker: Pick<ShopPageMaker, 'schemas'>;
  #control = new AbortController();
  #done: Promise<void> = Promise.resolve();

  constructor(effects: Effects, maker: Pick<ShopPageMaker, 'schemas'>) {
    this.#effects = effects;
    this.#maker = maker;
  }

  /** Begins with the latest save; what is at work for an earlier one is given up. */
  begin(files: readonly SeenFile[]): void {
    this.#control.abort();
    const control = new AbortController();
    this.#control = control;
    const before = this.#done;
    this.#done = this.#renew(files, control.signal, before);
  }

  /** Gives up what is not done yet, and settles once nothing is written any more. */
  async end(): Promise<void> {
    this.#control.abort();
    await this.#done;
  }

  async #renew(files: readonly SeenFile[], signal: AbortSignal, before: Promise<void>): Promise<void> {
    try {
      const schemas = await this.#maker.schemas(files, signal);
      await before;
      if (!signal.aborted) await renewSchemas(this.#effects, schemas);
    } catch (error) {
      if (!signal.aborted)
        this.#effects.tell(`the schemas for editors stay as they were: ${outsideText(error)}`);
    }
  }
}
