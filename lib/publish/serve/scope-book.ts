import { type Problem, problemText } from '../../model/problem.ts';
import type { Look, SeenFile } from './file-looks.ts';
import type { PageMade } from './page-maker.ts';
import { PromisingFiles, type PromisingTo } from './promising-files.ts';
import { filesOf, jobFileOf, jobsIn, keyOf, type Scope, scopeName } from './scopes.ts';

/** Files, and the digest that stands for them and for the layouts. */
export interface Basis {
  readonly key: string;
  readonly files: readonly SeenFile[];
}

/** A basis from which pages could be made, with what was wrong in what they leave out. */
interface GoodBasis extends Basis {
  readonly troubles: readonly string[];
}

/** How a scope stands at the latest save. */
export interface ScopeStanding {
  readonly scope: Scope;
  readonly now: Basis;
  /** `unknown` until its files were read and planned; `gone` where its file is not there any more. */
  readonly verdict: 'unknown' | 'read' | 'unread' | 'failed' | 'gone';
  readonly troubles: readonly string[];
  /** What it was last made from without an error; null where it never was. */
  readonly good: GoodBasis | null;
}

/** How each scope stands at the latest save, and from what it was last good. */
export class ScopeBook {
  #look: Look = { files: [], missing: [] };
  readonly #promising = new PromisingFiles();
  #promisingTo: PromisingTo = () => [];
  #layouts = '';
  readonly #scopes = new Map<string, ScopeStanding>();

