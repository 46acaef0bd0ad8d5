import type { PlanStep, PlanWire } from '../../../model/plan/index.ts';
import { benchOf, labelsOf, minutesFor, ownWires, pieces, type Step, step, type Work } from '../work.ts';
import { roundSteps } from './laying-and-crimping-rounds.ts';
import type { BoardWork } from './steps-on-board.ts';

type Dependency = PlanStep['waitsFor'][number];

/** What is mounted on boards that are in the vehicle already. */
export interface LateWork {
  readonly steps: readonly Step[];
  /** Wires that are laid in these steps. */
  readonly laid: ReadonlySet<string>;
}

/**
 * Parts that stand over wires from the vehicle: once the board is in, these wires are led to their places, then the
 * parts are set over them and wired. `boardsIn` are the steps that fix the boards.
 */
export function lateWork(work: Work, boards: readonly BoardWork[], boardsIn: readonly string[]): LateWork {
  const laid = new Set<string>();
  const steps = boards.flatMap((own): Step[] => {
    if (own.late.items.length === 0) return [];
    const lead = leadStep(work, own, boardsIn, laid);
    for (const id of [...lead.installs, ...own.late.wires.map((wire) => wire.id)]) laid.add(id);
    const why = [...new Set(own.late.over.map((wait) => wait.why))].join('; ');
    return [
      lead,
      ...roundSteps(work, {
        name: `${own.board}-in-vehicle`,
        place: 'vehicle',
        by: 'vehicle',
        items: own.late.items,
        wires: own.late.wires,
        phases: own.phases,
        before: lead.id,
        why: why === '' ? 'what it waits for is put on in the vehicle' : why,
      }),
    ];
  });
  return { steps, laid };
}

/** Leads the wires beneath to their places; one that goes from board to board is laid here. */
function leadStep(work: Work, own: BoardWork, boardsIn: readonly string[], laid: ReadonlySet<string>): Step {
  const beneath = ownWires(work).filter(({ id }) => own.late.over.some(({ after }) => after === id));
  const loose = beneath.filter((wire) => isLoose(work, wire) && !laid.has(wire.id));
  const waits = boardsIn.map(
    (id): Dependency => ({ step: id, why: 'the wires reach the board once it is in' }),
  );
  return step(`lead-${own.board}`, waits, {
    layer: 'run',
    place: 'vehicle',
    by: 'vehicle',
    text: `Lead to their places on ${own.board}, ends loose: ${labelsOf(beneath)}. ${own.late.items.join(', ')} will stand over them`,
    tools: ['ties', 'label printer'],
    minutes: minutesFor(work, 'lay-wire', pieces(beneath)),
    installs: loose.map(({ id }) => id),
    acts: [`lead:${own.board}`, ...loose.map(({ id }) => `label:${id}`)],
    proof:
      'Each lies as on the wiring drawing and reaches its terminal; nothing is pinched when the part is set down',
  });
}

/** True for a wire that is laid at the vehicle and in no run. */
export function isLoose(work: Work, wire: PlanWire): boolean {
  return wire.run === null && benchOf(work, wire) === null;
}
