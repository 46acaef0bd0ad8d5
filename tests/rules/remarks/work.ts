import { inJob } from '../../read/problem-case.ts';
import { asItStands, fires, inSmallShop, quiet, type RemarkCases } from '../remark-case.ts';

const after = (text: string) =>
  inJob('    title: Bass amplifier\n', `    title: Bass amplifier\n    after: { ${text} }\n`);
const reading = (text: string) => inSmallShop(inJob('left-open:\n', `as-built: { ${text} }\nleft-open:\n`));
const inItsUnit = quiet('a rested battery of 12.6 V', reading('battery-rest: 12.6 V'));

/** The order of work and the record of measurements. */
export const workRemarks = {
  'steps-wait-for-each-other': {
    fires: [
      fires(
        'a lid under a box that stands over the lid',
        'stop',
        'amp',
        inSmallShop(
          after('sub: it stands over it'),
          inJob('in: boot }\ncables', 'in: boot, after: { amp: its lid is under it } }\ncables'),
        ),
      ),
    ],
    quiet: [asItStands, quiet('one after the other', inSmallShop(after('sub: it stands over it')))],
  },
  'as-built-unknown': {
    fires: [fires('the mood of a battery', 'caution', 'battery-mood', reading('battery-mood: 12.5 V'))],
    quiet: [inItsUnit],
  },
  'as-built-unit': {
    fires: [fires('amperes of a rested battery', 'caution', 'battery-rest', reading('battery-rest: 12.5 A'))],
    quiet: [inItsUnit],
  },
} satisfies RemarkCases;
