import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutContent, aboutPlan, entry, partIn } from '../../case.ts';
import { unsized, wire } from '../../changes.ts';
import { sized } from '../../plan.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The tweeter with tabs of told widths, a receptacle on each of its wires. */
const tabbed = ({
  plus,
  minus,
  joint = 'blade-tab' as const,
}: {
  readonly plus?: string;
  readonly minus?: string;
  readonly joint?: 'blade-tab' | 'binding-post';
}): Case =>
  about({
    content: (content) => {
      partIn(content, 'tweeter', 'speaker').terminals = {
        'T+': { role: 'coil-positive', joint, ...(plus && { tab: plus }) },
        'T-': { role: 'coil-negative', joint, ...(minus && { tab: minus }) },
      };
    },
    plan: (plan) => {
      for (const one of plan.wires)
        for (const end of one.ends) if (end.terminal.startsWith('tweeter.')) end.form = 'crimp';
    },
  });

/** The tweeter on leads that its maker supplies, their sizes told or not, and a wire joined to each. */
const onLeads = ({ plus, minus }: { readonly plus?: string; readonly minus?: string } = {}): Case =>
  about({
    content: (content) => {
      const joint = 'supplied-lead' as const;
      partIn(content, 'tweeter', 'speaker').terminals = {
        'T+': { role: 'coil-positive', joint, ...(plus && { lead: plus }) },
        'T-': { role: 'coil-negative', joint, ...(minus && { lead: minus }) },
      };
    },
    plan: (plan) => {
      for (const one of plan.wires)
        for (const end of one.ends) if (end.terminal.startsWith('tweeter.')) end.form = 'supplied-lead';
    },
  });

