import { describe, expect, it } from 'vitest';
import { firstPowers } from '../../../lib/plan/work/bench-supply-limit.ts';
import { aboutContent, byId, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedOnBoard } from '../planned.ts';

/** The small job's board with an amplifier that idles at so much. */
const idling = (amplifier: string, rules: Written['shop']['rules'] = {}) =>
  plannedOnBoard((content) => {
    partIn(content, 'two-channel', 'amplifier').supply.idle = amplifier;
    partIn(content, 'dsp', 'processor').supply.idle = '400 mA';
    content.shop.rules = rules;
  }).plan;

const step = (plan: ReturnType<typeof idling>) => byId(plan.steps, 'test-main').text;

describe('the first power of a board', () => {
  // Limits of 3 to 5 A: common practice, no source. Devices may idle at half as much again as predicted.
  it('goes through 3 A where all devices idle well below it', () => {
    const plan = idling('1 A');
    expect(plan.power.firstPower).toEqual([
      { board: 'main', idleA: expect.closeTo(1.4, 9), limitA: 3, oneByOne: false },
    ]);
    expect(step(plan)).toMatch(/limit of 3 A/);
  });

  it('goes through 5 A where 3 A might trip on nothing but idling devices', () => {
    const plan = idling('2 A');
    expect(plan.power.firstPower?.[0]).toMatchObject({ limitA: 5, oneByOne: false });
    expect(byId(plan.measurements, 'main.idle-current').what).toMatch(/limit at 5 A, all turned on/);
  });

  it('is given to one device after the other where even 5 A might trip', () => {
    const plan = idling('4 A');
    expect(plan.power.firstPower?.[0]).toMatchObject({ limitA: 5, oneByOne: true });
    expect(step(plan)).toMatch(/one device after the other/);
    expect(byId(plan.measurements, 'main.idle-current').what).toMatch(/added up/);
  });

  it('follows the limits that the shop sets', () => {
    const plan = idling('2 A', { 'first-power-limit': '4 A', 'first-power-limit-most': '8 A' });
    expect(plan.power.firstPower?.[0]).toMatchObject({ limitA: 4, oneByOne: false });
  });

  // By hand: of 4 A and 0.4 A the amplifier's 4 A are not there yet.
  it('leaves out what is set onto the board in the vehicle only', () => {
    const { plan } = plannedOnBoard((content) => {
      partIn(content, 'two-channel', 'amplifier').supply.idle = '4 A';
      partIn(content, 'dsp', 'processor').supply.idle = '400 mA';
    });
    const job = aboutContent((content) => {
      content.shop.rules = {};
    }).job;
    const limits = (late: readonly string[]) => firstPowers(job, plan.power.loads, new Set(late));
    expect(limits(['amp'])).toEqual([
      { board: 'main', idleA: expect.closeTo(0.4, 9), limitA: 3, oneByOne: false, late: ['amp'] },
    ]);
    expect(limits(['block'])).toEqual([
      { board: 'main', idleA: expect.closeTo(4.4, 9), limitA: 5, oneByOne: true },
    ]);
  });

  it('tells how to bring up what has no wire at its turn-on input, and leaves the switch automatic', () => {
    const { plan } = plannedOnBoard(({ job }) => {
      delete job.links['amp-rem'];
    });
    const sense = plan.controls.find(({ item, control }) => item === 'amp' && control === 'SENSE');
    expect(sense).toMatchObject({ preset: 'AUTO', safe: true, final: { state: 'AUTO', why: 'stays' } });
    expect(plan.power.firstPower?.[0]?.byLead).toEqual([
      { item: 'amp', terminal: 'amp.REM', control: 'SENSE', wired: 'REMOTE', automatic: 'AUTO' },
    ]);
    expect(step(plan)).toMatch(/SENSE to REMOTE and a lead from amp\.REM .* put SENSE back to AUTO/);
  });

  it('leaves a switch for the turn-on at the wire where there is one', () => {
    const { plan } = plannedOnBoard(() => undefined);
    const sense = plan.controls.find(({ item, control }) => item === 'amp' && control === 'SENSE');
    expect(sense).toMatchObject({ preset: 'REMOTE', final: { state: 'REMOTE' } });
    expect(plan.power.firstPower?.[0]).not.toHaveProperty('byLead');
  });
});
