import { describe, expect, it } from 'vitest';
import { byId } from '../../rules/case.ts';
import { withRelay } from '../../rules/changes.ts';
import { planKept } from '../plan-kept.ts';
import { planned, plannedOnBoard, remarksOf } from '../planned.ts';

describe('the turn-on chain', () => {
  it('comes up in stages from the source: the processor first, the amplifier behind it', () => {
    const { plan } = planned();
    expect(plan.power.turnOnChain.map(({ item, driver, stage }) => [item, driver, stage])).toEqual([
      ['dsp', 'radio.REM', 1],
      ['amp', 'dsp.REM-OUT', 2],
    ]);
    expect(plan.power.turnOn.map(({ source, sumA }) => [source, sumA])).toEqual([
      ['radio.REM', 0.02],
      ['dsp.REM-OUT', 0.02],
    ]);
  });

  it('goes on over a relay, whose contact is a source of its own', () => {
    const { plan } = planKept(withRelay('diode').job);
    const amp = plan.power.turnOnChain.find(({ item }) => item === 'amp');
    expect(amp?.byRelay).toBe(true);
    const relay = plan.power.turnOnChain.find(({ item }) => item !== 'amp' && item !== 'dsp');
    expect(amp?.stage).toBe((relay?.stage ?? 0) + 1);
  });

  it('names a device that waits for itself', () => {
    const ring = planned(({ job }) => {
      job.links['radio-rem'] = { from: 'dsp.REM-OUT', to: 'dsp.REM-IN' };
    });
    expect(remarksOf(ring, 'turn-on-ring')[0]?.message).toBe(
      'dsp waits for itself to turn on, so that it never does',
    );
  });

  it('names two devices that wait for each other, with the way out', () => {
    const ring = planned(({ job, parts }) => {
      const dsp = parts.dsp;
      if (dsp) parts['dsp-2'] = structuredClone(dsp);
      job.devices['dsp-2'] = { part: 'dsp-2', on: 'main' };
      delete job.links['radio-rem'];
      job.links.there = { from: 'dsp.REM-OUT', to: 'dsp-2.REM-IN' };
      job.links.back = { from: 'dsp-2.REM-OUT', to: 'dsp.REM-IN' };
    });
    const [remark] = remarksOf(ring, 'turn-on-ring');
    expect(remark?.level).toBe('stop');
    expect(remark?.of.toSorted()).toEqual(['dsp', 'dsp-2']);
    expect(remark?.remedy).toMatch(/from the source unit/);
    expect(ring.plan.power.turnOnChain.every(({ stage }) => stage === null)).toBe(true);
  });
});

describe('the presets', () => {
  it('stand in the order of the panel, each with its safe state', () => {
    const { plan } = planned(({ parts }) => {
      const amp = parts['two-channel'];
      if (amp?.kind !== 'amplifier' || !amp.controls) throw new Error('The amplifier has controls.');
      Object.assign(amp.controls.GAIN ?? {}, { panel: 'face' });
      Object.assign(amp.controls.PHASE ?? {}, { at: '60 mm' });
      Object.assign(amp.controls.SENSE ?? {}, { at: '20 mm' });
    });
    const own = plan.controls.filter(({ item }) => item === 'amp');
    expect(own.map(({ control, order, panel }) => [control, order, panel])).toEqual([
      ['SENSE', 1, 'left'],
      ['PHASE', 2, 'left'],
      ['GAIN', 3, 'face'],
    ]);
    expect(own.find(({ control }) => control === 'GAIN')?.safeState).toBe('fully down');
  });
});

describe('the order of work of a job', () => {
  it('keeps to what the job says must be in place first', () => {
    const { plan } = plannedOnBoard(({ job }) => {
      const amp = job.devices.amp;
      if (amp) amp.after = { 'dsp-ground': 'it stands over it' };
    });
    const at = (id: string) => plan.steps.findIndex(({ installs }) => installs.includes(id));
    expect(at('amp')).toBeGreaterThan(at('dsp-ground'));
    const placed = plan.steps[at('amp')];
    expect(placed?.waitsFor.some(({ why }) => /it stands over it/.test(why))).toBe(true);
    expect(byId(plan.steps, placed?.id ?? '').by).toBe('board');
  });
});
