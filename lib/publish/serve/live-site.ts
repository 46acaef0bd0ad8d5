import { fileOf, folderOf } from '../site/addresses.ts';
import type { Look } from './file-looks.ts';
import type { MadeFile, PageMade, PageMaker } from './page-maker.ts';
import { PageShelf, type ShelvedPage } from './page-shelf.ts';
import type { Standing } from './page-standing.ts';
import { type Basis, ScopeBook, type ScopeStanding } from './scope-book.ts';
import { filesOf, jobFileOf, type Scope, scopeName, scopeOf } from './scopes.ts';

export interface LiveSiteOptions {
  readonly maker: PageMaker;
  /** A file of the site that was built last, from before the server began; null where there is none. */
  readonly lastBuilt: (file: string) => Promise<string | null>;
  readonly say: (message: string) => void;
  /** Called when the standing of pages may be another: those of the scope. */
  readonly onChange: (scope: Scope) => void;
  /** Addresses that readers have open. */
  readonly open: () => Iterable<string>;
}

/** The key of a page that was built before the server began. */
const builtBefore = 'built before';

interface Making {
  readonly key: string;
  readonly control: AbortController;
  readonly done: Promise<void>;
}

/** What is shown at an address. */
export interface ShownPage {
  /** Null where no page was ever made. */
  readonly page: ShelvedPage | null;
  /** True where the latest save makes no page at that address, and none ever was there. */
  readonly isAbsent: boolean;
  readonly standing: Standing;
}

/**
 * The pages of a shop as they stand at the latest save: each is made once for each state of the files that it is made
 * from, the ones that are looked at first. Until it is made, or where it can't be, the last good one stands with what is
 * to say about it.
 */
export class LiveSite {
  readonly #options: LiveSiteOptions;
  readonly #book = new ScopeBook();
  readonly #shelf = new PageShelf();
  readonly #makings = new Map<string, Making>();
  /** Addresses at which the latest save makes no page, with the digest of the files that tell. */
  readonly #absent = new Map<string, string>();
  readonly #said = new Set<string>();
  /** How many answers wait for a page. */
  readonly #waiting = new Map<string, number>();
  #writing: ReadonlySet<string> = new Set();
  #look: Look = { files: [], missing: [] };
  #layouts = '';
  /** Settles when every job of the latest save is planned or known not to be. */
  #jobsDone: Promise<void> = Promise.resolve();
  #search: { readonly key: string; readonly files: Promise<readonly MadeFile[]> } | null = null;
  #hasEnded = false;
  readonly #searching = new AbortController();
  /** The last search index that was made. */
  #searchFiles: readonly MadeFile[] | null = null;

  constructor(options: LiveSiteOptions) {
    this.#options = options;
  }

  get hasErrors(): boolean {
    return this.#book.hasErrors;
  }

