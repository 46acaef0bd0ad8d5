import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { about, aboutContent, aboutPlan, byId, entry, one, partIn } from '../case.ts';
import { sized } from '../plan.ts';
import type { RuleCases } from '../rule-case.ts';

const wire = (plan: BuildPlan, id: string) => byId(plan.wires, id);
const point = (plan: BuildPlan, name: string) => one(plan.power.points, (each) => each.name === name);
const drop = (plan: BuildPlan) => one(plan.power.drops, ({ item }) => item === 'amp');
const regime = (plan: BuildPlan, name: string) => one(plan.power.charging, (each) => each.name === name);

const setNode = (plan: BuildPlan, name: string, node: string, voltageV: number | null) => {
  byId(point(plan, name).nodes, node).voltageV = voltageV;
};

/** A relay that the processor drives and that switches the amplifier on. */
const withRelay = (suppression: 'diode' | 'none') =>
  aboutContent((content) => {
    const { job } = content;
    partIn(content, 'relay', 'relay').suppression = suppression;
    job.devices.relay = { part: 'relay', on: 'main' };
    job.links['coil-rem'] = { from: 'dsp.REM-OUT', to: 'relay.86' };
    job.links['coil-ground'] = { from: 'relay.85', to: 'body.dash' };
    job.links['contact-feed'] = { from: 'block.OUT2', to: 'relay.30' };
    job.links['amp-rem'] = { from: 'relay.87', to: 'amp.REM' };
  });

