import { describe, expect, it } from 'vitest';
import type { PlanPlacement } from '../../../lib/model/plan/index.ts';
import { byId, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedOnBoard } from '../planned.ts';

const like = {
  role: 'feed-out',
  joint: 'set-screw',
  panel: 'right',
  takes: { from: '16 AWG', to: '4 AWG' },
} as const;
const large = { ...like, role: 'feed-in', panel: 'left', takes: { from: '8 AWG', to: '1/0 AWG' } } as const;

/** The small job with a block of three like ways in a row, from which two devices above it are fed. */
function withBlock(content: Written, amplifier: string, processor: string): void {
  const block = partIn(content, 'fused', 'distribution');
  block.terminals = {
    IN: large,
    OUT1: { ...like, at: '10 mm' },
    OUT2: { ...like, at: '30 mm' },
    OUT3: { ...like, at: '50 mm' },
  };
  block['fused-ways'] = Object.fromEntries(
    ['OUT1', 'OUT2', 'OUT3'].map((way) => [way, { from: 'IN', 'fuse-form': 'maxi-blade' as const }]),
  );
  const { links } = content.job;
  links['amp-feed'] = { from: amplifier, to: 'amp.B+' };
  links['dsp-feed'] = { from: processor, to: 'dsp.B+' };
  links['radio-feed'] = { from: 'block.OUT3', to: 'radio.B+', length: '300 mm' };
}

/** The places that are found with open ports, written: what is compared differs in its ports alone. */
function withPlaces(content: Written, placements: readonly PlanPlacement[]): void {
  for (const { item, xM, yM, turnDeg } of placements) {
    const device = content.job.devices[item];
    if (device) Object.assign(device, { at: { x: `${xM * 1000} mm`, y: `${yM * 1000} mm` }, turn: turnDeg });
  }
}

describe('ports that a job leaves open', () => {
  const open = plannedOnBoard((content) => withBlock(content, 'block.OUT*', 'block.OUT*'));
  const found = open.plan.boards[0]?.placements ?? [];
  const wires = ['amp-feed', 'dsp-feed'].map((id) => byId(open.plan.wires, id));

  it('are chosen: every wire ends at one of them, and no two at the same', () => {
    const taken = wires.map(({ from }) => from);
    expect(new Set(taken).size).toBe(2);
    // The way that the radio names stays its own.
    for (const port of taken) expect(['block.OUT1', 'block.OUT2']).toContain(port);
  });

  it('cross no more than in any way of writing them down', () => {
    const crossings = [
      ['block.OUT1', 'block.OUT2'],
      ['block.OUT2', 'block.OUT1'],
    ].map(([amplifier = '', processor = '']) => {
      const { plan } = plannedOnBoard((content) => {
        withBlock(content, amplifier, processor);
        withPlaces(content, found);
      });
      const places = plan.boards[0]?.placements ?? [];
      for (const [index, { xM, yM }] of found.entries()) {
        expect(places[index]?.xM).toBeCloseTo(xM, 9);
        expect(places[index]?.yM).toBeCloseTo(yM, 9);
      }
      return plan.boards[0]?.crossings ?? Number.NaN;
    });
    expect(open.plan.boards[0]?.crossings).toBeLessThanOrEqual(Math.min(...crossings));
  });

  it('say how they were chosen', () => {
    for (const { id, from } of wires)
      expect(open.plan.traces[`ports.${id}.from`]).toMatchObject({
        value: from.slice('block.'.length),
        rule: 'port-choice',
        mark: 'cp',
        inputs: expect.arrayContaining([{ name: 'like ports', value: 'OUT1, OUT2', unit: '' }]),
      });
  });

  it('carry their fuse with them', () => {
    const [amplifier] = wires;
    const fuse = byId(open.plan.power.fuses, amplifier?.from ?? '');
    expect(fuse.protects).toContain('amp-feed');
    expect(open.plan.power.fuses.map(({ id }) => id).filter((id) => id.startsWith('block.'))).toHaveLength(3);
  });
});