export const portsCases = {
  // The part's own data.
  'port-too-small': {
    fires: [
      {
        name: '2 AWG into a port for 4 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = sized('2');
          }),
        level: 'stop',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: '4 AWG written by its area into a port for 4 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = { label: '21.15 mm2', awg: null, areaMm2: 21.15 };
            wire(plan, 'amp-ground').size = sized('4');
          }),
      },
      {
        name: '2 AWG spliced to leads that the makers supply',
        about: () =>
          aboutPlan((plan) => {
            for (const id of ['amp-feed', 'amp-ground']) {
              wire(plan, id).size = sized('2');
              for (const end of wire(plan, id).ends) end.form = 'supplied-lead';
            }
          }),
      },
      {
        name: '2 AWG with a reducer at both ends',
        about: () =>
          aboutPlan((plan) => {
            for (const id of ['amp-feed', 'amp-ground']) {
              wire(plan, id).size = sized('2');
              for (const end of wire(plan, id).ends) end.part = 'reducer';
            }
          }),
      },
    ],
  },
  // The part's own data.
  'port-too-large': {
    fires: [
      {
        name: '16 AWG into a port for 12 AWG and larger',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = sized('16');
          }),
        level: 'caution',
        subject: 'block.OUT1',
      },
    ],
    quiet: [
      {
        name: '10 AWG into a port for 10 AWG and larger',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = sized('10');
          }),
      },
      {
        name: 'a wire that no cable was found for',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'amp-feed').size = unsized;
          }),
      },
    ],
  },
  // The part's own data: what its maker allows in a port; twin ferrules end at 2 x 16 mm2 (common practice).
  'port-shared': {
    fires: [
      {
        name: 'two conductors in a port for one',
        about: () =>
          aboutContent(({ job }) => {
            job.links['radio-ground'] = { from: 'radio.GND', to: 'ground.G2' };
          }),
        level: 'stop',
        subject: 'ground.G2',
      },
      {
        name: 'two of 4 AWG in a port that allows two',
        about: () =>
          about({
            content: (content) => {
              content.job.links['radio-ground'] = { from: 'radio.GND', to: 'ground.G1' };
              entry(partIn(content, 'bar', 'distribution').terminals, 'G1').conductors = 2;
            },
            plan: (plan) => {
              wire(plan, 'amp-ground').size = sized('4');
              wire(plan, 'radio-ground').size = sized('4');
            },
          }),
        level: 'caution',
        subject: 'ground.G1',
      },
      {
        name: 'two plugs in one socket',
        about: () =>
          aboutContent(({ job }) => {
            Object.assign(entry(job.links, 'signal-2'), { from: 'dsp.OUT1' });
          }),
        level: 'stop',
        subject: 'dsp.OUT1',
      },
    ],
    quiet: [
      {
        name: 'one plug of a Y-lead in a socket',
        about: () =>
          aboutContent(({ job, parts }) => {
            parts.parted = {
              kind: 'cable',
              title: 'Y-lead',
              form: 'coaxial',
              conductors: { one: { size: '24 AWG', colour: 'BK' }, two: { size: '24 AWG', colour: 'GY' } },
              for: ['signal'],
              'made-length': '1 m',
              plugs: 'phono',
              'y-lead': true,
            };
            job.cables = { parted: { part: 'parted' } };
            Object.assign(entry(job.links, 'signal-1'), { cable: 'parted', conductors: ['one'] });
            Object.assign(entry(job.links, 'signal-2'), {
              from: 'dsp.OUT1',
              cable: 'parted',
              conductors: ['two'],
            });
          }),
      },
      {
        name: 'two of 8 AWG in a port that allows two',
        about: () =>
          aboutContent((content) => {
            content.job.links['radio-ground'] = { from: 'radio.GND', to: 'ground.G1' };
            entry(partIn(content, 'bar', 'distribution').terminals, 'G1').conductors = 2;
          }),
      },
    ],
  },
  // The part's own data.
  'port-ferrule': {
    fires: [
      {
        name: 'bare strands where the maker asks for a ferrule',
        about: () =>
          about({
            content: (content) => {
              entry(partIn(content, 'two-channel', 'amplifier').terminals, 'B+').ferrule = 'required';
            },
            plan: (plan) => {
              Object.assign(wire(plan, 'amp-feed').ends[1], { prep: 'bare', form: 'bare' });
            },
          }),
        level: 'caution',
        subject: 'amp.B+',
      },
      {
        name: 'a ferrule where the maker refuses one',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'two-channel', 'amplifier').terminals, 'B+').ferrule = 'no';
          }),
        level: 'caution',
        subject: 'amp.B+',
      },
    ],
    quiet: [
      {
        name: 'a ferrule where the maker asks for one',
        about: () =>
          aboutContent((content) => {
            entry(partIn(content, 'two-channel', 'amplifier').terminals, 'B+').ferrule = 'required';
          }),
      },
    ],
  },
  // ABYC E-11, from memory: at most four on a stud.
  'lugs-on-stud': {
    fires: [
      {
        name: 'five grounds on one bolt',
        about: () =>
          aboutContent(({ job }) => {
            for (const n of [1, 2, 3, 4]) {
              job.devices[`bar-${n}`] = { part: 'bar', in: 'boot' };
              job.links[`ground-${n}`] = { from: `bar-${n}.G0`, to: 'body.cargo' };
            }
          }),
        level: 'caution',
        subject: 'body.cargo',
        file: 'vehicle.yaml',
      },
    ],
    quiet: [
      {
        name: 'four grounds on one bolt',
        about: () =>
          aboutContent(({ job }) => {
            for (const n of [1, 2, 3]) {
              job.devices[`bar-${n}`] = { part: 'bar', in: 'boot' };
              job.links[`ground-${n}`] = { from: `bar-${n}.G0`, to: 'body.cargo' };
            }
          }),
      },
    ],
  },
  // The part's own data.
  'lug-off-stud': {
    fires: [
      {
        name: 'an M8 lug on an M6 bolt',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'radio-ground').ends[1].part = 'lug';
          }),
        level: 'caution',
        subject: 'body.dash',
      },
    ],
    quiet: [
      {
        name: 'an M8 lug on an M8 bolt',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').ends[1].part = 'lug';
          }),
      },
    ],
  },
  // Common practice, no source: the next size up, never the nearest.
  'end-off-size': {
    fires: [
      {
        name: 'a lug for 6 to 4 AWG on 16 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'radio-ground').ends[1].part = 'lug';
          }),
        level: 'caution',
        subject: 'body.dash',
      },
    ],
    quiet: [
      {
        name: 'a lug for 6 to 4 AWG on 4 AWG',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'board-ground').ends[1].part = 'lug';
          }),
      },
    ],
  },
  // The part's own data: plus and minus of one coil may have tabs of unlike widths.
  'tab-not-told': {
    fires: [
      {
        name: 'a speaker with tabs of which only the plus is told',
        about: () => tabbed({ plus: '6.3 mm' }),
        level: 'note',
        subject: 'tweeter',
        file: 'parts.yaml',
        path: '/parts/tweeter/terminals',
        says: /the width of the tab T- of tweeter is not told/,
        toDo: /^measure each tab/,
      },
      {
        name: 'both untold, once for the part',
        about: () => tabbed({}),
        level: 'note',
        subject: 'tweeter',
        file: 'parts.yaml',
        says: /the tabs T\+ and T- of tweeter/,
      },
    ],
    quiet: [
      { name: 'both told', about: () => tabbed({ plus: '6.3 mm', minus: '2.8 mm' }) },
      { name: 'no tabs', about: () => tabbed({ joint: 'binding-post' }) },
    ],
  },
  // A fact of the trade: makers' leads of signal and turn-on are of 18 to 22 AWG; common practice, no source.
  'lead-not-told': {
    fires: [
      {
        name: 'a tweeter on leads of its maker of which nobody tells the size, once for the part',
        about: () => onLeads(),
        level: 'note',
        subject: 'tweeter',
        file: 'parts.yaml',
        path: '/parts/tweeter/terminals',
        says: /nobody tells how thick the leads T\+ and T- of tweeter are/,
        toDo: /lead: 20 AWG$/,
      },
      {
        name: 'one of whose two leads is told',
        about: () => onLeads({ minus: '20 AWG' }),
        level: 'note',
        subject: 'tweeter',
        file: 'parts.yaml',
        says: /nobody tells how thick the lead T\+ of tweeter is/,
      },
    ],
    quiet: [
      { name: 'both told', about: () => onLeads({ plus: '22 AWG', minus: '22 AWG' }) },
      { name: 'tabs, which are no leads', about: () => tabbed({}) },
    ],
  },
} satisfies RuleCases;
