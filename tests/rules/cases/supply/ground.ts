import { about, aboutContent, aboutPlan, byId, entry } from '../../case.ts';
import { fittedFan, secondBattery, wire } from '../../changes.ts';
import { sized } from '../../plan.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The ground lead of the board as long as this is written. */
const groundLead = (length: string, lengthM: number) =>
  about({
    content: ({ job }) => {
      entry(job.links, 'board-ground').length = length;
    },
    plan: (plan) => {
      wire(plan, 'board-ground').lengthM = lengthM;
    },
  });

export const groundCases = {
  // Common practice, no source.
  'device-without-ground': {
    fires: [
      {
        name: 'an amplifier without a ground, though its terminal is left open with a reason',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['amp-ground'];
            job['left-open'] = { 'amp.GND': 'grounds through its case', 'ground.G1': 'not used' };
          }),
        level: 'stop',
        subject: 'amp',
      },
    ],
    quiet: [{ name: 'every device grounded', about: () => about() }],
  },
  // Kirchhoff's current law: what no current can leave gives none.
  'battery-without-ground': {
    fires: [
      {
        name: 'a second battery whose negative post is left open with a reason',
        about: () =>
          secondBattery(true, (plan) => {
            plan.wires = plan.wires.filter(({ id }) => id !== 'second-ground');
          }),
        level: 'stop',
        subject: 'second',
        says: /nothing is connected to second\.NEG/,
      },
    ],
    quiet: [
      { name: 'one that is grounded', about: () => secondBattery(true) },
      { name: 'the battery of the vehicle alone', about: () => about() },
    ],
  },
  // Common practice, no source: never on seat-belt, seat-frame, airbag or fuel-line fasteners.
  'ground-on-restraint-fastener': {
    fires: (['seat-belt', 'seat-frame', 'airbag', 'fuel-line', 'trim'] as const).map((holds) => ({
      name: holds,
      about: () =>
        aboutContent(({ vehicle }) => {
          entry(vehicle.grounds, 'cargo').holds = holds;
        }),
      level: holds === 'trim' ? 'caution' : 'stop',
      subject: 'board-ground',
    })),
    quiet: [
      {
        name: 'a seat-belt bolt that nothing of the job uses',
        about: () =>
          aboutContent(({ vehicle }) => {
            vehicle.grounds.belt = { zone: 'cabin', stud: 'M8', holds: 'seat-belt' };
          }),
      },
    ],
  },
  // Common practice, no source.
  'ground-past-sensor': {
    fires: [
      {
        name: 'a ground on the post that has the sensor',
        about: () =>
          aboutContent(({ job, vehicle }) => {
            vehicle['negative-sensor'] = true;
            job.links['board-ground'] = { from: 'ground.G0', to: 'battery.NEG' };
          }),
        level: 'stop',
        subject: 'board-ground',
      },
    ],
    quiet: [
      {
        name: 'a ground on a post without a sensor',
        about: () =>
          aboutContent(({ job }) => {
            job.links['board-ground'] = { from: 'ground.G0', to: 'battery.NEG' };
          }),
      },
      {
        name: 'a ground on the body of a vehicle with a sensor',
        about: () =>
          aboutContent(({ vehicle }) => {
            vehicle['negative-sensor'] = true;
          }),
      },
    ],
  },
  // Common practice, no source: judged by conductance. Resistance of copper-clad aluminium: ASTM B566, from memory.
  'ground-under-feed': {
    fires: [
      {
        name: '8 AWG ground under a 4 AWG feed',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').size = sized('8');
          }),
        level: 'caution',
        subject: 'main',
      },
      {
        name: 'the same gauge in copper-clad aluminium',
        about: () =>
          aboutPlan((plan) => {
            byId(plan.power.conductors, 'amp-ground').material = 'copper-clad-aluminium';
          }),
        level: 'caution',
        subject: 'amp',
        // 62 % IACS: 10 % copper by volume.
        says: /62 %/,
      },
    ],
    quiet: [
      { name: 'ground as large as the feed', about: () => about() },
      {
        name: '2 AWG in copper-clad aluminium conducts less than 4 AWG copper, 1 AWG more',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').size = sized('1');
            byId(plan.power.conductors, 'board-ground').material = 'copper-clad-aluminium';
          }),
      },
    ],
  },
  // Common practice, no source: lead at most 18 in.
  'ground-lead-long': {
    fires: [
      {
        name: '19 in',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').lengthM = 19 * 0.0254;
          }),
        level: 'caution',
        subject: 'board-ground',
        says: /483 mm \(19 in\).*18 in/,
        toDo: /^choose a ground point nearer to the board, of those under grounds: .*by ground: at the board; a larger lead/,
      },
      {
        name: '25 in by the sum of its way and its loops: what it is made of, and the line for a tape',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').lengthM = 25 * 0.0254;
            plan.traces['wires.board-ground.lengthM'] = {
              ...{ origin: 'computed', value: 0.635, unit: 'm', rule: 'wire-length', citation: 'measured' },
              inputs: [
                { name: 'run', value: 0.1524, unit: 'm' },
                { name: 'board', value: 0.4064, unit: 'm' },
                { name: 'loops', value: 0.0762, unit: 'm' },
              ],
            };
          }),
        level: 'caution',
        subject: 'board-ground',
        toDo: /^measure along its way, .*length: 18 in at board-ground.*reckoned: .*6 in.* through the vehicle.*16 in.* on the board.*3 in.* for service loops/,
      },
      {
        name: 'feet written for inches',
        about: () => groundLead('15 ft', 4.572),
        level: 'caution',
        subject: 'board-ground',
        says: /15 ft/,
        toDo: /or write 15 in if that was meant/,
      },
      {
        name: 'feet that would be too many inches as well',
        about: () => groundLead('40 ft', 12.192),
        level: 'caution',
        subject: 'board-ground',
        toDo: /correct the length if its number or its unit is a slip/,
      },
    ],
    quiet: [
      {
        name: '18 in',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').lengthM = 18 * 0.0254;
          }),
      },
      {
        name: 'a fan, through which no signal goes',
        about: () =>
          about({
            content: fittedFan(),
            plan: (plan) => {
              wire(plan, 'fan-ground').lengthM = 30 * 0.0254;
            },
          }),
      },
    ],
  },
  // Common practice, no source.
  'ground-areas-differ': {
    fires: [
      {
        name: 'the processor on another ground point than the rest of its board',
        about: () =>
          aboutContent(({ job }) => {
            job.links['dsp-ground'] = { from: 'dsp.GND', to: 'body.dash' };
            job['left-open'] = { 'ground.G2': 'not used' };
          }),
        level: 'caution',
        subject: 'main',
      },
    ],
    quiet: [{ name: 'one ground point for the board', about: () => about() }],
  },
} satisfies RuleCases;
