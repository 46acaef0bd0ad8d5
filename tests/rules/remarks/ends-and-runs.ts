import { inParts } from '../../plan/shop-changes.ts';
import { inJob } from '../../read/problem-case.ts';
import { asItStands, fires, inSmallShop, quiet, type RemarkCases } from '../remark-case.ts';

const added = (...parts: readonly string[]) =>
  inParts('  bolt-a:', `${parts.map((part) => `  ${part}\n`).join('')}  bolt-a:`);
const shrink = (bore: string, shrunk: string) =>
  inSmallShop(
    added(
      `shrink-a: { kind: covering, title: Shrink, form: heat-shrink, bore: ${bore}, shrunk-bore: ${shrunk}, withstands: 110 C }`,
    ),
  );
/** Lugs and ferrules for all that the small shop crimps. */
const crimps = added(
  ...['10 to 6', '4 to 2'].map((sizes, n) => crimp(`lug-${n}`, 'ring-lug, stud: M8', sizes)),
  ...['22 to 18', '16 to 12', '10 to 6', '4 to 2'].map((sizes, n) => crimp(`ferrule-${n}`, 'ferrule', sizes)),
);
function crimp(id: string, form: string, sizes: string): string {
  const [from, to] = sizes.split(' to ');
  return `${id}: { kind: terminal, title: Crimp, form: ${form}, takes: { from: ${from} AWG, to: ${to} AWG }, strip: 16 mm }`;
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
  'terminal-not-in-catalogue': {
    fires: [fires('no lug of any kind', 'caution', 'tail', asItStands.remarks)],
    quiet: [quiet('lugs and ferrules for all', inSmallShop(crimps))],
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
