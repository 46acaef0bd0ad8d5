import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanStep } from '../../../../lib/model/plan/index.ts';
import { orderOfWork } from '../../../../lib/plan/work/steps/order-of-work.ts';
import type { Work } from '../../../../lib/plan/work/work.ts';
import { randomWork } from '../random-work.ts';
import { allBefore, hasRing, positions } from './step-order.ts';

/** What each thing of a plan asks for, told anew from the plan and not from the steps. */
function askedActs({ plan }: Work): readonly (readonly [act: string, thing: string | null])[] {
  return [
    ...plan.controls.flatMap(({ item, control, final }) => [
      [`set:${item}.${control}`, item] as const,
      ...(final.during === 'presets' ? [] : [[`finish:${item}.${control}`, item] as const]),
    ]),
    ...plan.wires.flatMap(({ id }) => [[`label:${id}`, id] as const, [`test:${id}`, id] as const]),
    ...plan.power.fuses.map(({ id }) => [`fit-fuse:${id}`, id] as const),
    ...plan.cables.flatMap(({ id, conductors }) =>
      conductors.flatMap(({ name, wire }) => (wire === null ? [[`cap:${id}.${name}`, null] as const] : [])),
    ),
    ...plan.measurements.map(({ id }) => [`measure:${id}`, null] as const),
    ...plan.boards.flatMap(({ id }) =>
      ['cut', 'drill', 'test', 'fix'].map((act) => [`${act}:${id}`, null] as const),
    ),
  ];
}

