import { describe, expect, test } from 'vitest';
import { crossing, supplyGroups } from '../../../../lib/plan/power/supply-groups.ts';
import { supply } from './written-supply.ts';

describe('devices and boards whose ground is held against their feed', () => {
  test('are those of the job that draw current, then its boards', () => {
    const { job } = supply(({ vehicle }) => (vehicle.fitted.head = { part: 'radio', zone: 'cabin' }));
    expect(supplyGroups(job).map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'device amp',
      'device dsp',
      'device radio',
      'board main',
    ]);
  });

  test('are fed and grounded by the wires that cross from them to the rest, whichever way round they are written', () => {
    const { job } = supply();
    const wire = (id: string, role: 'power' | 'ground', from: string, to: string) => ({ id, role, from, to });
    const wires = [
      wire('feed', 'power', 'block.OUT1', 'amp.B+'),
      wire('back', 'power', 'amp.B+', 'block.OUT2'),
      wire('ground', 'ground', 'amp.GND', 'ground.G1'),
      wire('body', 'ground', 'body.cargo', 'amp.GND'),
      wire('board', 'ground', 'ground.G0', 'body.cargo'),
      wire('inside', 'power', 'block.OUT3', 'dsp.B+'),
      wire('main', 'power', 'main-fuse.OUT', 'block.IN'),
    ];
    const [amp, , , main] = supplyGroups(job);
    if (!amp || !main) throw new Error('There are four.');
    const of = (group: typeof amp, role: 'power' | 'ground') =>
      crossing(job, wires, role, group).map(({ id }) => id);
    expect(of(amp, 'power')).toEqual(['feed', 'back']);
    expect(of(amp, 'ground')).toEqual(['ground', 'body']);
    expect(of(main, 'power')).toEqual(['main']);
    expect(of(main, 'ground')).toEqual(['body', 'board']);
  });
});
