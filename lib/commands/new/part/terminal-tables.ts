import { z } from 'zod';
import { extent, faultBy, faultless, quantity, text } from '../../../model/fields.ts';
import { edgeLengths } from '../../../model/kinds/fields/bounds.ts';
import { controlSpecSchema } from '../../../model/kinds/fields/control-spec.ts';
import { equipmentBase } from '../../../model/kinds/fields/equipment.ts';
import { terminalSpecSchema } from '../../../model/kinds/fields/terminal-spec.ts';
import { type AskedTable, column, optionalColumn } from '../../../model/survey/asked-table.ts';
import { terminalRoleSchema } from '../../../model/vocabulary.ts';
import { diameterField, fromEdgesField } from './hole-fields.ts';
import { leaflet, sizesField, takesField } from './part-columns.ts';

const spec = terminalSpecSchema.shape;
const control = controlSpecSchema.shape;

/** Roles of a pair of terminals that a row of names tells at once: CH1 is CH1+ and CH1-, B+ and GND are the supply. */
const pairRoles = ['supply', 'speaker-out', 'speaker-in', 'coil'] as const;

/** True for a role that each name has for two terminals. */
export function isPair(role: string): boolean {
  return role === 'speaker-out' || role === 'speaker-in' || role === 'coil';
}

/** What the distance from each terminal of a row to the next is called. */
export const pitchTitle = 'from one to the next';

/** Terminals in rows. */
export const terminalTable: AskedTable = leaflet(
  'terminal',
  'Its terminals, row by row',
  [
    column('names', 'names', text('B+ GND'), 'CH1..4'),
    column('role', 'role', z.enum([...pairRoles, ...terminalRoleSchema.options]), 'speaker-out'),
    optionalColumn('panel', 'panel', spec.panel, 'right'),
    optionalColumn('at', 'first place', spec.at, '2 5/8 in'),
    optionalColumn('pitch', pitchTitle, extent, '3/8 in'),
    optionalColumn('joint', 'joint', spec.joint, 'set-screw'),
    optionalColumn('takes', 'takes', takesField, '18 AWG to 10 AWG'),
    optionalColumn('torque', 'torque', spec.torque, '1.2 N m'),
    optionalColumn('strip', 'strip', spec.strip, '3/8 in'),
  ],
  {
    rows: 12,
    hint:
      'CH1..4 are CH1 to CH4, IN4..1 the same where the last lies first; of a pair such as speaker-out each is CH1+ and CH1-, ' +
      'one behind the other at the same pitch. Of a supply: B+ GND. Conductors: 18 AWG to 10 AWG, up to 10 AWG, or 4 AWG alone; of a supplied-lead its own size and length, 18 AWG 24 in, and behind it of an input its voltage, 18 AWG 24 in up to 12 V. ' +
      'Inputs of signal take a voltage, 0.25 V to 6 V or up to 6 V; outputs give one, 4 V, or a power into a load, 18 W at 4 ohm; a turn-on output gives a current, 0.5 A, also behind its conductors, 22 AWG to 16 AWG 0.2 A. Places are ' +
      'counted from the left end of a top or bottom panel, from the lower end of a left or right one. A socket for several wires is a ' +
      'row at the distance of its pins: SP1..4, speaker-in, left, 3 in, 3 mm, plug, up to 12 V.',
  },
);

/** Knobs and switches. */
export const controlTable: AskedTable = leaflet(
  'control',
  'Its knobs and switches',
  [
    column('name', 'name', text('GAIN-12'), 'GAIN-12'),
    column('what', 'what it sets', control.what, 'gain'),
    column('panel', 'panel', control.panel, 'left'),
    optionalColumn('at', 'place', control.at, '2 7/8 in'),
    optionalColumn('channels', 'channels', text('1..2'), '1..2'),
    optionalColumn('sets', 'from what to what', text('50 Hz to 500 Hz'), ''),
    optionalColumn('slope', 'slope', text('butterworth 12 dB'), ''),
    optionalColumn('safe', 'safe', control.safe, ''),
    optionalColumn('why', 'why that is safe', control.why, ''),
  ],
  {
    rows: 10,
    seldom: 'it has none',
    hint:
      'What it sets it to: of a knob both ends, 50 Hz to 500 Hz, with low-pass before them where it has a filter of its own, and ' +
      'OFF before or behind both where its turn ends in one, low-pass 40 Hz to 160 Hz OFF; of ' +
      'a switch its positions, FULL HPF=high-pass LPF=low-pass; OFF ON=subsonic 25 Hz where its corner never moves; of an input-mode which inputs each position hears, A=IN1/IN2 B=HIGH1/HIGH2, where its words do not tell that as LINE HIGH do; of a gain the ' +
      'voltage of its inputs, 6 V to 0.2 V; of a boost where it raises and how far, 45 Hz 0 dB to 12 dB; of a level -12 dB to 0 dB, as a switch 0 / -3 dB; of another one, whose ends tell nothing, knob or menu alone. Slope: butterworth 12 dB. Safe is its state before first ' +
      'power-up; gains and switches have one of their kind, a corner needs one, and so does an input-mode with why it is safe.',
  },
);