describe('the order of work of any plan', () => {
  it('is a partial order: every step waits for steps that exist, come before it and have a reason', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps } = orderOfWork(work);
        const at = positions(steps);
        expect(at.size).toBe(steps.length);
        expect(hasRing(steps)).toBe(false);
        for (const { id, after, waitsFor } of steps) {
          for (const before of after)
            expect(at.get(before), `${id} after ${before}`).toBeLessThan(at.get(id) ?? -1);
          expect(new Set(waitsFor.map(({ step }) => step))).toEqual(new Set(after));
          for (const { why } of waitsFor) expect(why).toMatch(/\S/);
        }
      }),
    );
  });

  it('has the steps of each place one behind the other by the clock, those at the board first', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps } = orderOfWork(work);
        const isAtBoard = ({ by }: PlanStep) => by === 'board';
        for (const own of [steps.filter(isAtBoard), steps.filter((one) => !isAtBoard(one))]) {
          const starts = own.map(({ startMinute }) => startMinute);
          expect(starts).toEqual(starts.toSorted((a, b) => a - b));
        }
      }),
    );
  });

  it('installs every item and wire once', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const installed = orderOfWork(work).steps.flatMap(({ installs }) => installs);
        const things = [...work.plan.items, ...work.plan.wires].map(({ id }) => id);
        expect(installed.toSorted()).toEqual(things.toSorted());
      }),
    );
  });

  it('does each act that a thing asks for once, and not before the thing is installed', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps } = orderOfWork(work);
        const at = (is: (step: PlanStep) => boolean) =>
          steps.flatMap((step, index) => (is(step) ? [index] : []));
        for (const [act, thing] of askedActs(work)) {
          const done = at(({ acts }) => acts.includes(act));
          expect(done, act).toHaveLength(1);
          if (thing === null) continue;
          const [own, installed] = [
            steps[done[0] ?? -1],
            steps.find(({ installs }) => installs.includes(thing)),
          ];
          if (!own || !installed || own === installed) continue;
          expect(allBefore(steps, own.id), act).toContain(installed.id);
        }
        // A spare conductor is capped once its cable lies: after every wire that the cable carries.
        for (const { id, conductors } of work.plan.cables)
          for (const { name } of conductors.filter(({ wire }) => wire === null)) {
            const capped = steps.find(({ acts }) => acts.includes(`cap:${id}.${name}`))?.id ?? '';
            for (const wire of conductors.flatMap((one) => one.wire ?? [])) {
              const laid = steps.find(({ installs }) => installs.includes(wire))?.id;
              expect(allBefore(steps, capped), `${id}.${name} after ${wire}`).toContain(laid);
            }
          }
        const all = steps.flatMap(({ acts }) => acts);
        expect(new Set(all).size).toBe(all.length);
      }),
    );
  });

  it('has a subject and a proof in every step', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        for (const { installs, acts, proof, text } of orderOfWork(work).steps) {
          expect(installs.length + acts.length).toBeGreaterThan(0);
          expect(proof).toMatch(/\S/);
          expect(text).toMatch(/\S/);
        }
      }),
    );
  });

  it('connects every wire that ends in the vehicle once, after both of its ends are in place', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps } = orderOfWork(work);
        const boardOf = (terminal: string) =>
          work.plan.items.find(({ id }) => terminal.startsWith(`${id}.`))?.board ?? null;
        for (const { id, ends } of work.plan.wires) {
          const boards = ends.map(({ terminal }) => boardOf(terminal));
          const inVehicle = boards[0] === null || boards[0] !== boards[1];
          const done = steps.findIndex(({ acts }) => acts.includes(`connect:${id}`));
          expect(done >= 0, id).toBe(inVehicle);
          if (!inVehicle) continue;
          for (const { terminal } of ends) {
            const item = terminal.slice(0, terminal.indexOf('.'));
            const installed = steps.find(({ installs }) => installs.includes(item))?.id;
            expect(allBefore(steps, steps[done]?.id ?? '')).toContain(installed);
          }
        }
      }),
    );
  });

  it('gives every control that changes its final state with power on: filters, then gains, then delays', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps } = orderOfWork(work);
        const at = (act: string) => steps.findIndex(({ acts }) => acts.includes(act));
        for (const { item, control, final } of work.plan.controls) {
          const done = at(`finish:${item}.${control}`);
          if (final.during === 'presets') expect(done).toBe(-1);
          else expect(done, final.during).toBeGreaterThan(at('first-power'));
          if (final.during === 'gains') expect(done).toBeGreaterThan(at('load-filters'));
          if (final.during === 'delays') expect(done).toBeGreaterThan(at('gains'));
        }
      }),
    );
  });

  it('takes the speakers off before there is power, and puts them on once gains are set and filters proved', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps } = orderOfWork(work);
        const at = (act: string) => steps.findIndex(({ acts }) => acts.includes(act));
        const resistances = steps.findIndex(({ text }) => /resistance at each speaker plug/.test(text));
        expect(at('speakers-off')).toBeGreaterThanOrEqual(resistances);
        const order = [
          ...['speakers-off', 'battery-on', 'first-power', 'load-filters', 'prove-filters'].map(at),
          at('speakers-on'),
        ];
        expect(order[0]).toBeGreaterThanOrEqual(0);
        for (const [index, step] of order.slice(1).entries())
          expect(step).toBeGreaterThan(order[index] ?? -1);
        // Muted outputs and gains that are fully down let no tone through: both are set first.
        expect(at('prove-filters')).toBeGreaterThanOrEqual(at('gains'));
        for (const { item, control, final } of work.plan.controls)
          if (final.during === 'filters' || final.during === 'gains')
            expect(at('prove-filters')).toBeGreaterThanOrEqual(at(`finish:${item}.${control}`));
      }),
    );
  });

  it('gives no fuse and no power to what was not tested, and nothing to the vehicle before its battery is off', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps } = orderOfWork(work);
        const beforePower = allBefore(steps, 'battery-on');
        for (const step of steps.filter(({ acts }) => acts.some((act) => act.startsWith('test:'))))
          expect(beforePower, step.id).toContain(step.id);
        for (const step of steps.filter(
          ({ id, by }) => by !== 'board' && !['check-in', 'battery-off'].includes(id),
        ))
          expect(allBefore(steps, step.id), step.id).toContain('battery-off');
      }),
    );
  });

  it('never lets one person do two steps at once, nor the job end before its longest chain', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps, schedule } = orderOfWork(work);
        for (const hand of ['board', 'vehicle']) {
          const own = steps
            .filter(({ by }) => by === hand || by === 'both')
            .toSorted((a, b) => a.startMinute - b.startMinute || a.minutes - b.minutes);
          for (const [index, step] of own.entries()) {
            const next = own[index + 1];
            if (next) expect(step.startMinute + step.minutes).toBeLessThanOrEqual(next.startMinute);
          }
        }
        for (const { after, startMinute } of steps)
          for (const id of after) {
            const before = steps.find((step) => step.id === id);
            expect(startMinute).toBeGreaterThanOrEqual((before?.startMinute ?? 0) + (before?.minutes ?? 0));
          }
        expect(schedule.criticalMinutes).toBeLessThanOrEqual(schedule.twoPersonMinutes);
        expect(schedule.twoPersonMinutes).toBeLessThanOrEqual(schedule.totalMinutes);
        const onPath = schedule.criticalPath.map((id) => steps.find((step) => step.id === id)?.minutes ?? 0);
        expect(onPath.reduce((sum, minutes) => sum + minutes, 0)).toBe(schedule.criticalMinutes);
      }),
    );
  });

  it('puts a raised part on after each wire that lies beneath it, unless they wait for each other', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        const { steps, rings } = orderOfWork(work);
        fc.pre(rings.length === 0);
        const at = (id: string) => steps.findIndex(({ installs }) => installs.includes(id));
        for (const { placements, routes, id: board } of work.plan.boards)
          for (const { item, xM, widthM, raisedM } of placements)
            for (const { wire, points } of routes) {
              const own = work.plan.wires.find(({ id }) => id === wire);
              const x = points[0]?.xM ?? -1;
              const touches = own?.ends.some(({ terminal }) => terminal.startsWith(`${item}.`));
              if (!(raisedM > 0 && x > xM && x < xM + widthM) || touches) continue;
              expect(at(item), `${item} over ${wire}`).toBeGreaterThan(at(wire));
              const onBench =
                own?.run === null && !ends(own, work).some((other) => other !== null && other !== board);
              // A wire that reaches the board in the vehicle is led to its place there first.
              if (onBench) continue;
              const led = steps.findIndex(({ acts }) => acts.includes(`lead:${board}`));
              const fixed = steps.findIndex(({ acts }) => acts.includes(`fix:${board}`));
              expect(led, `${wire} led`).toBeGreaterThan(fixed);
              expect(at(item), `${item} over ${wire}`).toBeGreaterThan(led);
            }
      }),
    );
  });
});