  /** Takes the latest save: ends work that is out of date, and begins what it asks for. */
  take(look: Look, layouts: string): void {
    this.takeWriting([]);
    this.#look = look;
    this.#layouts = layouts;
    const changed = this.#book.take(look, layouts);
    for (const [address, { key, control }] of this.#makings)
      if (key !== this.#book.of(scopeOf(address)).now.key) {
        control.abort();
        this.#makings.delete(address);
      }
    this.#forgetSaid();
    const unknown = this.#book.jobs.filter(
      (job) => this.#book.of({ kind: 'job', job }).verdict === 'unknown',
    );
    const jobs = Promise.all(unknown.map((job) => this.#begin(`/jobs/${job}/`)));
    this.#jobsDone = jobs.then(() => {
      if (this.#look === look && unknown.length > 0) this.#saySummary();
    });
    for (const address of this.#options.open()) void this.#begin(address);
    for (const scope of changed) this.#options.onChange(scope);
  }

  /** Ends all work. */
  end(): void {
    this.#hasEnded = true;
    this.#searching.abort();
    for (const { control } of this.#makings.values()) control.abort();
    this.#makings.clear();
  }

  /** Takes note of files that are still being written; none once all are whole. */
  takeWriting(paths: readonly string[]): void {
    const before = this.#writing;
    this.#writing = new Set(paths);
    for (const address of this.#options.open())
      if (this.#isWritten(before, address) !== this.#isWritten(this.#writing, address))
        this.#options.onChange(scopeOf(address));
  }

  /** What stands at an address now; what is lacking is begun, and waited for so long and no longer (ms). */
  async shown(address: string, waitMs: number): Promise<ShownPage> {
    this.#waiting.set(address, (this.#waiting.get(address) ?? 0) + 1);
    const done = this.#begin(address);
    this.#options.maker.hurry();
    await Promise.race([done, new Promise((resolve) => setTimeout(resolve, waitMs).unref())]);
    this.#waiting.set(address, (this.#waiting.get(address) ?? 1) - 1);
    if (this.#shelf.get(address) === null) await this.#putLastBuilt(address);
    const page = this.#shelf.get(address);
    const scope = this.#book.of(scopeOf(address));
    const isAbsent = page === null && this.#isAbsent(address, scope);
    return { page, isAbsent, standing: this.standing(address) };
  }

  /** How the page at an address stands. */
  standing(address: string): Standing {
    const scope = scopeOf(address);
    const { verdict, now, troubles } = this.#book.of(scope);
    const page = this.#shelf.get(address);
    const isWritten = this.#isWritten(this.#writing, address);
    const isMaking = this.#makings.get(address)?.key === now.key;
    const isPlanning = (isMaking && verdict !== 'unread' && verdict !== 'failed') || verdict === 'unknown';
    return {
      isCurrent: verdict === 'read' && page?.key === now.key && !isWritten,
      work: isWritten ? 'writing' : isPlanning ? 'planning' : null,
      troubles: isPlanning ? [] : troubles,
      missing: scope.kind === 'shop' && verdict === 'read' ? this.#book.missing : [],
      made: page?.made ?? '',
    };
  }

  /** A file beside the page at an address, as the page that is shown there has it; null where it has none of that path. */
  async fileBeside(address: string, path: string, waitMs: number): Promise<string | null> {
    const { page } = await this.shown(address, waitMs);
    if (page?.key === builtBefore) return this.#options.lastBuilt(`${folderOf(address)}${path}`);
    return page?.files.find((file) => file.path === path)?.text ?? null;
  }

  /** A file of the search index: of the latest save, or while that is planned of the one before; null where there is none. */
  async searchFile(path: string): Promise<Uint8Array | null> {
    const { now } = this.#book.of({ kind: 'shop' });
    if (this.#search?.key !== now.key) this.#beginSearch(now);
    const files = this.#searchFiles ?? (await this.#search?.files);
    return files?.find((file) => file.path === path)?.content ?? null;
  }

  #beginSearch({ key, files }: Basis): void {
    const isLatest = (): boolean => this.#search?.key === key;
    const make = async (): Promise<readonly MadeFile[]> => {
      await this.#jobsDone;
      if (!isLatest()) return [];
      const wish = { files, layouts: this.#layouts };
      const made = await this.#options.maker.search(wish, {
        signal: this.#searching.signal,
        isAwaited: () => true,
      });
      if (isLatest()) this.#searchFiles = made;
      return made;
    };
    const failed = (error: unknown): readonly MadeFile[] => {
      if (!this.#searching.signal.aborted) this.#say(error instanceof Error ? error.message : String(error));
      return [];
    };
    this.#search = { key, files: make().catch(failed) };
  }

  #isAbsent(address: string, { scope, now, good, verdict }: ScopeStanding): boolean {
    if (verdict === 'gone') return false;
    if (scope.kind === 'job' && good === null && !this.#book.jobs.includes(scope.job)) return true;
    return this.#absent.get(address) === now.key;
  }

  #isWritten(paths: ReadonlySet<string>, address: string): boolean {
    if (paths.size === 0) return false;
    const scope = scopeOf(address);
    return (
      filesOf(scope, this.#look).some(({ path }) => paths.has(path)) ||
      (scope.kind === 'job' && paths.has(jobFileOf(scope.job)))
    );
  }

  /** Begins to make the page at an address, unless it is made, being made or can't be. */
  #begin(address: string): Promise<void> {
    if (this.#hasEnded) return Promise.resolve();
    const { scope, now, verdict, good } = this.#book.of(scopeOf(address));
    const making = this.#makings.get(address);
    if (making) return making.done;
    const isMade = this.#shelf.get(address)?.key === now.key || this.#absent.get(address) === now.key;
    if (isMade || (scope.kind === 'job' && !this.#book.jobs.includes(scope.job) && good === null))
      return Promise.resolve();
    const control = new AbortController();
    const isHopeless = verdict === 'gone' || verdict === 'unread' || verdict === 'failed';
    const done = (isHopeless ? Promise.resolve() : this.#make(address, scope, now, control.signal))
      .then(() => (control.signal.aborted ? undefined : this.#standIn(address, control.signal)))
      .finally(() => {
        if (this.#makings.get(address)?.control === control) this.#makings.delete(address);
        if (!control.signal.aborted) this.#options.onChange(scope);
      });
    this.#makings.set(address, { key: now.key, control, done });
    return done;
  }

  /** Makes a page from the latest save, and notes what came of it. */
  async #make(address: string, scope: Scope, { key, files }: Basis, signal: AbortSignal): Promise<void> {
    try {
      if (scope.kind === 'shop') await this.#jobsDone;
      if (signal.aborted) return;
      const made = await this.#page(address, files, signal);
      if (signal.aborted) return;
      this.#book.settle(scope, key, made);
      if (this.#book.of(scope).verdict === 'read') {
        if (made.state === 'made') this.#shelf.put(address, made, key);
        if (made.state === 'absent') this.#absent.set(address, key);
      }
    } catch (error) {
      if (!signal.aborted) this.#book.fail(scope, key, error);
    }
    for (const trouble of this.#book.of(scope).troubles) this.#say(trouble);
  }

  /** Where the latest save makes no page and none is at hand: the page of the files from which it was last good. */
  async #standIn(address: string, signal: AbortSignal): Promise<void> {
    const { good, verdict } = this.#book.of(scopeOf(address));
    if (verdict === 'read' || verdict === 'unknown' || good === null || this.#shelf.get(address)) return;
    const made = await this.#page(address, good.files, signal).catch(() => null);
    if (made?.state === 'made' && !this.#shelf.get(address)) this.#shelf.put(address, made, good.key);
  }

  #page(address: string, files: Basis['files'], signal: AbortSignal): Promise<PageMade> {
    const isAwaited = () =>
      (this.#waiting.get(address) ?? 0) > 0 || [...this.#options.open()].includes(address);
    return this.#options.maker.page({ address, files, layouts: this.#layouts }, { signal, isAwaited });
  }

  async #putLastBuilt(address: string): Promise<void> {
    const html = await this.#options.lastBuilt(fileOf(address));
    if (html !== null && !this.#shelf.get(address))
      this.#shelf.put(address, { html, files: [] }, builtBefore);
  }

  #saySummary(): void {
    const { jobs, missing } = this.#book;
    const planned = jobs.length - missing.length;
    const lacking = missing.length === 0 ? '' : `; not current: ${missing.join(', ')}`;
    this.#options.say(`${planned} of ${jobs.length} jobs stand as saved last${lacking}`);
  }

  /** What is not amiss any more is said again when it comes back. */
  #forgetSaid(): void {
    const still = new Set(this.#book.troubles);
    for (const text of this.#said) if (!still.has(text)) this.#said.delete(text);
  }

  /** Says a trouble once. */
  #say(trouble: string): void {
    if (this.#said.has(trouble)) return;
    this.#said.add(trouble);
    this.#options.say(trouble);
  }
}

/** True where the page at an address belongs to a scope. */
export function isOf(address: string, scope: Scope): boolean {
  return scopeName(scopeOf(address)) === scopeName(scope);
}
