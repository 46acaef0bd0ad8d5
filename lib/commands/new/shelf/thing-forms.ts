import type { KindName } from '../../../model/kinds/index.ts';
import { type FuseFormId, fuseFormIds, fuseForms } from '../../../model/tables/fuse-forms.ts';
import type { Named } from '../yaml-text.ts';

/** What stands behind the words of a thing, in this order: the field that it tells, and how it is written. */
export interface Slot {
  readonly field: string;
  readonly form: keyof typeof slotForms;
  readonly optional?: boolean;
}

/** One thing that lies on a shelf, by the words that a line begins with. */
export interface ThingForm {
  readonly words: RegExp;
  readonly kind: KindName;
  /** What its words tell already. */
  readonly fields: Named;
  readonly slots: readonly Slot[];
  /** Of a part of the catalogue whose fields of these names are the same: those that a new one has from it. */
  readonly like: readonly string[];
  readonly takes: readonly string[];
  /** True for what has more data than a line could tell: it is one that the catalogue has. */
  readonly isCatalogued?: boolean;
  /** True for what lies there by the piece though others of its kind are cut from a reel. */
  readonly isByPiece?: boolean;
  /** How a line is written. */
  readonly example: string;
}

const length = String.raw`\d[\d./ ]*\s?(?:in|mm|cm|ft|m|")`;

