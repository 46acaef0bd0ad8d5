import { planned } from '../../plan/planned.ts';
import { partIn } from '../case.ts';
import { fires, quiet, type RemarkCases } from '../remark-case.ts';

const bridged = { '1+2': { positive: 'CH1+', negative: 'CH2-', input: 'IN1', minimum: '4 ohm' } };

/** The coil of the subwoofer between two terminals; the amplifier bridges its two channels, or none. */
const between = (plus: string, minus: string, bridges: boolean) => () =>
  planned((content) => {
    const amp = partIn(content, 'two-channel', 'amplifier');
    if (bridges) amp.bridges = { '1+2': { ...bridged['1+2'], powers: [{ load: '4 ohm', power: '200 W' }] } };
    const { links } = content.job;
    delete links['speaker-1'];
    delete links['speaker-2'];
    links.plus = { from: plus, to: 'sub.C+' };
    links.minus = { from: minus, to: 'sub.C-' };
  }).remarks.map(({ remark }) => remark);

/** Of a load that an amplifier drives across its outputs, common practice, no source. */
export const miswiredRemarks = {
  'pair-not-bridged': {
    fires: [
      fires(
        'across an amplifier that bridges nothing',
        'stop',
        'amp.1',
        between('amp.CH1+', 'amp.CH2-', false),
        /sub\.C hangs between amp\.CH1\+ and amp\.CH2-, and amp bridges no channels/,
      ),
      fires(
        'between the inner terminals of a bridge',
        'stop',
        'amp.1',
        between('amp.CH2+', 'amp.CH1-', true),
        /amp bridges amp\.CH1\+ and amp\.CH2- alone/,
      ),
      fires('between two positives', 'stop', 'amp.1', between('amp.CH1+', 'amp.CH2+', true)),
    ],
    quiet: [
      quiet('across the bridge', between('amp.CH1+', 'amp.CH2-', true)),
      quiet('across the bridge, turned over', between('amp.CH2-', 'amp.CH1+', true)),
      quiet('on one channel', between('amp.CH1+', 'amp.CH1-', true)),
    ],
  },
  'coil-to-body': {
    fires: [
      fires(
        'the negative of a speaker on the body',
        'stop',
        'amp.1',
        between('amp.CH1+', 'body.cargo', false),
        /sub\.C- goes to body\.cargo/,
      ),
      fires(
        'the positive of a speaker on the body',
        'stop',
        'amp.1',
        between('body.cargo', 'amp.CH1-', false),
      ),
      fires(
        'the negative of a speaker on a ground bar',
        'stop',
        'amp.2',
        between('amp.CH2+', 'ground.G1', false),
      ),
    ],
    quiet: [quiet('both ends at the amplifier', between('amp.CH1+', 'amp.CH1-', false))],
  },
} satisfies RemarkCases;