/** The two posts of a source, or of a holder. */
export function postsTable(names: string): AskedTable {
  return leaflet('posts', 'Its two terminals', [
    column('names', 'names', text(names), names),
    column('joint', 'joint', spec.joint, 'stud'),
    optionalColumn('stud', 'stud', spec.stud, 'M8'),
    optionalColumn('takes', 'takes', sizesField, '8 AWG to 1/0 AWG'),
    optionalColumn('torque', 'torque', spec.torque, '10 N m'),
    optionalColumn('conductors', 'conductors in each', spec.conductors, '2'),
  ]);
}

const airExamples = { left: '', right: '1 in', top: 'fins', bottom: 'fins 1 in', over: '1 1/2 in' } as const;

const size = equipmentBase.size.shape;

/** What every part that is mounted tells of its case. */
export const caseTable: AskedTable = leaflet(
  'case',
  'Its case: width and depth on the board, height off it',
  [
    column('width', 'width', size.width, '10 in'),
    column('depth', 'depth', size.depth, '6 1/2 in'),
    column('height', 'height', size.height, '2 1/8 in'),
    column('mass', 'mass', equipmentBase.mass, '3.2 kg'),
  ],
);

/** The same of a part that a vehicle comes with. */
export const fittedCaseTable: AskedTable = {
  ...caseTable,
  hint: 'Left empty where the part stays where a vehicle has it: a job that builds it in needs it.',
  columns: caseTable.columns.map((one) => ({ ...one, optional: true })),
};

const airRoom = edgeLengths.shape.left.unwrap();

/** What an edge carries and asks for: fins, fan, the air of its maker, or both, `fins 1 in`. */
const edgeAir = z.string().check(
  faultless((written) => {
    const [, by, air] = edgeAirOf(written);
    if (by === undefined && air === undefined) return 'is neither fins, fan nor a length: write fins 1 in';
    return air === undefined ? null : faultBy(airRoom, air);
  }),
);

/** Fins or a fan, and the length behind them. */
export function edgeAirOf(written: string): readonly (string | undefined)[] {
  return /^(?:(fins|fan)\b)?\s*(\S.*)?$/.exec(written.trim()) ?? [];
}

/** Where holes lie; another place of a hole is written into the file. */
const holePlace = z.enum(['corners', 'left-right', 'top-bottom'], {
  error:
    'tells no place of holes: write corners for holes inside its case, by insets or by centres 100 x 50 mm, and left-right or top-bottom for those of a bracket outside; a hole elsewhere inside goes into the file: mounting-holes: [{ x: 30 mm, y: 20 mm, diameter: 5 mm }]',
});

/** The case of a part that stands on a board, and the holes in its corners or of a bracket. */
export const boardCaseTable: AskedTable = {
  ...caseTable,
  asks: `${caseTable.asks}; and the holes for its screws, in its four corners or of a bracket beside two of its edges`,
  hint:
    'Holes in its corners lie so far inside its edges: corners, 3/8 in, 5 mm. Where the ends differ, from the long edges first: ' +
    'corners, 0.5 in, 5 mm, 0.3 in; or by how far they lie apart, along its width first: corners, centres 14.8 x 6.9 in, 5 mm. ' +
    'Slots count as holes: slot 5 mm. Of a bracket they lie so far outside, one at the middle of each edge, or two. A part ' +
    'that is held by a strap has none: the job says held: strap.',
  columns: [
    ...caseTable.columns,
    optionalColumn('where', 'holes', holePlace, 'corners'),
    optionalColumn('off', 'from the edges', fromEdgesField, '3/8 in'),
    optionalColumn('diameter', 'diameter', diameterField, '3/16 in'),
    optionalColumn('ends', 'from the ends, where that differs', quantity('length'), ''),
    optionalColumn('foot', 'thickness of the foot', equipmentBase.foot.unwrap(), ''),
  ],
};

/** What cools it, and the air that its maker asks for. */
export const coolingTable: AskedTable = leaflet(
  'cooling',
  'Edges that carry fins or a fan, and the air that its maker asks for there and over it',
  (['left', 'right', 'top', 'bottom', 'over'] as const).map((edge) =>
    optionalColumn(edge, edge, edge === 'over' ? airRoom : edgeAir, airExamples[edge]),
  ),
  {
    seldom: 'none, and the room that the house rules keep',
    hint: 'fins, fan, or the length of the air; both where the maker tells both: fins 1 in.',
  },
);
