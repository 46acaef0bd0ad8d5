import { type EstimateInput, estimateJob } from '../../lib/estimate/estimate-job.ts';
import { shopSchema } from '../../lib/model/content/shop.ts';
import type { Estimate } from '../../lib/model/estimate/estimate.ts';
import type { WorkedHours } from '../../lib/model/estimate/worked-hours.ts';
import type { BuildPlan, PlanPick } from '../../lib/model/plan/index.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';

/** What a job takes of a part by the piece. */
export function pieces(part: string, quantity: number, more: Partial<PlanPick> = {}): PlanPick {
  const row = { part, title: part, kind: 'fixing', quantity, unit: 'piece' } as const;
  return { ...row, stockQuantity: quantity, short: 0, ...more };
}

/** What an estimate of the tests is made from; the rest is left empty. */
export interface MadeUp {
  readonly pick?: readonly PlanPick[];
  /** Lengths of wire by part (m). */
  readonly cutM?: Readonly<Record<string, readonly number[]>>;
  /** Minutes by layer, one step each. */
  readonly minutes?: Readonly<Record<string, number>>;
  /** As the shop file has them. */
  readonly shop?: {
    readonly currency?: string;
    readonly prices?: Readonly<Record<string, string>>;
    readonly estimate?: Readonly<Record<string, string>>;
  };
  readonly worked?: readonly WorkedHours[];
  readonly plan?: Partial<BuildPlan>;
}

function inputOf({
  pick = [],
  cutM = {},
  minutes = {},
  shop = {},
  worked = [],
  plan = {},
}: MadeUp): EstimateInput {
  const sample = samplePlan();
  const [wire] = sample.wires;
  const [step] = sample.steps;
  if (!wire || !step) throw new Error('The sample has a wire and a step.');
  const wires = Object.entries(cutM).flatMap(([part, lengths]) =>
    lengths.map((lengthM, at): BuildPlan['wires'][number] => {
      const [from, to] = wire.ends;
      const bare = { shrink: undefined };
      return {
        ...wire,
        id: `${part}-${at}`,
        origin: 'job',
        part,
        lengthM,
        ends: [
          { ...from, ...bare },
          { ...to, ...bare },
        ],
      };
    }),
  );
  const onReels = Object.entries(cutM).map(([part, lengths]): PlanPick => {
    const quantity = Number(lengths.reduce((sum, one) => sum + one, 0).toFixed(3));
    return { ...pieces(part, quantity), kind: 'wire', unit: 'm' };
  });
  return {
    plan: {
      job: sample.job,
      items: [],
      findings: [],
      cables: [],
      runs: [],
      wires,
      pick: [...pick, ...onReels],
      steps: Object.entries(minutes).map(([layer, own]) => ({ ...step, id: layer, layer, minutes: own })),
      ...plan,
    },
    shop: shopSchema.pick({ currency: true, prices: true, estimate: true }).parse(shop),
    worked,
  };
}

/** The estimate of a job of which no more is known than a test says. */
export function estimated(made: MadeUp): Estimate {
  return estimateJob(inputOf(made));
}

/** The cost of each part, in smallest units of the currency. */
export function costsOf({ parts }: Estimate): Record<string, number | null> {
  return Object.fromEntries(parts.map(({ part, costMinor }) => [part, costMinor]));
}

/** The lines of the sum, in smallest units of the currency. */
export function sumOf({ sum }: Estimate): Record<string, number> {
  return Object.fromEntries(sum.map(({ of, minor }) => [of, minor]));
}
