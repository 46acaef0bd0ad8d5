import { describe, expect, it } from 'vitest';
import { bodyId } from '../../lib/model/content/resolved-job.ts';
import type { TerminalSpec } from '../../lib/model/kinds/fields/terminal-spec.ts';
import { insertTorque, studTorque, torque } from '../../lib/plan/bolt-torque.ts';
import { smallShop } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';
import { inParts, inVehicle } from './shop-changes.ts';

// Common practice, no source: steel bolts M6 10 N m, M8 25 N m; a rivet nut M8 20 N m.
const stud = 'OUT: { role: feed-out, joint: stud,';
const job = jobOf(smallShop(inParts(stud, `${stud} torque: 12 N m,`)));
const { rules, vehicle } = job;
const onStud = jobOf(smallShop(inVehicle('cargo: { zone: cargo,', 'cargo: { insert: stud, zone: cargo,')));
const welded = jobOf(smallShop(inVehicle('cargo: { zone: cargo,', 'cargo: { insert: welded, zone: cargo,')));

/** A terminal of a device of the small job. */
function terminal(device: string, name: string): TerminalSpec {
  const found = job.devices.find(({ id }) => id === device)?.facts.terminals[name];
  if (!found) throw new Error(`There is no ${device}.${name}.`);
  return found;
}
const bodyBolt = (stud: NonNullable<TerminalSpec['stud']>) => ({ ...terminal(bodyId, 'cargo'), stud });

describe('the torque of a bolt', () => {
  it('is known of the two threads that are used', () => {
    expect(studTorque(rules, 'M6')).toBe(10);
    expect(studTorque(rules, 'M8')).toBe(25);
    expect(studTorque(rules, 'M10')).toBeNull();
  });

  it('is that of its rivet nut where that takes less: a larger one counts as M8, of a smaller one nothing is known', () => {
    expect(insertTorque(rules, 'M8')).toBe(20);
    expect(insertTorque(rules, 'M10')).toBe(20);
    expect(insertTorque(rules, 'M6')).toBe(rules['torque-rivet-nut-m6'].value);
    expect(insertTorque(rules, 'M5')).toBeUndefined();
    expect(insertTorque(rules, 'M4')).toBeUndefined();
  });
});

describe('the torque of an end', () => {
  it('in the body is the least of bolt and rivet nut; of the bolt alone in a welded nut', () => {
    const nut = torque({ rules, vehicle }, bodyBolt('M8'), 'cargo');
    expect(nut).toMatchObject({
      value: 20,
      trace: { origin: 'assumed', rule: 'torque-rivet-nut-m8', mark: 'cp' },
    });
    expect(nut?.trace.inputs.map(({ value }) => value)).toEqual([25, 20]);
    for (const job of [welded, onStud])
      expect(torque(job, bodyBolt('M8'), 'cargo')).toMatchObject({
        value: 25,
        trace: { rule: 'torque-m8' },
      });
  });

  it("at a port is its maker's; without one it is not known, nor is that of a bolt of no known thread", () => {
    const port = terminal('main-fuse', 'IN');
    expect(torque({ rules, vehicle }, port, 'IN')).toBeNull();
    expect(torque({ rules, vehicle }, bodyBolt('M10'), 'cargo')).toBeNull();
    expect(torque({ rules, vehicle }, undefined, 'IN')).toBeNull();
    expect(torque(job, terminal('main-fuse', 'OUT'), 'OUT')).toMatchObject({
      value: 12,
      trace: { origin: 'given' },
    });
  });
});
