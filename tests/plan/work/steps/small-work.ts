import type { PlanBoard, PlanItem } from '../../../../lib/model/plan/index.ts';
import { onceEach } from '../../../../lib/plan/once-each.ts';
import { planJob } from '../../../../lib/plan/plan-job.ts';
import { orderOfWork } from '../../../../lib/plan/work/steps/order-of-work.ts';
import type { Work } from '../../../../lib/plan/work/work.ts';
import { samplePlan } from '../../../publish/sample/sample-plan.ts';
import { byId, jobOf } from '../../../rules/case.ts';
import { type Written, withoutBoard, written } from '../../../rules/content.ts';
import { usualWork } from '../usual-work.ts';

type Change = (content: Written) => void;
const planOnce = onceEach(
  (content: Written) => {
    const job = jobOf(content);
    return { job, plan: planJob(job).plan };
  },
  (content) => JSON.stringify(content),
);
/** The small job of the rules' tests without a board, planned once for all that ask of it. */
export function small(change: Change = () => {}) {
  const content = written();
  change(content);
  withoutBoard(content);
  return planOnce(content);
}

const [firstBoard] = samplePlan().boards;
if (!firstBoard) throw new Error('The sample plan has a board.');
export const sampleBoard: PlanBoard = firstBoard;
const plainBoard: PlanBoard = {
  ...sampleBoard,
  id: 'main',
  ribs: [],
  routes: [],
  placements: [],
  fixings: [],
  holes: [],
};
export const onBoard = ['block', 'ground', 'amp', 'dsp'];

/** The work of the small plan with its amplifier, processor and distributions on a board, and what a test changes. */
export function work(board: Partial<PlanBoard> = {}, change: (work: Work) => Work = (one) => one): Work {
  const { plan } = small();
  const items = plan.items.map(
    (item): PlanItem => (onBoard.includes(item.id) ? { ...item, board: 'main', seat: null } : item),
  );
  return change({
    plan: { ...plan, items, boards: [{ ...plainBoard, ...board }] },
    declared: [],
    ...usualWork,
  });
}
export const ordered = (...given: Parameters<typeof work>) => orderOfWork(work(...given));
export const at = (order: ReturnType<typeof orderOfWork>, id: string) => byId(order.steps, id);
export const has = (order: ReturnType<typeof orderOfWork>, id: string) =>
  order.steps.some((step) => step.id === id);
