import type { AmplifierMode } from '../audio/load/amplifier-load.ts';
import type { Coil } from '../audio/load/coil-wiring.ts';
import { type PlugResistance, plugResistance } from '../audio/load/plug-resistance.ts';
import {
  listWirings,
  type RankedWiring,
  type WiringChoice,
  wiringChoice,
  wiringsForLoad,
} from '../audio/load/wiring-choice.ts';
import { type Fault, isFault } from '../model/fault.ts';
import { quantityAbove } from '../model/fields.ts';
import { noFigure, printed } from '../model/printed/index.ts';
import { ohms, ohmsAtLeast, watts } from '../model/printed/told.ts';
import type { Bench } from './bench.ts';
import {
  type Answer,
  type AnswerTable,
  calculator,
  type Figure,
  figureOf,
  type Step,
  type ValuesOf,
} from './calculator.ts';
import { choice, type Field, optional, required } from './field.ts';

const load = quantityAbove('resistance');
const power = quantityAbove('power');

const coilField = (n: number, initial: string): Field<number | null> =>
  optional(load, { label: `Coil ${n}, nominal`, initial });

const fields = {
  coil1: coilField(1, '4 ohm'),
  coil2: coilField(2, '4 ohm'),
  coil3: coilField(3, ''),
  coil4: coilField(4, ''),
  coil5: coilField(5, ''),
  coil6: coilField(6, ''),
  coil7: coilField(7, ''),
  coil8: coilField(8, ''),
  each: choice(
    [
      { value: '1', title: 'One' },
      { value: '2', title: 'Two' },
    ],
    { label: 'Coils in each speaker', initial: '2' },
  ),
  mode: choice([{ value: 'stereo' }, { value: 'bridged' }], {
    label: 'Mode of the amplifier',
    initial: 'bridged',
  }),
  minimum: required(load, { label: 'Its minimum load in that mode', initial: '2 ohm' }),
  load1: optional(load, { label: 'A load that its maker rates it at', initial: '4 ohm' }),
  power1: optional(power, { label: 'Rated power there', initial: '300 W' }),
  load2: optional(load, { label: 'Another rated load', initial: '2 ohm' }),
  power2: optional(power, { label: 'Rated power there, other load', initial: '500 W' }),
  asked: optional(load, { label: 'Load that is wanted', hint: 'Left empty: every way.', initial: '' }),
};
type Entries = ValuesOf<typeof fields>;

/** The one channel that is asked about. */
const channel = 'this channel';
/** More ways than this do not fit a sheet. */
const mostShown = 12;

/** Coil loads: the ways of wiring coils in series and in parallel, each with what the amplifier makes of it. */
export const coilCalculator = calculator({
  id: 'coils',
  title: 'Coil loads',
  asks: 'Which loads coils can be wired to, and what the amplifier gives there.',
  fields,
  compute: (entries, bench) => {
    const coils = coilsOf(entries);
    const mode = amplifierOf(entries);
    const ways =
      entries.asked === null
        ? listWirings(channel, coils, mode)
        : wiringsForLoad(channel, coils, mode, entries.asked);
    if (isFault(ways)) return ways;
    const shown = shownOf(ways, coils, mode, bench);
    return isFault(shown) ? shown : answerOf(shown, ways.length);
  },
});

function coilsOf(entries: Entries): Coil[] {
  const { coil1, coil2, coil3, coil4, coil5, coil6, coil7, coil8, each } = entries;
  const known = [coil1, coil2, coil3, coil4, coil5, coil6, coil7, coil8].filter((ohm) => ohm !== null);
  return known.map((nominalOhm, k): Coil => {
    const speaker = `speaker-${Math.floor(k / Number(each)) + 1}`;
    return { id: each === '1' ? speaker : `${speaker}.coil-${(k % 2) + 1}`, speaker, nominalOhm };
  });
}

function amplifierOf({ mode, minimum, load1, power1, load2, power2 }: Entries): AmplifierMode {
  const line = (loadOhm: number | null, powerW: number | null) =>
    loadOhm === null || powerW === null ? [] : [{ loadOhm, powerW }];
  return { mode, minimumOhm: minimum, rated: [...line(load1, power1), ...line(load2, power2)] };
}

/** A way of wiring with what a meter reads at its plug. */
interface ShownWay {
  readonly way: WiringChoice;
  readonly plug: PlugResistance;
}

