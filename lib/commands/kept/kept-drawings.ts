import { drawKind, type KindPages, type NumberRun, numberRuns, writtenPage } from '../../draw/draw-job.ts';
import { type DrawingId, drawingIds } from '../../draw/drawings/index.ts';
import type { TextMetrics } from '../../draw/lettering/text-metrics.ts';
import type { Keeper } from '../../kept/keeper.ts';
import { projected, type Reads, recordedReads } from '../../kept/recorded-reads.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { PlanDrawing } from '../../publish/site/shop-site.ts';

export type DrawingStore = Pick<Keeper, 'known' | 'put'>;

/** What the drawings of one kind read of the plan when they were drawn last: where to look for them, and no more. */
const readsStep = { id: 'drawing-reads' };
/** How many of the drawings of a kind have a number. */
const countStep = { id: 'drawing-count' };
const kindStep = { id: 'drawings-of-kind' };

/**
 * The drawings of a plan, those of each kind kept under what they read of the plan as they were drawn: an edit of
 * anything else draws them not anew. What a kind reads is recorded, not stated, so that no field can be forgotten.
 */
export function keptDrawings(
  plan: BuildPlan,
  metrics: TextMetrics,
  store: DrawingStore,
): readonly PlanDrawing[] {
  const shown = { ...plan, findings: ofMark(plan) };
  const kinds = drawingIds.map((id) => new KeptKind(id, shown, metrics, store));
  const runs = numberRuns(kinds.map((kind) => kind.count()));
  return kinds.flatMap((kind, at) => kind.drawings(runs[at] ?? { before: 0, of: 0 }));
}

/** Of the findings of a plan, what its sheets are marked by: one that stops it, where there is any. */
function ofMark({ findings }: Pick<BuildPlan, 'findings'>): BuildPlan['findings'] {
  return findings.filter(({ level }) => level === 'stop').slice(0, 1);
}

/** All that the drawings of a kind follow from, beside their numbers. */
interface KindInput {
  readonly kind: DrawingId;
  readonly reads: Reads;
  readonly read: unknown;
}

/** One kind of drawing of one plan. */
class KeptKind {
  readonly #kind: DrawingId;
  readonly #plan: BuildPlan;
  readonly #metrics: TextMetrics;
  readonly #store: DrawingStore;
  /** By what they read when they were drawn last; null where they never were. */
  readonly #input: KindInput | null;
  #drawn: { readonly pages: KindPages; readonly reads: () => Reads } | null = null;

  constructor(kind: DrawingId, plan: BuildPlan, metrics: TextMetrics, store: DrawingStore) {
    this.#kind = kind;
    this.#plan = plan;
    this.#metrics = metrics;
    this.#store = store;
    const reads = store.known<object, Reads>(readsStep, this.#place())?.value;
    this.#input = reads ? this.#by(reads) : null;
  }

  count(): number {
    const known = this.#input && this.#store.known<KindInput, number>(countStep, this.#input);
    return known ? known.value : this.#draw().pages.numbered;
  }

  drawings(run: NumberRun): readonly PlanDrawing[] {
    const known =
      this.#input && this.#store.known<object, readonly PlanDrawing[]>(kindStep, { ...this.#input, ...run });
    if (known) return known.value;
    const { pages, reads } = this.#draw();
    const drawings = pages.pages(run).map((page) => writtenPage(page));
    this.#put(drawings, pages.numbered, run, reads());
    return drawings;
  }

  #draw(): { readonly pages: KindPages; readonly reads: () => Reads } {
    if (this.#drawn) return this.#drawn;
    const { value, reads } = recordedReads(this.#plan);
    this.#drawn = { pages: drawKind(this.#kind, value, this.#metrics), reads };
    return this.#drawn;
  }

  #put(drawings: readonly PlanDrawing[], count: number, run: NumberRun, reads: Reads): void {
    // What was read at another time, of another plan, may be read again.
    const all = [...new Set([...(this.#input?.reads ?? []), ...reads])].sort();
    const input = this.#by(all);
    this.#store.put(countStep, input, count);
    this.#store.put(kindStep, { ...input, ...run }, drawings);
    this.#store.put(readsStep, this.#place(), all);
  }

  #place(): object {
    return { kind: this.#kind, job: this.#plan.job.id };
  }

  #by(reads: Reads): KindInput {
    return { kind: this.#kind, reads, read: projected(this.#plan, reads) };
  }
}
