import type { PartPromise } from '../../../../lib/model/content/promised.ts';
import type { PlanPick } from '../../../../lib/model/plan/index.ts';
import { wireToBuy } from '../../../../lib/plan/work/wire-to-buy.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { reelStock } from '../../../shelf/takes.ts';
import { aboutPlan } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The job that takes these from the shelf, and nothing else. */
const taking =
  (...pick: readonly PlanPick[]) =>
  () =>
    aboutPlan((plan) => {
      plan.pick = [...pick];
    });
const pieces = (part: string, kind: PlanPick['kind'], quantity: number, stockQuantity: number): PlanPick => {
  return { part, title: part, kind, quantity, unit: 'piece', stockQuantity, short: quantity - stockQuantity };
};
/** Of 16 ft on the shelf, so many that no single reel has. */
const reel = (short: number): PlanPick => {
  return { part: 'reel', title: 'Wire', kind: 'wire', quantity: 4.27, unit: 'm', stockQuantity: 4.88, short };
};
/** A fuse that is short has a rule of its own. */
const enough = taking(pieces('lug', 'terminal', 4, 4), pieces('some-fuse', 'fuse', 4, 2), reel(0));

const side = [{ job: 'side-well', revision: 'B', quantity: 4 }];
const promise: PartPromise = {
  ...{ unit: 'piece', to: side, over: 0, uncutM: [], pieces: 0 },
  ...{ reelsM: [], offCutsM: {}, sheets: {} },
};

/** A job that takes four of a part, of which the shelf has what is left beside a promise. */
function promised(part: string, own: Partial<PartPromise>, left: Case['job']['shop']['stock'][string]): Case {
  const { job, plan } = taking(pieces(part, 'terminal', 4, 4))();
  const shop = { ...job.shop, stock: { ...job.shop.stock, [part]: left } };
  return { job: { ...job, shop, promised: { [part]: { ...promise, ...own } } }, plan };
}

/** A shelf that nobody counted, under a job that takes these. */
function uncounted(...pick: readonly PlanPick[]): Case {
  const { job, plan } = taking(...pick)();
  return { job: { ...job, shop: { ...job.shop, 'stock-counted': false } }, plan };
}

export const stockCases = {
  // The shop's own stock.
  'stock-not-counted': {
    fires: [
      {
        name: 'a job that takes what is there by figures that nobody counted',
        about: () => uncounted(pieces('lug', 'terminal', 4, 4)),
        level: 'note',
        subject: 'lug',
        file: 'shop.yaml',
        says: /1 entry of the pick list rests/,
        toDo: /take its line stock-counted: false away/,
      },
    ],
    quiet: [
      { name: 'a shelf that was counted', about: enough },
      { name: 'a job that takes nothing from it', about: () => uncounted(pieces('lug', 'terminal', 4, 0)) },
    ],
  },
  'stock-promised-over': {
    fires: [
      {
        name: 'four lugs promised, and three there',
        about: () => promised('lug', { pieces: 3, over: 1 }, { pieces: 0, 'off-cuts': {} }),
        level: 'caution',
        subject: 'lug',
        file: 'shop.yaml',
        says: /^the shelf has 3 pieces of lug, and 4 pieces are promised to side-well revision B: 1 piece too many$/,
      },
      {
        name: 'lengths of two jobs that no reel has in one',
        about: () =>
          promised(
            'reel',
            {
              ...{ unit: 'm', over: 3, reelsM: [8] },
              to: [...side, { job: 'van', revision: 'A', quantity: 7 }],
            },
            reelStock([2]),
          ),
        level: 'caution',
        subject: 'reel',
        file: 'shop.yaml',
        says: /10000 mm.* of reel, and .*11000 mm.* are promised to side-well revision B and van revision A: .*3000 mm.* of that is on no single length/,
      },
    ],
    quiet: [
      {
        name: 'as many as there are',
        about: () => promised('lug', { pieces: 4 }, { pieces: 0, 'off-cuts': {} }),
      },
    ],
  },
  // The shop's own stock.
  'stock-short': {
    fires: [
      {
        name: '14 ft that no single reel holds',
        about: taking(reel(1.83)),
        level: 'caution',
        subject: 'reel',
        file: 'shop.yaml',
        says: /no single reel/,
      },
      {
        name: 'a wire of a size that no reel of the catalogue has',
        about: () =>
          aboutPlan((plan) => {
            const [own] = plan.wires.filter(({ origin }) => origin === 'job');
            if (!own) throw new Error('The plan has a wire of the job.');
            Object.assign(own, { part: null, size: { label: '9 AWG', awg: '9', areaMm2: 6.6 } });
            plan.pick = wireToBuy(plan.wires);
          }),
        level: 'caution',
        subject: 'feed',
        says: /no reel of the catalogue is of: Wire 9 AWG/,
      },
    ],
    quiet: [{ name: 'enough, and a fuse that has a rule of its own', about: enough }],
  },
  'to-order': {
    fires: [
      {
        name: 'two lugs short',
        about: taking(pieces('lug', 'terminal', 4, 2)),
        level: 'caution',
        subject: 'lug',
        path: '/stock',
        file: 'shop.yaml',
      },
      {
        name: 'one list of what is short',
        about: taking(pieces('amp-a', 'amplifier', 2, 0), pieces('woofer-a', 'amplifier', 2, 1)),
        level: 'caution',
        subject: 'amp-a',
        file: 'shop.yaml',
        says: /^to order for this job: 2 pieces of amp-a, 1 piece of woofer-a \(the job takes 2, the shelf has 1\)$/,
        toDo: /^order them; the catalogue has no amp-a and woofer-a: /,
      },
      {
        name: 'a part of the catalogue',
        about: taking(pieces('two-channel', 'amplifier', 2, 0)),
        level: 'caution',
        subject: 'two-channel',
        file: 'shop.yaml',
        toDo: /such as two-channel: \{ pieces: 2 \}$/,
      },
    ],
    quiet: [{ name: 'enough, and a fuse that has a rule of its own', about: enough }],
  },
} satisfies RuleCases;