function ends({ ends: both }: Work['plan']['wires'][number], { plan }: Work): readonly (string | null)[] {
  return both.map(
    ({ terminal }) => plan.items.find(({ id }) => terminal.startsWith(`${id}.`))?.board ?? null,
  );
}

describe('the plans that are drawn', () => {
  it('differ from each other, and hold what an order of work must cope with', () => {
    const orders = fc.sample(randomWork, { numRuns: 200, seed: 1 }).map((work) => orderOfWork(work));
    const having = (is: (step: PlanStep) => boolean) => orders.filter(({ steps }) => steps.some(is)).length;
    expect(new Set(orders.map(({ steps }) => steps.map(({ id }) => id).join())).size).toBeGreaterThan(150);
    // Rounds on a board, parts put on in the vehicle, rings, two boards, every time of setting up.
    expect(having(({ id }) => /^place-.*-2$/.test(id))).toBeGreaterThan(20);
    expect(having(({ id }) => id.startsWith('lead-'))).toBeGreaterThan(10);
    expect(orders.filter(({ rings }) => rings.length > 0).length).toBeGreaterThan(20);
    expect(orders.filter(({ rings }) => rings.length === 0).length).toBeGreaterThan(60);
    expect(having(({ id }) => id.startsWith('cap-'))).toBeGreaterThan(50);
    expect(having(({ id }) => id === 'board-in-right')).toBeGreaterThan(20);
    expect(having(({ acts }) => acts.some((act) => act.startsWith('finish:')))).toBeGreaterThan(50);
  });
});
