import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { deviceLoads, supplyOf } from '../../../../lib/plan/power/device-loads.ts';
import { byId, partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { charged } from '../two-batteries.ts';
import { supply, value } from './written-supply.ts';

describe('what a device draws', () => {
  const load = (id: string, change?: (content: Written) => void) => {
    const { job, paths } = supply(change);
    const book = new PlanBook();
    return {
      ...byId(
        deviceLoads(job, paths, [], book).map((one) => ({ ...one, id: one.item })),
        id,
      ),
      traces: book.traces(),
    };
  };

  test('is what its part says, else its fuse, and that is told', () => {
    expect(load('dsp')).toMatchObject({ fuseA: 5, ratedA: 1, musicA: 1, idleA: 1 });
    expect(load('dsp')).not.toHaveProperty('assumed');
    expect(load('dsp').traces['power.loads.dsp.ratedA']).toMatchObject({
      origin: 'given',
      rule: 'device-draw',
      citation: "the part's data",
    });
    expect(load('dsp').traces['power.loads.dsp.fuseA']).toMatchObject({
      origin: 'given',
      rule: 'device-fuse',
    });
    const silent = load('dsp', (content) => delete partIn(content, 'dsp', 'processor').supply.draw);
    expect(silent).toMatchObject({ ratedA: 5, idleA: 0, assumed: ['a draw of 5 A, its fuse'] });
    expect(silent.traces['power.loads.dsp.ratedA']?.origin).toBe('assumed');
  });

  test('of an amplifier of no known class is that of class AB, which is told', () => {
    expect(load('amp').assumed).toEqual(['an amplifier of class AB']);
    const known = load(
      'amp',
      (content) => (partIn(content, 'two-channel', 'amplifier').supply['amplifier-class'] = 'class-d'),
    );
    expect(known).not.toHaveProperty('assumed');
    expect(known.idleA).toBe(value('idle-class-d'));
    expect(
      load(
        'amp',
        (content) => (partIn(content, 'two-channel', 'amplifier').supply.efficiency = { full: '60 %' }),
      ),
    ).not.toHaveProperty('assumed');
  });

  test('at idle is what its part says of that', () => {
    const idle = load('dsp', (content) => (partIn(content, 'dsp', 'processor').supply.idle = '400 mA'));
    expect(idle).toMatchObject({ idleA: 0.4, ratedA: 1 });
    const amp = load(
      'amp',
      (content) => (partIn(content, 'two-channel', 'amplifier').supply.idle = '700 mA'),
    );
    expect(amp.idleA).toBe(0.7);
  });

  test('is asked of what draws from the supply alone', () => {
    const { job } = supply(charged);
    const of = (id: string) => supplyOf(byId(job.devices, id).spec);
    expect(of('charger')).toMatchObject({ type: 'regulated', 'fuses-fitted': 0 });
    expect(of('charger')).not.toHaveProperty('efficiency');
    expect(of('dsp')).toMatchObject({ fuse: 5 });
    expect([of('tweeter'), of('main-fuse'), supplyOf(null)]).toEqual([null, null, null]);
  });
});
