import { type Fault, negativeFault } from '../model/fault.ts';
import { amps, ampsDrawn } from '../model/printed/told.ts';
import { type FuseFormId, fuseFormIds, fuseForms } from '../model/tables/fuse-forms.ts';
import { commonPractice, type Traced, traced } from '../model/trace.ts';
import type { PowerRules } from './power-rules.ts';

/** A fuse on the shelf. */
export interface StockedFuse {
  readonly part: string;
  readonly form: FuseFormId;
  readonly ratingA: number;
  readonly quantity: number;
  /** The part's own interrupting rating (A): goes before that of its form. */
  readonly interruptA?: number;
}

/** A holder that another form would need. */
export interface StockedHolder {
  readonly part: string;
  readonly form: FuseFormId;
  readonly quantity: number;
  readonly largestA?: number;
  readonly boardAreaM2?: number;
}

/** What a fuse has to do. */
export interface FuseDuty {
  /** Current that it carries at rated power (A). */
  readonly ratedA: number;
  /** The device maker's ceiling (A); null where there is none. */
  readonly ceilingA: number | null;
  /** The least that the maker of the device asks for (A), where more than its draw; 0 where left out. */
  readonly makerA?: number;
  /** How many fuses side by side, this one included, share the ceiling; 1 where left out. */
  readonly ceilingFuses?: number;
  /**
   * Every conductor downstream up to the next fuse, with its ampacity (A, stop limit) and how many fuses side by side,
   * this one included, let current into it (1 where left out): together they must not exceed it.
   */
  readonly protects: readonly {
    readonly id: string;
    readonly ampacityA: number;
    readonly sideBySide?: number;
  }[];
  /** The form of the holder, or null to choose among all. */
  readonly form: FuseFormId | null;
  /** The holder's own limit (A). */
  readonly holderLargestA?: number;
  /** True where only ratings that keep the margin may stand; any that carries the rated current where left out. */
  readonly keepsMargin?: boolean;
  /**
   * Fault current that it should be able to interrupt (A): infinite where nobody states it, null where the source is
   * limited.
   */
  readonly interruptNeedA: number | null;
}

/** A fuse that may lawfully stand there. */
export interface LawfulFuse {
  readonly form: FuseFormId;
  readonly ratingA: number;
  readonly interruptA: number;
  readonly stockQuantity: number;
  /** The stocked part; null where the shelf has none. */
  readonly part: string | null;
  /** False where it is under the margin on the rated current that the house asks for. */
  readonly keepsMargin: boolean;
  /** Holder to add where the form differs from the one in place. */
  readonly addParts: readonly string[];
  readonly boardAreaM2: number | null;
}

/** The choice, with all that it was made from. */
export interface FuseChoice {
  readonly chosen: LawfulFuse | null;
  /** Rated current times margin (A). */
  readonly wantedA: Traced<number>;
  /** The most that may stand there (A); null where neither a ceiling nor a conductor bounds it yet. */
  readonly mostA: Traced<number> | null;
  readonly reason: string;
  readonly alternatives: readonly LawfulFuse[];
  /** By how many amperes the rated current exceeds what may stand there, where nothing fits; else 0. */
  readonly shortA: number;
}

/**
 * Chooses a fuse: rated current times 1.25, or what the maker of the device asks for, then the next rating made in the
 * form, at most the maker's ceiling and
 * 100 % of the ampacity of everything it protects (common practice). Stocked ones go first; where none keeps the
 * margin, the largest one that still carries the rated current. While nothing bounds the fuse (its conductor is
 * chosen after it) the next made rating goes first, on the shelf or not. Never a rating above what protects the conductor.
 * Of all these the one goes first that comes nearest to interrupting the source: where none in the form does, the
 * rating still holds, and the alternatives, the best of each other form and rating, are only those that do.
 */
