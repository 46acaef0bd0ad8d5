import { seeded } from '../../lib/board/random.ts';
import type { Calculator } from '../../lib/calculators/calculator.ts';

/** What people write in the entries of each calculator, beside what they begin with. */
const written: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  conductor: {
    current: ['4 A', '25 A', '88.5 A', '140 A', '230 A', '1.2 kA'],
    length: ['3 ft', '17 ft 6 in', '5.4 m', '220 cm', "21'", '60 m'],
    return: ['', '12 in', '0.4 m', '16 ft'],
    fuse: ['', '30 A', '80 A', '150 A', '300 A'],
    bundle: ['1', '2', '3', '5', '12', '40'],
    crimps: ['0', '4', '8'],
    bolts: ['0', '2', '12'],
    voltage: ['12.5 V', '13.8 V', '14.4 V'],
    drop: ['1 %', '3 %', '4.5 %'],
    size: ['', '', '4 AWG', '1/0 AWG', '16 mm2', '8 AWG'],
    insulation: ['', '60 C', '105 C', '125 C', '45 C'],
  },
  fuse: {
    current: ['3 A', '18 A', '60 A', '132.4 A', '410 A'],
    ceiling: ['', '', '30 A', '80 A', '250 A'],
    holder: ['', '', '60 A', '300 A'],
    size: ['', '8 AWG', '4 AWG', '1/0 AWG', '35 mm2', '22 AWG'],
    insulation: ['', '60 C', '90 C', '105 C'],
    bundle: ['1', '3', '6', '9'],
    cranking: ['', '480 A', '650 A', '651 A', '1100 A', '1.4 kA'],
  },
  coils: {
    ...Object.fromEntries(
      Array.from({ length: 8 }, (_, k) => [
        `coil${k + 1}`,
        k < 2
          ? ['2 ohm', '4 ohm', '1 ohm']
          : k < 4
            ? ['', '', '4 ohm', '8 ohm']
            : ['', '', '', '', '', '4 ohm'],
      ]),
    ),
    minimum: ['1 ohm', '2 ohm', '4 ohm'],
    load1: ['', '4 ohm', '8 ohm'],
    power1: ['', '75 W', '300 W'],
    load2: ['', '1 ohm', '2 ohm'],
    power2: ['', '500 W', '1.2 kW'],
    asked: ['', '', '', '2 ohm', '3 ohm'],
  },
  gain: {
    load: ['1 ohm', '2.67 ohm', '4 ohm', '8 ohm'],
    power: ['45 W', '75 W', '1 kW'],
    speakers: ['', '60 W', '400 W'],
    rated: ['14.4 V', '12.5 V'],
    supply: ['12.6 V', '13.8 V', '14.4 V'],
    overlap: ['0 dB', '5 dB', '12.5 dB', '30 dB'],
    highCorner: ['', '30 Hz', '80 Hz', '3 kHz'],
    lowCorner: ['', '80 Hz', '2.5 kHz'],
  },
  delay: {
    ...Object.fromEntries(
      Array.from({ length: 8 }, (_, k) => [
        `speaker${k + 1}`,
        ['', '38 in', '4 ft 2 1/2 in', '1.32 m', '91 cm', '0 mm'],
      ]),
    ),
    air: ['-10 C', '20 C', '45 C', '120 C'],
    rate: ['44.1 kHz', '48 kHz', '96 kHz', '4 kHz'],
  },
  filter: {
    highCorner: ['', '28 Hz', '80 Hz', '3.15 kHz'],
    lowCorner: ['', '60 Hz', '2.5 kHz', '20 kHz'],
    frequency: ['20 Hz', '40 Hz', '80 Hz', '1 kHz', '17.3 kHz'],
    tuning: ['', '34 Hz', '41.5 Hz'],
  },
  fraction: {
    length: ['13 5/8 in', '13-5/8"', '346 mm', '1.2345 m', '7/64 in', '-3/16 in', '5\'3"', '0.1 in', '0 mm'],
  },
};

/** What a tired hand writes. */
const slips = ['', '13', '13,5 in', '2 x 30 A', '4 lb', '1/7 in', '½ in', 'twelve', '1e3 A', '13 inches'];

/** Entries of a calculator as many people would write them: the same ones for a seed, one in a dozen with a slip. */
export function writtenEntries(
  { id, fields }: Calculator,
  begun: Readonly<Record<string, string>>,
  count: number,
  seed: number,
): Record<string, string>[] {
  const random = seeded(seed);
  const oneOf = (values: readonly string[]): string => values[Math.floor(random() * values.length)] ?? '';
  return Array.from({ length: count }, () => {
    const entries: Record<string, string> = { ...begun };
    for (const [name, { options }] of Object.entries(fields)) {
      const usual = written[id]?.[name] ?? [begun[name] ?? ''];
      entries[name] = options ? oneOf(options.map(({ value }) => value)) : oneOf(usual);
    }
    const open = Object.keys(fields).filter((name) => fields[name]?.options === undefined);
    if (random() < 1 / 12) entries[oneOf(open)] = oneOf(slips);
    return entries;
  });
}