/** How the values of slots are written, from the beginning of what is left of a line. */
export const slotForms = {
  size: /^(\d+(?:\/0)?\s?AWG|\d+(?:\.\d+)?\s?mm2)/,
  sizes:
    /^(\d+(?:\/0)?)(?:\s?AWG)?(?:\s*-\s*|\s+to\s+)(\d+(?:\/0)?\s?AWG)|^(\d+(?:\/0)?\s?AWG|\d+(?:\.\d+)?\s?mm2)/,
  colour: /^([a-z]+(?:\s?\/\s?[a-z]+|\s+with\s+[a-z]+)?|[A-Z]{2,3}(?:\/[A-Z]{2})?)(?=\s|$)/,
  length: new RegExp(`^(${length})`),
  sides: new RegExp(`^(${length}|\\d[\\d./ ]*)\\s*[x×]\\s*(${length})`),
  thread: /^(#\d+|M\d+)(?=\s|$)/,
  current: /^(\d+(?:\.\d+)?\s?A)(?=\s|$)/,
  temperature: /^(\d+\s?C)(?=\s|$)/,
} as const;

const wireUses = ['power', 'ground', 'speaker', 'turn-on', 'signal'] as const;

const wires = [...wireUses, null].map((use): ThingForm => {
  const words = use === null ? /^wire\s+/i : new RegExp(`^${use.replace('-', '[- ]')} wire\\s+`, 'i');
  return {
    words,
    kind: 'wire',
    fields: use === null ? {} : { for: [use] },
    slots: [
      { field: 'size', form: 'size' },
      { field: 'colour', form: 'colour' },
      { field: 'insulation', form: 'temperature', optional: true },
    ],
    like: ['colour'],
    takes: use === null ? ['for'] : [],
    example: 'power wire 4 AWG red 105 C 30 ft',
  };
});

/** How a form of fuse is called on a shelf, `large bolt-in` or `bolt-in 30 mm`, as a pattern. */
function fuseWords(form: FuseFormId): string {
  const names = [
    form,
    form.replaceAll('-', ' '),
    fuseForms[form].name,
    ...(form === 'standard-blade' ? ['blade'] : []),
  ];
  const either = names.map((name) =>
    name
      .replace(/[()]/g, '\\$&')
      .replaceAll('-', '[- ]')
      .replace(/(\d)mm/, '$1 ?mm'),
  );
  return `^(?:${either.join('|')})`;
}

/** `large bolt-in fuse`, `bolt-in 30 mm fuse`, `blade fuse`. */
const fuses = fuseFormIds.map(
  (form): ThingForm => ({
    words: new RegExp(`${fuseWords(form)} fuses?\\s+`, 'i'),
    kind: 'fuse',
    fields: { form },
    slots: [{ field: 'rating', form: 'current' }],
    like: [],
    takes: [],
    example: 'large bolt-in fuse 80 A x4',
  }),
);

/** `small bolt-in holder`, `blade fuse holder`: its terminals and its measures stand in the catalogue. */
const holders = fuseFormIds.map(
  (form): ThingForm => ({
    words: new RegExp(`${fuseWords(form)}(?: fuse)? holders?\\s*`, 'i'),
    kind: 'fuse-holder',
    fields: { 'fuse-form': form },
    slots: [{ field: 'current', form: 'current', optional: true }],
    like: [],
    takes: [],
    isCatalogued: true,
    example: 'blade fuse holder x2',
  }),
);

function terminal(words: RegExp, form: string, example: string, isOnStud = false): ThingForm {
  return {
    words,
    kind: 'terminal',
    fields: { form },
    slots: [
      { field: 'takes', form: 'sizes' },
      ...(isOnStud ? [{ field: 'stud', form: 'thread' } as const] : []),
    ],
    like: ['form', 'takes'],
    takes: ['strip', 'die'],
    example,
  };
}

/** The width of its tab stands before its sizes or behind them. */
function receptacle(words: RegExp, example: string): ThingForm {
  const { slots, ...form } = terminal(words, 'blade-receptacle', example);
  const tab = { field: 'tab', form: 'length', optional: true } as const;
  return { ...form, slots: [tab, ...slots, tab] };
}

function fixing(words: RegExp, form: string, example: string, slots: ThingForm['slots']): ThingForm {
  const takes = ['pilot', 'clearance', 'torque', 'bears-on'];
  return { words, kind: 'fixing', fields: { form }, slots, like: ['form', 'thread'], takes, example };
}

const threadLength = [
  { field: 'thread', form: 'thread' },
  { field: 'length', form: 'length' },
] as const;
const threadAlone = [{ field: 'thread', form: 'thread' }] as const;

function covering(words: RegExp, form: string, example: string): ThingForm {
  return {
    words,
    kind: 'covering',
    fields: { form },
    slots: [{ field: 'bore', form: 'length' }],
    like: ['form'],
    takes: [],
    example,
  };
}

function sheet(words: RegExp, material: string, example: string): ThingForm {
  return {
    words,
    kind: 'board-sheet',
    fields: { material },
    slots: [
      { field: 'thickness', form: 'length' },
      { field: 'sides', form: 'sides', optional: true },
    ],
    like: ['material'],
    takes: [
      'density',
      'modulus',
      'modulus-across',
      'shear-modulus',
      'long-term-modulus',
      'grain',
      'withstands',
    ],
    example,
  };
}

/** Every thing that a line may tell. Of two whose words fit, the first is meant. */
export const thingForms: readonly ThingForm[] = [
  ...wires,
  ...holders,
  ...fuses,
  {
    words: /^(?:phono|line) leads?\s+/i,
    kind: 'cable',
    fields: { form: 'coaxial', plugs: 'phono' },
    slots: [{ field: 'made-length', form: 'length' }],
    like: ['form', 'plugs'],
    takes: ['conductors', 'insulation', 'for', 'outside-diameter'],
    isByPiece: true,
    example: 'phono lead 17 ft x4',
  },
  {
    words: /^twisted[- ]pair\s+/i,
    kind: 'cable',
    fields: { form: 'twisted-pair', for: ['signal'] },
    slots: [
      { field: 'signal-pair', form: 'size' },
      { field: 'insulation', form: 'temperature', optional: true },
    ],
    like: ['form'],
    takes: ['insulation'],
    example: 'twisted pair 20 AWG 50 ft',
  },
  {
    words: /^speaker pair\s+/i,
    kind: 'cable',
    fields: { form: 'multi-conductor', for: ['speaker'] },
    slots: [
      { field: 'pair', form: 'size' },
      { field: 'insulation', form: 'temperature', optional: true },
    ],
    like: [],
    takes: [],
    example: 'speaker pair 16 AWG 80 C 200 ft',
  },
  terminal(/^ring lugs?\s+/i, 'ring-lug', 'ring lug 4 AWG M8 x10', true),
  terminal(/^twin ferrules?\s+/i, 'twin-ferrule', 'twin ferrule 12 AWG x20'),
  terminal(/^ferrules?\s+/i, 'ferrule', 'ferrule 25 mm2 x20'),
  receptacle(/^(?:blade )?receptacles?\s+/i, 'receptacle 6.3 mm 16-14 AWG x50'),
  terminal(/^butt splices?\s+/i, 'butt-splice', 'butt splice 16-14 AWG x50'),
  terminal(/^solder sleeves?\s+/i, 'solder-sleeve', 'solder sleeve 20-16 AWG x50'),
  fixing(/^wood screws?\s+/i, 'wood-screw', 'wood screw #8 5/8 in x100', threadLength),
  fixing(/^machine screws?\s+/i, 'machine-screw', 'machine screw #10 1 in x50', threadLength),
  fixing(/^bolts?\s+/i, 'bolt', 'bolt M6 30 mm x20', threadLength),
  fixing(/^spacers?\s+/i, 'spacer', 'spacer M6 10 mm x12', threadLength),
  fixing(/^rubber bush(?:es)?\s+/i, 'rubber-bush', 'rubber bush M6 10 mm x12', threadLength),
  fixing(/^rivet nuts?\s+/i, 'rivet-nut', 'rivet nut M6 x20', threadAlone),
  fixing(/^nuts?\s+/i, 'nut', 'nut M8 x20', threadAlone),
  ...[true, false].map((serrated) => {
    const words = serrated ? /^serrated washers?\s+/i : /^washers?\s+/i;
    const of = fixing(words, 'washer', `${serrated ? 'serrated ' : ''}washer M6 x50`, threadAlone);
    // Teeth are told by the word alone: a plain washer is never taken for one that bites.
    return { ...of, fields: { ...of.fields, serrated }, like: [...of.like, 'serrated'] };
  }),
  fixing(/^straps?\s+/i, 'strap', 'strap 1.5 m x10', [{ field: 'length', form: 'length' }]),
  fixing(/^ties?\s+/i, 'tie', 'tie 200 mm x100', [{ field: 'length', form: 'length' }]),
  covering(/^(?:split )?loom\s+/i, 'loom', 'split loom 13 mm 50 ft'),
  covering(/^braided sleeve\s+/i, 'braided-sleeve', 'braided sleeve 10 mm 20 ft'),
  covering(/^heat-?\s?shrink\s+/i, 'heat-shrink', 'heat-shrink 12 mm 20 ft'),
  {
    words: /^grommets?\s+/i,
    kind: 'grommet',
    fields: {},
    slots: [
      { field: 'bore', form: 'length' },
      { field: 'hole', form: 'length', optional: true },
    ],
    like: [],
    takes: [],
    example: 'grommet 14 mm 20 mm x10',
  },
  sheet(/^birch plywood\s+/i, 'birch-plywood', 'birch plywood 15 mm 24 x 48 in x1'),
  sheet(/^fibreboard\s+/i, 'fibreboard', 'fibreboard 3/4 in 49 x 97 in x1'),
  sheet(/^polyethylene\s+/i, 'polyethylene', 'polyethylene 1/2 in 48 x 96 in x1'),
  sheet(/^expanded pvc\s+/i, 'expanded-pvc', 'expanded PVC 10 mm 1220 x 2440 mm x1'),
  sheet(/^abs\s+/i, 'abs', 'ABS 6 mm 1220 x 2440 mm x1'),
  sheet(/^aluminium\s+/i, 'aluminium', 'aluminium 3 mm 1250 x 2500 mm x1'),
];