export function chooseFuse(
  duty: FuseDuty,
  shelf: { readonly fuses: readonly StockedFuse[]; readonly holders?: readonly StockedHolder[] },
  rules: PowerRules,
): FuseChoice | Fault {
  const bad = dutyFault(duty);
  if (bad) return bad;
  const wantedA = wanted(duty, rules);
  const mostA = most(duty);
  const lawful = candidates(duty, shelf, wantedA.value, rules).filter(
    (fuse) =>
      fuse.ratingA >= duty.ratedA &&
      (fuse.keepsMargin || !duty.keepsMargin) &&
      fuse.ratingA <= (mostA?.value ?? fuse.ratingA) &&
      fuse.ratingA <= (fuse.form === duty.form ? (duty.holderLargestA ?? fuse.ratingA) : fuse.ratingA),
  );
  const ranked = lawful.toSorted(byPreference(mostA !== null, duty.interruptNeedA ?? 0));
  const askedA = interruptBarA(duty, lawful);
  const chosen = ranked.find(({ form }) => duty.form === null || form === duty.form) ?? null;
  return {
    chosen,
    wantedA,
    mostA,
    reason: reasonOf(duty, chosen, wantedA.value, mostA),
    alternatives: bestOfEach(ranked.filter((fuse) => fuse !== chosen && fuse.interruptA >= askedA)),
    shortA: chosen || !mostA ? 0 : Math.max(0, duty.ratedA - mostA.value),
  };
}

function wanted({ ratedA, makerA = 0 }: FuseDuty, { fuseMargin }: PowerRules): Traced<number> {
  const marginA = ratedA * fuseMargin;
  const common = { rule: 'fuse-choice', citation: commonPractice, mark: 'cp' } as const;
  if (makerA > marginA)
    return traced(makerA, 'A', {
      ...common,
      formula: 'the greatest of the rated current with its margin and what the maker of the device asks for',
      inputs: [
        ['rated current with its margin', marginA, 'A'],
        ["maker's fuse", makerA, 'A'],
      ],
    });
  return traced(marginA, 'A', {
    ...common,
    formula: 'In = I * m',
    inputs: [
      ['I', ratedA, 'A'],
      ['m', fuseMargin, ''],
    ],
  });
}

/** What an alternative must interrupt (A); where nobody states what the source gives, the most that any here does. */
function interruptBarA({ interruptNeedA }: FuseDuty, lawful: readonly LawfulFuse[]): number {
  if (interruptNeedA === null || Number.isFinite(interruptNeedA)) return interruptNeedA ?? 0;
  return Math.max(0, ...lawful.map(({ interruptA }) => interruptA));
}

function dutyFault(duty: FuseDuty): Fault | null {
  const ampacities = duty.protects.map(({ id, ampacityA }) => [`ampacity of ${id}`, ampacityA] as const);
  return negativeFault({
    'rated current': duty.ratedA,
    ...(duty.ceilingA !== null && { "maker's ceiling": duty.ceilingA }),
    ...(duty.interruptNeedA !== null &&
      duty.interruptNeedA !== Number.POSITIVE_INFINITY && { 'interrupting need': duty.interruptNeedA }),
    ...Object.fromEntries(ampacities),
  });
}

function most(duty: FuseDuty): Traced<number> | null {
  const caps = [
    ...(duty.ceilingA === null ? [] : [shared("maker's ceiling", duty.ceilingA, duty.ceilingFuses)]),
    ...duty.protects.map(({ id, ampacityA, sideBySide }) =>
      shared(`ampacity of ${id}`, ampacityA, sideBySide),
    ),
  ];
  if (caps.length === 0) return null;
  return traced(Math.min(...caps.map(([, capA]) => capA)), 'A', {
    rule: 'fuse-choice',
    formula: "the least of the maker's ceiling and the ampacity of each conductor protected",
    citation: commonPractice,
    mark: 'cp',
    inputs: caps.map(([name, capA]) => [name, capA, 'A'] as const),
  });
}

/** A limit that fuses side by side share evenly, so that their sum keeps it. */
function shared(name: string, limitA: number, fuses = 1): readonly [name: string, capA: number] {
  return fuses === 1 ? [name, limitA] : [`${name}, ${amps(limitA)}, over ${fuses} fuses`, limitA / fuses];
}

type Shelf = Parameters<typeof chooseFuse>[1];