export const supplyCases: RuleCases = {
  // Ohm's and Kirchhoff's laws: a constant-power load above V^2 / 4R has no solution.
  'supply-collapse': {
    fires: [
      {
        name: 'no solution, with nothing else in the point',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(point(plan, 'engine-off'), { state: 'no-solution', nodes: [], elements: [] });
          }),
        level: 'stop',
        subject: 'engine-off',
        says: /collapses/,
      },
      {
        name: 'a solved point in which the voltage at a device is null',
        about: () => aboutPlan((plan) => setNode(plan, 'rated', 'amp.B+', null)),
        level: 'stop',
        subject: 'rated',
        says: /no voltage is known at amp/,
      },
    ],
    quiet: [{ name: 'all points solved', about: () => about() }],
  },
  // Common practice, no source: cut-out at 10 to 10.5 V where the maker is silent.
  'below-cut-out': {
    fires: [
      {
        name: 'a device under its cut-out',
        about: () => aboutPlan((plan) => setNode(plan, 'engine-off', 'amp.B+', 10.5)),
        level: 'stop',
        subject: 'amp',
        says: /10.42 V, under the 10.5 V/,
      },
      {
        name: 'a point that says cut-out and gives no voltage',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(point(plan, 'engine-off'), { state: 'cut-out', nodes: [], elements: [] });
          }),
        level: 'stop',
        subject: 'engine-off',
      },
    ],
    quiet: [
      {
        name: 'just at the cut-out',
        about: () => aboutPlan((plan) => setNode(plan, 'engine-off', 'amp.B+', 10.59)),
      },
    ],
  },
  // Common practice, no source: feed plus return at most 3 % at rated power.
  'drop-over-limit': {
    fires: [
      {
        name: '4 %',
        about: () => aboutPlan((plan) => Object.assign(drop(plan), { share: 0.04, feedDropV: 0.472 })),
        level: 'caution',
        subject: 'amp',
        says: /4 % of 13.8 V/,
      },
    ],
    quiet: [
      { name: '3 %', about: () => aboutPlan((plan) => Object.assign(drop(plan), { share: 0.03 })) },
      {
        name: '4 %, but the shop allows 5 %',
        about: () =>
          about({
            content: ({ shop }) => {
              shop.rules = { 'drop-limit': '5 %' };
            },
            plan: (plan) => Object.assign(drop(plan), { share: 0.04 }),
          }),
      },
    ],
  },
  // Common practice, no source: 0.1 V good, 0.2 V limit.
  'ground-drop': {
    fires: [
      {
        name: '0.15 V',
        about: () => aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.15 })),
        level: 'note',
        subject: 'amp',
      },
      {
        name: '0.25 V',
        about: () => aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.25 })),
        level: 'caution',
        subject: 'amp',
      },
    ],
    quiet: [
      { name: '0.1 V', about: () => aboutPlan((plan) => Object.assign(drop(plan), { groundDropV: 0.1 })) },
    ],
  },
  // Common practice, no source: any one joint 50 mV.
  'joint-drop': {
    fires: [
      {
        name: '60 mV, whichever way the current runs',
        about: () =>
          aboutPlan((plan) => {
            byId(point(plan, 'rated').elements, 'main-lug').dropV = -0.06;
          }),
        level: 'caution',
        subject: 'main-lug',
      },
    ],
    quiet: [
      {
        name: '50 mV, and more over the body, which is a path',
        about: () =>
          aboutPlan((plan) => {
            const joint = byId(point(plan, 'rated').elements, 'main-lug');
            joint.dropV = 0.05;
            point(plan, 'rated').elements.push({ ...joint, id: 'body.cargo', of: 'body', dropV: 0.08 });
          }),
      },
    ],
  },
  // Common practice, no source: alternator to battery 0.2 V.
  'charge-lead-drop': {
    fires: [
      {
        name: '0.3 V',
        about: () => aboutPlan((plan) => setNode(plan, 'rated', 'alternator.B+', 14.7)),
        level: 'caution',
        subject: 'alternator.B+',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      { name: '0.2 V', about: () => aboutPlan((plan) => setNode(plan, 'rated', 'alternator.B+', 14.6)) },
    ],
  },
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
        says: /19 in \(483 mm\).*18 in/,
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
  // Common practice, no source.
  'battery-in-wrong-zone': {
    fires: [
      {
        name: 'a flooded battery in the boot',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'agm', 'battery').chemistry = 'flooded';
            content.job.devices.second = { part: 'agm', in: 'boot' };
          }),
        level: 'stop',
        subject: 'second',
      },
      {
        name: 'a lithium battery in the engine bay',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'agm', 'battery').chemistry = 'lithium';
            content.job.devices.second = { part: 'agm', in: 'bay' };
          }),
        level: 'stop',
        subject: 'second',
      },
    ],
    quiet: [
      {
        name: 'absorbed glass mat in the boot',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.second = { part: 'agm', in: 'boot' };
          }),
      },
      {
        name: 'a flooded battery in the engine bay, where the vehicle has it',
        about: () =>
          aboutContent((content) => {
            partIn(content, 'agm', 'battery').chemistry = 'flooded';
          }),
      },
    ],
  },
  // Common practice, no source.
  'battery-chemistries-mixed': {
    fires: [
      {
        name: 'lithium behind a fuse on an absorbed glass mat battery',
        about: () =>
          aboutContent((content) => {
            content.parts.lithium = { ...partIn(content, 'agm', 'battery'), chemistry: 'lithium' };
            content.job.devices.second = { part: 'lithium', in: 'boot' };
            content.job.links.second = { from: 'second.POS', to: 'block.IN' };
          }),
        level: 'stop',
        subject: 'second',
      },
    ],
    quiet: [
      {
        name: 'two of one chemistry',
        about: () =>
          aboutContent(({ job }) => {
            job.devices.second = { part: 'agm', in: 'boot' };
            job.links.second = { from: 'second.POS', to: 'block.IN' };
          }),
      },
      {
        name: 'lithium that is not joined to the other one',
        about: () =>
          aboutContent((content) => {
            content.parts.lithium = { ...partIn(content, 'agm', 'battery'), chemistry: 'lithium' };
            content.job.devices.second = { part: 'lithium', in: 'boot' };
          }),
      },
    ],
  },
  // Common practice, no source: 80 % asks for an upgrade; above all of it at cruise stops, at idle only cautions.
  'charging-short': {
    fires: [
      {
        name: '57 of 70 A at idle',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'idle'), { averageA: 12 })),
        level: 'caution',
        subject: 'idle',
      },
      {
        name: '75 of 70 A at idle',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'idle'), { averageA: 30 })),
        level: 'caution',
        subject: 'idle',
      },
      {
        name: '100 of 120 A at cruise',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'cruise'), { averageA: 55 })),
        level: 'caution',
        subject: 'cruise',
      },
      {
        name: '125 of 120 A at cruise',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'cruise'), { averageA: 80 })),
        level: 'stop',
        subject: 'cruise',
      },
      {
        name: 'no alternator output at cruise',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'cruise'), { alternatorA: 0 })),
        level: 'stop',
        subject: 'cruise',
      },
    ].map((each) => ({ ...each, level: each.level === 'stop' ? 'stop' : 'caution', file: 'vehicle.yaml' })),
    quiet: [
      {
        name: '56 of 70 A at idle: just 80 %',
        about: () => aboutPlan((plan) => Object.assign(regime(plan, 'idle'), { averageA: 11 })),
      },
      { name: 'nothing but the battery with the engine off', about: () => about() },
    ],
  },
  // Common practice, no source: 40 to 60 A where it is not measured.
  'vehicle-load-assumed': {
    fires: [
      {
        name: 'not measured',
        about: () =>
          aboutContent(({ vehicle }) => {
            delete vehicle['vehicle-load'];
          }),
        level: 'note',
        subject: 'wagon',
        file: 'vehicle.yaml',
        says: /50 A is assumed/,
      },
    ],
    quiet: [{ name: 'measured', about: () => about() }],
  },
  // Common practice, no source.
  'high-voltage-vehicle': {
    fires: (['hybrid', 'electric'] as const).map((supply) => ({
      name: supply,
      about: () =>
        aboutContent(({ vehicle }) => {
          vehicle.supply = supply;
        }),
      level: 'caution',
      subject: 'wagon',
      file: 'vehicle.yaml',
      says: /orange/,
    })),
    quiet: [{ name: 'combustion', about: () => about() }],
  },
  // Common practice, no source.
  'turn-on-missing': {
    fires: [
      {
        name: 'no lead to an amplifier, though its terminal is left open with a reason',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['amp-rem'];
            job['left-open'] = { 'amp.REM': 'not used', 'dsp.REM-OUT': 'not used' };
          }),
        level: 'stop',
        subject: 'amp.REM',
      },
      {
        name: 'two inputs joined with nothing that drives them',
        about: () =>
          aboutContent(({ job }) => {
            job.links['amp-rem'] = { from: 'dsp.REM-IN', to: 'amp.REM' };
            delete job.links['radio-rem'];
          }),
        level: 'stop',
        subject: 'amp.REM',
      },
      {
        name: 'automatic turn-on without a wired fallback',
        about: () =>
          about({
            content: ({ job }) => {
              delete job.links['amp-rem'];
              entry(job.devices, 'amp').settings = { SENSE: 'AUTO' };
            },
            plan: (plan) => {
              one(plan.controls, ({ control }) => control === 'SENSE').preset = 'AUTO';
            },
          }),
        level: 'caution',
        subject: 'amp.REM',
      },
    ],
    quiet: [
      { name: 'a lead to every device', about: () => about() },
      { name: 'by the contact of a relay', about: () => withRelay('diode') },
    ],
  },
  // The parts' data.
  'turn-on-overload': {
    fires: [
      {
        name: 'an output of 10 mA that drives 20 mA',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'dsp', 'processor').terminals, 'REM-OUT').current = '10 mA';
          }),
        level: 'stop',
        subject: 'dsp.REM-OUT',
        says: /0.02 A/,
      },
      {
        name: 'an output whose limit is not known',
        about: () =>
          aboutContent((content) => {
            delete entry(partIn(content, 'dsp', 'processor').terminals, 'REM-OUT').current;
          }),
        level: 'note',
        subject: 'dsp.REM-OUT',
      },
      {
        name: 'a load whose draw is not known',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'two-channel', 'amplifier').supply['turn-on-draw'];
          }),
        level: 'note',
        subject: 'dsp.REM-OUT',
      },
    ],
    quiet: [
      {
        name: 'an output that gives just what it drives',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'dsp', 'processor').terminals, 'REM-OUT').current = '20 mA';
          }),
      },
      { name: 'an output that drives a relay: its coil is the only load', about: () => withRelay('diode') },
    ],
  },
  // Common practice, no source.
  'relay-without-suppression': {
    fires: [
      { name: 'nothing across the coil', about: () => withRelay('none'), level: 'caution', subject: 'relay' },
    ],
    quiet: [{ name: 'a diode across the coil', about: () => withRelay('diode') }],
  },
  // Common practice, no source: processor first on, last off.
  'turn-on-sequence': {
    fires: [
      {
        name: 'the amplifier on the lead of the radio',
        about: () =>
          aboutContent(({ job }) => {
            job.links['amp-rem'] = { from: 'radio.REM', to: 'amp.REM' };
            job['left-open'] = { 'dsp.REM-OUT': 'not used' };
          }),
        level: 'caution',
        subject: 'amp.REM',
        path: '/links/amp-rem',
      },
    ],
    quiet: [
      { name: 'the amplifier on the output of the processor', about: () => about() },
      { name: 'by a relay that the processor drives', about: () => withRelay('diode') },
    ],
  },
  // Every terminal is connected, or left open with a reason.
  'terminal-unaccounted': {
    fires: [
      {
        name: 'a terminal that nothing is said of',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['signal-2'];
          }),
        level: 'stop',
        subject: 'amp.IN2',
      },
      {
        name: 'left open without a reason',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(
              one(plan.terminals, ({ item, terminal }) => item === 'amp' && terminal === 'IN2'),
              {
                state: 'open',
                wires: [],
              },
            );
          }),
        level: 'stop',
        subject: 'amp.IN2',
      },
      {
        name: 'a terminal that the plan does not list',
        about: () =>
          aboutPlan((plan) => {
            plan.terminals = plan.terminals.filter(({ terminal }) => terminal !== 'REM-IN');
          }),
        level: 'stop',
        subject: 'dsp.REM-IN',
        path: '/devices/dsp',
      },
    ],
    quiet: [
      {
        name: 'left open with a reason',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['signal-2'];
            job['left-open'] = { 'amp.IN2': 'not used', 'dsp.OUT2': 'not used' };
          }),
      },
    ],
  },
  // Every terminal is accounted for.
  'device-without-supply': {
    fires: [
      {
        name: 'a processor that nothing feeds',
        about: () =>
          aboutContent(({ job }) => {
            delete job.links['dsp-feed'];
          }),
        level: 'stop',
        subject: 'dsp',
      },
    ],
    quiet: [{ name: 'every device fed', about: () => about() }],
  },
  // Common practice, no source.
  'cable-conductor-spare': {
    fires: [
      {
        name: 'one of three conductors carries nothing',
        about: () =>
          aboutPlan((plan) => {
            plan.cables = [
              {
                id: 'trunk',
                part: 'nine-wire',
                lengthM: 3,
                conductors: [
                  { name: 'white', colour: 'WH', size: sized('18'), wire: 'speaker-1.+' },
                  { name: 'blue', colour: 'BU', size: sized('18'), wire: null },
                ],
              },
            ];
          }),
        level: 'note',
        subject: 'trunk',
        says: /blue/,
      },
    ],
    quiet: [
      {
        name: 'every conductor carries a wire',
        about: () =>
          aboutPlan((plan) => {
            plan.cables = [
              {
                id: 'trunk',
                part: 'nine-wire',
                lengthM: 3,
                conductors: [{ name: 'white', colour: 'WH', size: sized('18'), wire: 'speaker-1.+' }],
              },
            ];
          }),
      },
    ],
  },
};
