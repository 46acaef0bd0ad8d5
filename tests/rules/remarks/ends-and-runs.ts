import { planned } from '../../plan/planned.ts';
import { inParts } from '../../plan/shop-changes.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { entry, partIn } from '../case.ts';
import { asItStands, fires, inSmallShop, quiet, type RemarkCases } from '../remark-case.ts';

const added = (...parts: readonly string[]) =>
  inParts('  bolt-a:', `${parts.map((part) => `  ${part}\n`).join('')}  bolt-a:`);
const shrink = (bore: string, shrunk: string) =>
  inSmallShop(
    added(
      `shrink-a: { kind: covering, title: Shrink, form: heat-shrink, bore: ${bore}, shrunk-bore: ${shrunk}, withstands: 110 C }`,
    ),
  );
/** Lugs, ferrules and a sleeve for all that the small shop crimps and joins. */
const crimps = crimpsOf(', strip: 16 mm');
const silentCrimps = crimpsOf('');
function crimpsOf(strip: string): Change {
  return added(
    ...['10 to 6', '4 to 2'].map((sizes, n) => crimp(`lug-${n}`, 'ring-lug, stud: M8', sizes, strip)),
    ...['22 to 18', '16 to 12', '10 to 6', '4 to 2'].map((sizes, n) =>
      crimp(`ferrule-${n}`, 'ferrule', sizes, strip),
    ),
    crimp('sleeve-0', 'solder-sleeve', '20 to 16', strip),
  );
}
function crimp(id: string, form: string, sizes: string, strip: string): string {
  const [from, to] = sizes.split(' to ');
  return `${id}: { kind: terminal, title: Crimp, form: ${form}, takes: { from: ${from} AWG, to: ${to} AWG }${strip} }`;
}
const port = (takes: string) =>
  inParts(
    'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
    `B+: { role: supply-positive, joint: set-screw, takes: ${takes} }`,
  );
const fourGauge = inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }');
/** The run of the feed without its covering, the loom of the catalogue with a bore of its own. */
const loomed = (bore: string) =>
  inSmallShop(
    inJob('links: [feed], covering: loom-a }', 'links: [feed] }'),
    inParts('bore: 13 mm', `bore: ${bore}`),
  );

const sleeve = { form: 'solder-sleeve', from: '18 AWG', to: '14 AWG' } as const;

/** A second coil of 4 ohm that is joined to the wire of the first before channel 1, which gives so much into both. */
const joinedCoils =
  (
    {
      form,
      ...takes
    }: { readonly form: 'butt-splice' | 'solder-sleeve'; readonly from: string; readonly to: string },
    power: string,
  ) =>
  () =>
    planned((content) => {
      const { parts, job } = content;
      parts.splice = { kind: 'terminal', title: 'Splice', form, takes };
      const channel = entry(partIn(content, 'two-channel', 'amplifier').channels, '1');
      Object.assign(channel, { minimum: '2 ohm', powers: [{ load: '2 ohm', power }] });
      entry(job.links, 'speaker-1').size = '18 AWG';
      job.devices['tweeter-b'] = { part: 'tweeter', in: 'door' };
      job.links['to-b'] = {
        ...{ from: 'amp.CH1', to: 'tweeter-b.T', size: '18 AWG' },
        joint: { with: 'speaker-1', part: 'splice' },
      };
    }).remarks.map(({ remark }) => remark);

/** What goes on an end and over a run: by the parts of the catalogue. */
export const endAndRunRemarks = {
  'port-refuses-conductor': {
    fires: [
      fires(
        '4 AWG in a port for 8 AWG',
        'stop',
        'feed',
        inSmallShop(port('{ from: 10 AWG, to: 8 AWG }'), fourGauge),
      ),
    ],
    quiet: [asItStands],
  },
  'joint-off-size': {
    fires: [
      fires(
        'two of 18 AWG by a splice for 14 to 12 AWG',
        'stop',
        'to-b.+',
        joinedCoils({ form: 'butt-splice', from: '14 AWG', to: '12 AWG' }, '10 W'),
      ),
    ],
    quiet: [quiet('by a sleeve for 18 to 14 AWG', joinedCoils(sleeve, '10 W'))],
  },
  'joint-overloaded': {
    // 10 kW into 2 ohm are 71 A (Joule); the table gives 18 AWG about 20 A.
    fires: [fires('what a wire of 18 AWG does not carry', 'stop', 'to-b.+', joinedCoils(sleeve, '10000 W'))],
    quiet: [quiet('10 W into 2 ohm, 2.2 A', joinedCoils(sleeve, '10 W'))],
  },
  'port-note': {
    fires: [
      fires(
        '4 AWG in a port for 1/0 AWG or larger',
        'note',
        'feed',
        inSmallShop(port('{ from: 1/0 AWG, to: 1/0 AWG }'), fourGauge),
      ),
    ],
    quiet: [asItStands],
  },
  'strip-length-assumed': {
    fires: [
      fires('lugs and ferrules whose parts are silent', 'note', 'ferrule-3', inSmallShop(silentCrimps)),
    ],
    quiet: [quiet('lugs and ferrules that tell it', inSmallShop(crimps)), asItStands],
  },
  'terminal-not-in-catalogue': {
    fires: [
      fires('no lug of any kind', 'caution', 'tail', asItStands.remarks),
      fires(
        "no splice for the lead at the plug of the vehicle's source",
        'caution',
        'turn-on',
        asItStands.remarks,
      ),
    ],
    quiet: [quiet('lugs, ferrules and a sleeve for all', inSmallShop(crimps))],
  },
  'heat-shrink-none-fits': {
    fires: [
      fires('none at all', 'caution', 'tail', asItStands.remarks),
      fires('one that does not close on it', 'caution', 'tail', shrink('30 mm', '15 mm')),
    ],
    quiet: [quiet('one of 12 mm that shrinks to 4 mm', shrink('12 mm', '4 mm'))],
  },
  'covering-none-fits': {
    fires: [fires('a loom of 5 mm for a feed in the engine bay', 'caution', 'power', loomed('5 mm'))],
    quiet: [quiet('one of 13 mm', loomed('13 mm'))],
  },
} satisfies RemarkCases;