/** Every stocked fuse, and in each form every made rating that the shelf lacks. */
function candidates(duty: FuseDuty, shelf: Shelf, wantedA: number, rules: PowerRules): LawfulFuse[] {
  const stocked = shelf.fuses.filter(({ quantity }) => quantity > 0);
  const onShelf = new Set(stocked.map(({ form, ratingA }) => `${form} ${ratingA}`));
  const made = fuseFormIds.flatMap((form) =>
    fuseForms[form].ratingsA
      .filter((ratingA) => !onShelf.has(`${form} ${ratingA}`))
      .map((ratingA): Omit<StockedFuse, 'part'> => ({ form, ratingA, quantity: 0 })),
  );
  const place = (fuse: Omit<StockedFuse, 'part'>, part: string | null): LawfulFuse => {
    const holder = holderFor(fuse, duty, shelf.holders ?? []);
    return {
      form: fuse.form,
      ratingA: fuse.ratingA,
      interruptA: fuse.interruptA ?? rules.formInterruptA[fuse.form],
      stockQuantity: fuse.quantity,
      part,
      keepsMargin: fuse.ratingA >= wantedA,
      addParts: holder ? [holder.part] : [],
      boardAreaM2: holder?.boardAreaM2 ?? null,
    };
  };
  return [...stocked.map((fuse) => place(fuse, fuse.part)), ...made.map((fuse) => place(fuse, null))];
}

function holderFor(
  fuse: Omit<StockedFuse, 'part'>,
  duty: FuseDuty,
  holders: readonly StockedHolder[],
): StockedHolder | undefined {
  if (fuse.form === duty.form) return undefined;
  const fitting = holders.filter(
    ({ form, largestA }) => form === fuse.form && fuse.ratingA <= (largestA ?? fuse.ratingA),
  );
  return fitting.find(({ quantity }) => quantity > 0) ?? fitting[0];
}

/**
 * What comes nearest to interrupting the source first; on the shelf first where the fuse is bounded; then with the margin kept; nearest to what is wanted; then by form
 * and part, so that the order is fixed.
 */
function byPreference(bounded: boolean, needA: number): (a: LawfulFuse, b: LawfulFuse) => number {
  const clearsA = ({ interruptA }: LawfulFuse) => Math.min(needA, interruptA);
  return (a, b) => {
    const shelfFirst = Number(b.stockQuantity > 0) - Number(a.stockQuantity > 0);
    const marginFirst = Number(b.keepsMargin) - Number(a.keepsMargin);
    const nearest = a.keepsMargin && b.keepsMargin ? a.ratingA - b.ratingA : b.ratingA - a.ratingA;
    return (
      clearsA(b) - clearsA(a) ||
      (bounded ? shelfFirst : 0) ||
      marginFirst ||
      nearest ||
      shelfFirst ||
      fuseFormIds.indexOf(a.form) - fuseFormIds.indexOf(b.form) ||
      (a.part ?? '').localeCompare(b.part ?? '', 'en')
    );
  };
}

/** Of each form the best on the shelf and, where the shelf's lacks the margin or is empty, the best that is made. */
function bestOfEach(ranked: readonly LawfulFuse[]): LawfulFuse[] {
  return fuseFormIds.flatMap((form) => {
    const own = ranked.filter((fuse) => fuse.form === form);
    const stocked = own.find(({ stockQuantity }) => stockQuantity > 0);
    const made = own.find(({ stockQuantity }) => stockQuantity === 0);
    return [...(stocked ? [stocked] : []), ...(made && !stocked?.keepsMargin ? [made] : [])];
  });
}

function reasonOf(
  duty: FuseDuty,
  chosen: LawfulFuse | null,
  wantedA: number,
  mostA: Traced<number> | null,
): string {
  const binding = mostA?.trace.inputs.find(({ value }) => value === mostA.value);
  const limit =
    mostA && binding ? `the limit is ${binding.name}, ${amps(mostA.value)}` : 'nothing bounds it yet';
  if (!chosen) {
    if (mostA && duty.ratedA > mostA.value)
      return `no fuse may stand here: it carries ${ampsDrawn(duty.ratedA)}, and ${limit}`;
    const form = duty.form ? fuseForms[duty.form].name : 'any form';
    return `no rating is made in ${form} for ${ampsDrawn(duty.ratedA)} or more: ${limit}`;
  }
  const shelf = chosen.stockQuantity > 0 ? 'on the shelf' : 'not on the shelf';
  const wanted =
    (duty.makerA ?? 0) >= wantedA
      ? `the maker of the device asks for ${ampsDrawn(wantedA)}`
      : `${ampsDrawn(duty.ratedA)} with its margin asks for ${ampsDrawn(wantedA)}`;
  return chosen.keepsMargin
    ? `${wanted}, ${amps(chosen.ratingA)} is the nearest lawful rating, ${shelf}; ${limit}`
    : `${wanted}, which is not to be had: ${amps(chosen.ratingA)}, ${shelf}, carries the current without that margin; ${limit}`;
}
