import { z } from 'zod';
import { extent, faultless, quantityAbove } from '../../../model/fields.ts';
import { crossoverSchema } from '../../../model/kinds/crossover.ts';
import { equipmentBase } from '../../../model/kinds/fields/equipment.ts';
import { terminalSpecSchema } from '../../../model/kinds/fields/terminal-spec.ts';
import { speakerSchema } from '../../../model/kinds/speaker.ts';
import { type AskedTable, column, optionalColumn } from '../../../model/survey/asked-table.ts';
import type { Row } from '../ask/rows.ts';
import { filled, known, type Named } from '../yaml-text.ts';
import { jumperControl, levelJumper } from './controls/level-steps.ts';
import { holeFields } from './hole-fields.ts';
import { columnsOf, joinedBy, leaflet, sizesField } from './part-columns.ts';
import { boardCaseTable } from './terminal-tables.ts';

/** What a leaflet calls a woofer that comes with a tweeter and the passive crossover between them. */
export const componentSet = 'component';

const { mass } = equipmentBase;

const jumperField = z
  .string()
  .check(
    faultless((written) =>
      levelJumper(written) === null
        ? 'is no jumper: write its name and its levels, as delivered first, TWEETER 0 / -3 dB'
        : null,
    ),
  );

/** What is asked of such a set beside its woofer. */
export const setTable: AskedTable = leaflet(
  'set',
  'Its passive crossover and its tweeter: they become parts of their own beside the woofer',
  [
    column('corner', 'crossover frequency', quantityAbove('frequency'), '3 kHz'),
    column('frame', 'tweeter across', extent, '2 in'),
    column('mounting', 'tweeter depth', extent, '7/8 in'),
    column('tweeter-mass', 'tweeter mass', mass, '0.09 kg'),
    column('width', 'crossover width', extent, '4 in'),
    column('depth', 'crossover depth', extent, '3 in'),
    column('height', 'crossover height', extent, '1 1/4 in'),
    column('mass', 'crossover mass', mass, '0.25 kg'),
    column('joint', 'crossover joint', terminalSpecSchema.shape.joint, 'set-screw'),
    optionalColumn('takes', 'crossover takes', sizesField, '18 AWG to 12 AWG'),
    optionalColumn('strip', 'crossover strip', terminalSpecSchema.shape.strip, '3/8 in'),
    optionalColumn('power', 'crossover power', crossoverSchema.shape.power, '80 W'),
    optionalColumn('tweeter-power', 'tweeter power', speakerSchema.shape.power, '60 W'),
    ...columnsOf(crossoverSchema.shape, ['order'], { order: '2' }),
    optionalColumn('leads', 'leads to its speakers supplied', z.boolean(), 'no'),
    optionalColumn('alone', 'it filters the tweeter alone', z.boolean(), 'no'),
    optionalColumn('cut-out', 'tweeter cut-out', speakerSchema.shape['cut-out'], '1 3/4 in'),
    optionalColumn('pigtail', 'leads of its speakers', sizesField, '20 AWG 12 in'),
    ...boardCaseTable.columns
      .filter(({ key }) => ['where', 'off', 'diameter'].includes(key))
      .map((one) => ({ ...one, title: `crossover ${one.title}` })),
    optionalColumn('jumper', 'crossover jumper', jumperField, 'TWEETER 0 / -3 dB'),
  ],
  {
    hint: 'What the leaflet does not tell is a ?. A power left empty is that of the set. Order 2 is 12 dB per octave; left empty it counts as 1, the flattest. A capacitor in the lead of the tweeter filters the tweeter alone, and the woofer plays without a filter. The leads of its speakers are those that the maker supplies, by size and length. Holes of the crossover are told as those of a case: corners, 6 mm, 4 mm. A jumper has its positions as delivered first: TWEETER 0 / -3 dB.',
  },
);

/** The woofer of a set as its file has it. */
interface Woofer {
  readonly id: string;
  readonly title: string;
  /** Its fields: the whole set may take its power, and has its nominal load. */
  readonly fields: Named;
  readonly nominal: string;
}

/** What its tweeter and its crossover are called beside a woofer: as parts in the catalogue, and as devices in a job. */
export function namesOfSet(woofer: string): { readonly tweeter: string; readonly crossover: string } {
  return { tweeter: `${woofer}-tweeter`, crossover: `${woofer}-crossover` };
}

/** Tweeter and crossover of a set, as parts by their ids. */
export function partsOfSet(row: Row, { id, title, fields, nominal }: Woofer): Named {
  const { cells } = row;
  const jumper = cells.jumper === undefined ? null : levelJumper(String(cells.jumper));
  const { frame, mounting, corner, order, leads, alone, width, depth, height, joint, takes, strip } = cells;
  const ways = alone === true ? ['T'] : ['W', 'T'];
  const bands = { ...(alone !== true && { W: `up to ${corner}` }), T: `from ${corner}` };
  const supplied = {
    joint: 'supplied-lead',
    ...(cells.pigtail !== undefined && joinedBy('supplied-lead', String(cells.pigtail))),
  };
  const held = known({ joint, strip, ...(takes !== undefined && joinedBy(joint, String(takes))) });
  return {
    [namesOfSet(id).tweeter]: {
      kind: 'speaker',
      title: `Tweeter, in one set with ${title}`,
      ...filled('size', known({ width: frame, depth: frame, height: mounting })),
      ...known({ mass: cells['tweeter-mass'] }),
      band: 'tweeter',
      ...known({ power: cells['tweeter-power'] ?? fields.power, 'cut-out': cells['cut-out'] }),
      terminals: { C1: { role: 'coil', ...supplied } },
      coils: { C1: { nominal } },
    },
    [namesOfSet(id).crossover]: {
      kind: 'crossover',
      title: `${alone === true ? 'Filter in the lead of the tweeter' : 'Passive crossover'}, in one set with ${title}`,
      ...filled('size', known({ width, depth, height })),
      ...known({ mass: cells.mass }),
      ...holeFields(row),
      terminals: crossoverTerminals(ways, { input: held, output: leads === true ? supplied : held }),
      ...(corner !== undefined && { ways: bands }),
      ...known({ order }),
      load: nominal,
      ...known({ power: cells.power ?? fields.power }),
      ...(jumper && { controls: jumperControl(jumper) }),
    },
  };
}

/** The pairs of a passive crossover: its input, and one for each of its ways, whose names its outputs bear. */
export function crossoverTerminals(
  ways: readonly string[],
  held: { readonly input: Named; readonly output: Named },
): Named {
  return {
    IN: { role: 'coil', ...held.input },
    [ways.join(', ')]: { role: 'speaker-out', ...held.output },
  };
}

/** How a job builds in a set. */
export function setInJob(id: string): readonly string[] {
  const { tweeter, crossover } = namesOfSet(id);
  return [
    `a job builds in all three by one row: --speaker "front, ${id}, left-door right-door, , amp, left-dash-top right-dash-top" with the places of ${tweeter} at its end; ${crossover} goes where the woofer is`,
  ];
}
