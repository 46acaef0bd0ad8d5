import { about, aboutContent, entry, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { FiringCase, QuietCase, RuleCases } from '../../rule-case.ts';

type Change = (content: Written) => void;

const at = (path: string) => ({ level: 'caution', file: 'parts.yaml', path }) as const;
const fires = (name: string, part: string, keys: string, change: Change, says: RegExp): FiringCase => ({
  name,
  about: () => aboutContent(change),
  ...at(`/parts/${part}/${keys.replaceAll('.', '/')}`),
  subject: `${part}.${keys}`,
  says,
});
const quiet = (name: string, change: Change): QuietCase => ({ name, about: () => aboutContent(change) });

/** The amplifier of the content: 0.5 L, 1 kg, two channels of 75 W behind 60 A. */
const amp =
  (change: (part: ReturnType<typeof partIn<'amplifier'>>) => void): Change =>
  (content) =>
    change(partIn(content, 'two-channel', 'amplifier'));
const channel = (powers: readonly (readonly [load: string, power: string])[], minimum = '2 ohm'): Change =>
  amp(({ channels }) => {
    const own = entry(channels, '1');
    own.powers = powers.map(([load, power]) => ({ load, power }));
    own.minimum = minimum;
  });
const bridge = (minimum: string, power: string): Change =>
  amp((part) => {
    part.bridges = {
      '1+2': {
        positive: 'CH1+',
        negative: 'CH2-',
        input: 'IN1',
        minimum,
        powers: [{ load: '4 ohm', power }],
      },
    };
  });
const terminal = (name: string, change: object): Change =>
  amp(({ terminals }) => {
    Object.assign(entry(terminals, name), change);
  });
const speaker =
  (change: object): Change =>
  (content) =>
    void Object.assign(partIn(content, 'woofer', 'speaker'), change);
const coil =
  (ohm: string): Change =>
  (content) => {
    entry(partIn(content, 'woofer', 'speaker').coils, 'C')['direct-current'] = ohm;
  };
const battery =
  (change: object): Change =>
  (content) =>
    void Object.assign(partIn(content, 'agm', 'battery'), change);

export const partDataCases = {
  'part-data-unlikely': {
    fires: [
      fires(
        '62 kg in half a litre',
        'two-channel',
        'mass',
        amp((part) => {
          part.mass = '62 kg';
        }),
        /124 kg a litre, more than steel/,
      ),
      fires(
        '3.95 kg, over the 7.85 kg a litre of steel',
        'two-channel',
        'mass',
        amp((part) => {
          part.mass = '3.95 kg';
        }),
        /more than steel/,
      ),
      fires(
        'grams for kilograms',
        'two-channel',
        'mass',
        amp((part) => {
          part.mass = '1 g';
        }),
        /less than foam/,
      ),
      fires(
        'a mounting hole beside the foot',
        'two-channel',
        'mounting-holes.0',
        amp((part) => {
          part['mounting-holes'] = [{ x: '101 mm', y: '10 mm', diameter: '5 mm' }];
        }),
        /outside its foot/,
      ),
      fires(
        'two terminals without a place on one panel',
        'two-channel',
        'terminals.B+',
        amp(({ terminals }) => {
          for (const name of ['B+', 'GND'])
            Object.assign(entry(terminals, name), { panel: 'right', at: undefined });
        }),
        /does not say where B\+.* and .*GND lie: all are drawn and wired on one point, in the middle of the right panel/,
      ),
      fires(
        'a terminal past the end of its panel',
        'two-channel',
        'terminals.B+.at',
        terminal('B+', { panel: 'right', at: '101 mm' }),
        /right panel that is/,
      ),
      fires(
        'a control before the beginning of its panel',
        'two-channel',
        'controls.GAIN.at',
        amp(({ controls }) => {
          entry(controls, 'GAIN').at = '-1 mm';
        }),
        /has GAIN at/,
      ),
      fires(
        'a set screw at 40 lbf ft',
        'two-channel',
        'terminals.B+.torque',
        terminal('B+', { torque: '40 lbf ft' }),
        /strips it/,
      ),
      fires(
        'more power into the larger load',
        'two-channel',
        'channels.1.powers.0.power',
        channel([
          ['4 ohm', '90 W'],
          ['2 ohm', '75 W'],
        ]),
        /into the larger load it gives less/,
      ),
      fires(
        'less than half into twice the load',
        'two-channel',
        'channels.1.powers.0.power',
        channel([
          ['4 ohm', '20 W'],
          ['2 ohm', '75 W'],
        ]),
        /by the ratio of the loads at most/,
      ),
      fires(
        'a power below the minimum',
        'two-channel',
        'channels.1.powers.0.load',
        channel([['1 ohm', '100 W']]),
        /below its own minimum/,
      ),
      fires(
        'a bridge with the minimum of a channel',
        'two-channel',
        'bridges.1+2.minimum',
        bridge('3.9 ohm', '150 W'),
        /each half sees 1.9/,
      ),
      fires(
        'a bridge that gives less than a channel',
        'two-channel',
        'bridges.1+2.powers.0.power',
        bridge('4 ohm', '70 W'),
        /by one of its channels alone/,
      ),
      fires(
        'full output outside the range of its input',
        'two-channel',
        'terminals.IN1.signal',
        terminal('IN1', { 'signal-range': { from: '3 V', to: '6 V' } }),
        /outside its range/,
      ),
      fires(
        '150 W behind 7.5 A, which let in 145 W',
        'two-channel',
        'supply.fuse',
        amp(({ supply }) => {
          supply.fuse = '7.5 A';
        }),
        /which lets in 14/,
      ),
      fires(
        'more heat than its fuse lets in',
        'two-channel',
        'heat',
        amp((part) => {
          part.heat = '870 W';
        }),
        /of heat behind a fuse/,
      ),
      fires(
        'the fuse for the draw',
        'dsp',
        'supply.draw',
        (content) => {
          partIn(content, 'dsp', 'processor').supply.draw = '5 A';
        },
        /draws 5 A \(draw:\) behind a fuse of 5 A/,
      ),
      fires(
        'cutting out at 105 V',
        'two-channel',
        'supply.cut-out',
        amp(({ supply }) => {
          supply['cut-out'] = '105 V';
        }),
        /above all that it is fed/,
      ),
      fires(
        'a coil of 4 ohm with 40 ohm',
        'woofer',
        'coils.C.direct-current',
        coil('40 ohm'),
        /4 ohm nominal/,
      ),
      fires(
        'a coil of 4 ohm with 1.9 ohm',
        'woofer',
        'coils.C.direct-current',
        coil('1.9 ohm'),
        /direct-current resistance is 1.9/,
      ),
      fires(
        'a subwoofer from 101 Hz',
        'woofer',
        'lowest-frequency',
        speaker({ 'lowest-frequency': '101 Hz' }),
        /is a subwoofer that may play from 101/,
      ),
      fires(
        'a hole as large as the frame',
        'woofer',
        'cut-out',
        speaker({ 'cut-out': '100 mm' }),
        /frame of/,
      ),
      fires(
        'a hole of centimetres for inches',
        'woofer',
        'cut-out',
        speaker({ 'cut-out': '59 mm' }),
        /frame of/,
      ),
      fires(
        '700 Ah that start with 600 A',
        'agm',
        'capacity',
        battery({ capacity: '700 Ah' }),
        /holds 700 Ah/,
      ),
      fires('7 Ah that start with 600 A', 'agm', 'capacity', battery({ capacity: '7 Ah' }), /holds 7 Ah/),
      fires(
        'a short below the starting current',
        'agm',
        'short-circuit',
        battery({ 'short-circuit': '3.6 A' }),
        /into a dead short/,
      ),
      fires(
        'a resistance behind which it starts nothing',
        'agm',
        'resistance',
        battery({ resistance: '13 mohm' }),
        /can't be drawn/,
      ),
      fires(
        'a subsonic filter up to 121 Hz',
        'two-channel',
        'controls.GAIN.filter',
        amp(({ controls }) => {
          entry(controls, 'GAIN').filter = { pass: 'subsonic', range: { from: '10 Hz', to: '121 Hz' } };
        }),
        /subsonic filter GAIN/,
      ),
    ],
    quiet: [
      { name: 'parts whose figures fit', about: () => about() },
      quiet(
        '3.9 kg in half a litre',
        amp((part) => {
          part.mass = '3.9 kg';
        }),
      ),
      quiet(
        'a mounting hole at the rim of the foot',
        amp((part) => {
          part['mounting-holes'] = [{ x: '100 mm', y: '0 mm', diameter: '5 mm' }];
        }),
      ),
      quiet('a terminal at the end of its panel', terminal('B+', { panel: 'right', at: '100 mm' })),
      quiet('a set screw at 15 N m', terminal('B+', { torque: '15 N m' })),
      quiet(
        'half the power into twice the load',
        channel([
          ['4 ohm', '50 W'],
          ['2 ohm', '100 W'],
        ]),
      ),
      quiet(
        'the same power into both, from a regulated supply',
        channel([
          ['4 ohm', '75 W'],
          ['2 ohm', '75 W'],
        ]),
      ),
      quiet('a bridge of twice the load and four times the power', bridge('4 ohm', '300 W')),
      quiet(
        '150 W behind 8 A',
        amp(({ supply, ...part }) => {
          supply.fuse = '8 A';
          Object.assign(part, {});
        }),
      ),
      quiet('a coil of 4 ohm with 3.2 ohm', coil('3.2 ohm')),
      quiet('a subwoofer from 100 Hz', speaker({ 'lowest-frequency': '100 Hz' })),
      quiet('a hole inside its frame', speaker({ 'cut-out': '90 mm' })),
      quiet('199 Ah that start with 600 A', battery({ capacity: '199 Ah' })),
      quiet('a resistance of 12 mohm', battery({ resistance: '12 mohm' })),
    ],
  },
} satisfies RuleCases;