/** The ways that are shown, the best first. */
function shownOf(
  ways: readonly RankedWiring[],
  coils: readonly Coil[],
  mode: AmplifierMode,
  { rules }: Bench,
): readonly ShownWay[] | Fault {
  const shares = { least: rules['coil-dc-least'].value, most: rules['coil-dc-most'].value };
  const shown: ShownWay[] = [];
  for (const ranked of ways.slice(0, mostShown)) {
    const plug = plugResistance(channel, ranked.wiring, coils, shares);
    if (isFault(plug)) return plug;
    shown.push({ way: wiringChoice(channel, ranked, coils, mode), plug });
  }
  return shown;
}

function answerOf(shown: readonly ShownWay[], inAll: number): Answer {
  const [first] = shown;
  if (!first) return { says: 'There is no way to wire these coils.', minds: [], figures: [], steps: [] };
  const { way: best, plug } = first;
  const given = isFault(best.power) ? '' : `, ${watts(best.power.powerW.value)}`;
  const minimum = ohmsAtLeast(best.minimumOhm.value);
  return {
    says: best.mayDrive
      ? `${best.text}: ${ohms(best.loadOhm.value)}${given}`
      : `No way may be driven: the highest load is ${ohms(best.loadOhm.value)}, and the amplifier asks for ${minimum}.`,
    minds: mindsOf(best, inAll),
    figures: [
      ...figuresOf(best),
      figureOf(
        'A meter at the plug reads',
        meterText(plug),
        plug.expectedOhm,
        'direct-current resistance, without the wire',
      ),
    ],
    steps: stepsOf(best),
    table: tableOf(shown),
  };
}

function mindsOf({ power, unevenness }: WiringChoice, inAll: number): readonly string[] {
  const more = inAll - mostShown;
  return [
    ...(isFault(power) ? [`No power is told: ${power.message}.`] : []),
    ...(unevenness > 1.01 ? ['The coils do not get the same power.'] : []),
    ...(more > 0 ? [`${more} more ways are not listed.`] : []),
  ];
}

function meterText({ fromOhm, toOhm }: PlugResistance): string {
  return `${printed('resistance-from', fromOhm.value)} to ${printed('resistance-to', toOhm.value)}`;
}

function figuresOf({ loadOhm, outputLoadOhm, minimumOhm, power: found, coils }: WiringChoice): Figure[] {
  const each = coils.map(({ powerW }) => powerW.value);
  const [coil] = coils;
  return [
    figureOf('Load', printed('load', loadOhm.value), loadOhm),
    figureOf('Each output sees', printed('load', outputLoadOhm.value), outputLoadOhm),
    figureOf('Least load allowed', printed('load-at-least', minimumOhm.value), minimumOhm),
    ...(isFault(found)
      ? []
      : [figureOf('Power of the channel', printed('power', found.powerW.value), found.powerW)]),
    ...(coil
      ? [
          figureOf(
            'Power of a coil',
            [...new Set([Math.min(...each), Math.max(...each)].map((one) => printed('power', one)))].join(
              ' to ',
            ),
            coil.powerW,
          ),
        ]
      : []),
  ];
}

/** The most that the ratings allow for is what a coil must bear. */
function stepsOf({ power: found, coils }: WiringChoice): Step[] {
  return isFault(found)
    ? []
    : [
        { label: 'The most that the ratings allow for', trace: found.greatestPowerW.trace },
        ...coils.slice(0, 1).map(({ coil, greatestPowerW }) => {
          return { label: `The most that ${coil} must bear`, trace: greatestPowerW.trace };
        }),
      ];
}

function tableOf(shown: readonly ShownWay[]): AnswerTable {
  return {
    caption: 'Ways of wiring',
    columns: [
      { title: 'Way' },
      { title: 'Load', isFigure: true },
      { title: 'May be driven' },
      { title: 'Power', isFigure: true },
      { title: 'Meter at the plug', isFigure: true },
    ],
    rows: shown.map(({ way, plug }) => [
      way.text,
      printed('load', way.loadOhm.value),
      way.mayDrive ? 'yes' : 'NO',
      isFault(way.power) ? noFigure : printed('power', way.power.powerW.value),
      meterText(plug),
    ]),
  };
}
