import type { Equivalent } from './equivalent.ts';

/** Of circuit, loads, points and drops in the plan. */
export const plannedPower: readonly Equivalent[] = [
  {
    file: 'lib/plan/power/device-loads.ts',
    line: "const duty = device.spec?.kind === 'amplifier'",
    from: 'device.spec?.kind',
    to: 'device.spec.kind',
    why: 'what has a supply has it by its part',
  },
  {
    file: 'lib/plan/power/feed-and-ground-drop.ts',
    line: 'if (!own || !battery) return [];',
    from: '!own || !battery',
    to: '!own && !battery',
    why: 'a drop is told of a device that is fed, from a source of the circuit: both are found',
  },
  {
    file: 'lib/plan/power/charging.ts',
    line: 'if (!own) return [];',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'it is asked of the batteries of a balance, and each of these is a source of the circuit',
  },
  {
    file: 'lib/plan/power/cranking.ts',
    line: "return closed !== undefined && spec?.kind === 'isolating-relay'",
    from: "closed !== undefined && spec?.kind === 'isolating-relay'",
    to: "closed !== undefined || spec?.kind === 'isolating-relay'",
    why: 'its contact is the one joint of an isolating relay, and no other part has a contact that goes by the engine',
  },
  {
    file: 'lib/plan/power/operating-points.ts',
    line: 'if (!own || !supply || !reached.has(own.from)',
    from: '!own || !supply',
    to: '!own && !supply',
    why: 'a load is told of a device that is fed and has a supply: both are found',
  },
  {
    file: 'lib/plan/power/circuit/passive-elements.ts',
    line: 'const joint = job.devices.find(({ id }) => id === device)',
    from: 'job.devices.find(({ id }) => id === device)?.facts.terminals[terminal]?.joint',
    to: 'job.devices.find(({ id }) => id === device)?.facts.terminals[terminal].joint',
    why: 'a link that was read ends at a terminal that its device has',
  },
  {
    file: 'lib/plan/power/circuit/passive-elements.ts',
    line: 'return joint !== undefined && bolted.includes(joint);',
    from: 'joint !== undefined',
    to: 'true',
    why: 'no list of joints has one that is not known',
  },
];