  /** Takes the latest save. Gives the scopes whose files are others now. */
  take(look: Look, layouts: string): Scope[] {
    this.#look = look;
    this.#promisingTo = this.#promising.in(look);
    this.#layouts = layouts;
    const all: Scope[] = [{ kind: 'shop' }, { kind: 'guides' }];
    for (const job of jobsIn(look)) all.push({ kind: 'job', job });
    const known = [...this.#scopes.values()].map(({ scope }) => scope);
    const changed = new Map<string, Scope>();
    for (const scope of [...all, ...known]) {
      const before = this.#scopes.get(scopeName(scope));
      const after = this.#begun(scope, before?.good ?? null);
      if (before?.now.key === after.now.key && before.verdict !== 'gone' && after.verdict !== 'gone')
        continue;
      this.#scopes.set(scopeName(scope), after);
      changed.set(scopeName(scope), scope);
    }
    return [...changed.values()];
  }

  of(scope: Scope): ScopeStanding {
    const known = this.#scopes.get(scopeName(scope));
    if (known) return known;
    const begun = this.#begun(scope, null);
    this.#scopes.set(scopeName(scope), begun);
    return begun;
  }

  /** Ids of the jobs of the latest save. */
  get jobs(): readonly string[] {
    return jobsIn(this.#look);
  }

  /** Jobs of the latest save that lists leave out. */
  get missing(): string[] {
    return this.jobs.filter((job) => {
      const { verdict } = this.of({ kind: 'job', job });
      return verdict === 'unread' || verdict === 'failed';
    });
  }

  /** Every trouble of the latest save, as far as it is known. */
  get troubles(): string[] {
    return [...this.#scopes.values()].flatMap(({ troubles }) => troubles);
  }

  /** True where anything of the latest save could not be read or planned. */
  get hasErrors(): boolean {
    return [...this.#scopes.values()].some(
      ({ scope, verdict, troubles }) => troubles.length > 0 && (verdict !== 'gone' || scope.kind === 'shop'),
    );
  }

  /** Notes what came of making a page of a scope from these files. What is out of date is not noted. */
  settle(scope: Scope, key: string, made: PageMade): void {
    const before = this.of(scope);
    if (before.now.key !== key) return;
    const troubles = troublesOf(scope, made, before);
    const isRead = made.state !== 'unread' && (scope.kind !== 'job' || troubles.length === 0);
    this.#scopes.set(scopeName(scope), {
      ...before,
      verdict: isRead ? 'read' : 'unread',
      troubles,
      good: isRead ? { ...before.now, troubles } : before.good,
    });
  }

  /** Notes a fault of the program in making a page of a scope. */
  fail(scope: Scope, key: string, error: unknown): void {
    const before = this.of(scope);
    if (before.now.key !== key) return;
    this.#scopes.set(scopeName(scope), { ...before, verdict: 'failed', troubles: [faultText(scope, error)] });
  }

  #begun(scope: Scope, good: GoodBasis | null): ScopeStanding {
    const promising = scope.kind === 'job' ? this.#promisingTo(scope.job) : [];
    const files = [...filesOf(scope, this.#look), ...promising];
    const now = { key: `${keyOf(files)} ${this.#layouts}`, files };
    const gone = this.#goneText(scope, good);
    if (gone !== null) return { scope, now, verdict: 'gone', troubles: [gone], good };
    // Saved as it was before: what came of it is known.
    if (good?.key === now.key) return { scope, now, verdict: 'read', troubles: good.troubles, good };
    const faults = faultsOf(files);
    const isUnread = faults.length > 0 && scope.kind !== 'shop';
    return { scope, now, verdict: isUnread ? 'unread' : 'unknown', troubles: faults, good };
  }

  #goneText(scope: Scope, good: Basis | null): string | null {
    const [folder] = this.#look.missing;
    if (folder !== undefined)
      return `${folder}/ is not there: it was moved, renamed or deleted, or its disk is away. Put it back: its pages come back with it.`;
    if (scope.kind !== 'job' || this.jobs.includes(scope.job) || good === null) return null;
    return `${jobFileOf(scope.job)} is not there any more: it was renamed, moved or deleted.`;
  }
}

/** Files that could not be read as text at all. */
function faultsOf(files: readonly SeenFile[]): string[] {
  return files.flatMap(({ path, fault }) =>
    fault ? [`${path}:${fault.line}:1: error: ${fault.message}`] : [],
  );
}

/** The problems that keep a scope from being made, its own first; for everything, all. */
function troublesOf(scope: Scope, made: PageMade, { good, now }: ScopeStanding): string[] {
  const faulty = new Set(now.files.flatMap(({ path, fault }) => (fault ? [path] : [])));
  const problems = made.problems.filter(({ where }) => !faulty.has(where.file));
  const isOwn = ({ where }: Problem): boolean =>
    scope.kind === 'job'
      ? where.file === jobFileOf(scope.job) || where.file.startsWith(`content/jobs/${scope.job}/`)
      : scope.kind === 'shop' || where.file.startsWith('content/guides/');
  const own = problems.filter(isOwn);
  const others = made.state === 'unread' ? problems.filter((problem) => !isOwn(problem)) : [];
  const texts = [...faultsOf(now.files), ...[...own, ...others].map(problemText)];
  return texts.length === 0 ? [] : [...cutShort(now.files, good), ...texts];
}

/** Files that hold only the beginning of what they held when all was well: hardly meant so. */
function cutShort(files: readonly SeenFile[], good: Basis | null): string[] {
  const before = new Map(good?.files.map(({ path, text }) => [path, text]));
  return files.flatMap(({ path, text }) => {
    const was = before.get(path) ?? null;
    if (was === null || text === null || text.length >= was.length || !was.startsWith(text)) return [];
    const line = text.split('\n').length;
    return [
      `${path}:${line}:1: error: the file ends here, in the middle of what it held before: it was saved only in part`,
    ];
  });
}

function faultText(scope: Scope, error: unknown): string {
  const chain: string[] = [];
  for (let cause = error; cause instanceof Error; cause = cause.cause) chain.push(cause.message);
  const subject = scope.kind === 'job' ? jobFileOf(scope.job) : 'content';
  return [
    `${subject}: this page could not be made, and that is no fault of what is written:`,
    ...chain.map((message) => `  ${message}`),
    '  Please report it with the job file, private values taken out.',
  ].join('\n');
}
