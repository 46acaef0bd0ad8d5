import type { ControlSpec } from '../kinds/fields/control-spec.ts';

/** What goes without saying of a control, by what it does; common practice, no source. */
interface ControlDefault {
  readonly form?: ControlSpec['form'];
  readonly positions?: readonly string[];
  /** A stop of its kind: `lowest`, all the way back; `wired`, the one position in which the device waits for its wire. */
  readonly safe?: 'lowest' | 'level' | 'first' | 'wired' | 'high-pass' | 'subsonic';
  readonly why?: string;
}

/** By what a control does. No corner is among them: which one is safe depends on the speaker. */
export const controlDefaults: Readonly<Record<ControlSpec['what'], ControlDefault>> = {
  gain: { form: 'knob', safe: 'lowest', why: 'no signal passes until the gain is set with a meter' },
  level: {
    form: 'menu',
    safe: 'level',
    why: 'gains are set with every output alike',
  },
  boost: {
    form: 'knob',
    safe: 'lowest',
    why: 'boost adds to the gain and is the first thing to overdrive a woofer',
  },
  'crossover-mode': {
    form: 'switch',
    safe: 'high-pass',
    why: 'a high-pass holds bass from small cones until the filters before it are proved',
  },
  crossover: { form: 'knob' },
  subsonic: { form: 'knob', safe: 'subsonic', why: 'cone travel below the enclosure is wasted' },
  phase: {
    form: 'switch',
    positions: ['0', '180'],
    safe: 'first',
    why: 'polarity is checked before it is changed',
  },
  'turn-on-mode': { form: 'switch', safe: 'wired', why: 'a wired turn-on comes up every time' },
  'input-mode': { form: 'switch' },
  'ground-mode': { form: 'switch' },
  other: {},
};

/** Of a crossover, by what it passes; a knob that only moves the corner of a switch is taken for a high-pass. */
const whyCorner: Readonly<Partial<Record<string, string>>> = {
  'high-pass': 'a first high-pass for a door speaker',
  'low-pass': 'above the highest note a bass channel should play',
};

/** Of a switch whose safe position is written, and is not the one that its kind would take. */
const whyWritten = 'the position that its part names for first power-up';

/** What a control says of itself, as far as its defaults go by it. */
export interface WrittenControl {
  readonly what: ControlSpec['what'];
  readonly form?: string | undefined;
  readonly positions?: readonly string[] | undefined;
  readonly safe?: string | undefined;
  readonly automatic?: readonly string[] | undefined;
  /** What its filter passes: always, or by position. */
  readonly pass?: string | undefined;
  readonly passes?: Readonly<Record<string, string>> | undefined;
}

/** The fields of a control that may be left out, as they hold then; one that depends on more is not among them. */
export interface ControlFill {
  readonly form?: string;
  readonly positions?: readonly string[];
  readonly safe?: string;
  readonly why?: string;
}

/** What holds of a control where its file does not say it. */
export function controlFill(written: WrittenControl): ControlFill {
  const fill = controlDefaults[written.what];
  const form = written.form ?? fill.form;
  const positions = written.positions ?? fill.positions;
  const safe = safeState(fill.safe, { ...written, form, positions });
  const why = whyOf(written, fill.why);
  return {
    ...(form !== undefined && { form }),
    ...(positions && { positions }),
    ...(safe !== undefined && { safe }),
    ...(why !== undefined && { why }),
  };
}

/** The reason for a safe state: where one is written that is no high-pass, none of what a high-pass does. */
function whyOf({ what, pass, safe, passes = {} }: WrittenControl, usual: string | undefined) {
  if (what === 'crossover') return whyCorner[pass ?? 'high-pass'];
  if (what === 'crossover-mode' && safe !== undefined && passes[safe] !== 'high-pass') return whyWritten;
  return usual;
}

function safeState(rule: ControlDefault['safe'], control: WrittenControl): string | undefined {
  const { form, positions = [], automatic = [], passes = {} } = control;
  switch (rule) {
    case 'lowest':
      return form === 'knob' ? 'fully counter-clockwise' : form === 'switch' ? undefined : 'lowest';
    case 'level':
      return form === 'menu' ? '0 dB' : undefined;
    case 'first':
      return positions[0];
    case 'wired':
      return only(positions.filter((position) => !automatic.includes(position)));
    case 'high-pass':
    case 'subsonic':
      return only(positions.filter((position) => passes[position] === rule));
    default:
      return undefined;
  }
}

/** The one that there is; none where there are several to choose from. */
function only(names: readonly string[]): string | undefined {
  return names.length === 1 ? names[0] : undefined;
}
