import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { listed } from '../../model/printed/listed.ts';
import type { TurnOnState } from './turn-on-state.ts';

/** What a switch for inputs lets through of what is linked. */
export interface HeardInputs {
  /** The inputs that are linked, by terminal or pair. */
  readonly linked: readonly string[];
  /** Of each position whose inputs are known: those of the linked ones that it lets through. */
  readonly heard: ReadonlyMap<string, readonly string[]>;
  /** The positions that let all of them through. */
  readonly whole: readonly string[];
}

type Level = 'line' | 'speaker';

/** Words on switches for the level of inputs; common practice, no source. */
const levelWords: Readonly<Record<string, Level>> = {
  LINE: 'line',
  LOW: 'line',
  LO: 'line',
  RCA: 'line',
  PHONO: 'line',
  HIGH: 'speaker',
  HI: 'speaker',
  SPEAKER: 'speaker',
  SPKR: 'speaker',
  SPK: 'speaker',
};

/** What a switch for inputs lets through in each position; null for another control, or where nothing tells it or is linked. */
export function heardInputs(
  { links }: Pick<Job, 'links'>,
  device: Device,
  spec: ControlSpec,
): HeardInputs | null {
  if (spec.what !== 'input-mode') return null;
  const inputs = inputsOf(device);
  const positions = spec.hears ?? positionsByName(spec.positions ?? [], inputs, device);
  const isLinked = (terminal: string) =>
    links.some(({ from, to }) =>
      [from, to].some((end) => terminalId(end) === terminalId({ device: device.id, terminal })),
    );
  const linked = inputs.filter(({ terminal }) => isLinked(terminal)).map(({ name }) => name);
  if (!positions || linked.length === 0) return null;
  const heard = new Map(
    Object.entries(positions).map(([position, names]) => [
      position,
      linked.filter((name) => names.includes(name)),
    ]),
  );
  const whole = [...heard].filter(([, names]) => names.length === linked.length).map(([name]) => name);
  return { linked, heard, whole };
}

interface Input {
  readonly terminal: string;
  readonly name: string;
  readonly level: Level;
}

function inputsOf({ facts }: Device): readonly Input[] {
  return Object.entries(facts.terminals).flatMap(([terminal, { role }]): Input[] => {
    if (role === 'signal-in') return [{ terminal, name: terminal, level: 'line' }];
    return role === 'speaker-in-positive' ? [{ terminal, name: stemName(terminal), level: 'speaker' }] : [];
  });
}

/**
 * The inputs of each position by the words on the switch, where the part takes line and speaker level and each word tells
 * one of them; null where one tells nothing, and of a part that takes one level alone: there HIGH may be a sensitivity.
 */
function positionsByName(
  positions: readonly string[],
  inputs: readonly Input[],
  { facts }: Device,
): Readonly<Record<string, readonly string[]>> | null {
  const levels = positions.map((position) => levelOf(position));
  const takesBoth =
    inputs.some(({ level }) => level === 'speaker') ||
    Object.values(facts.terminals).some((terminal) => terminal['speaker-level'] !== undefined);
  if (!takesBoth || levels.includes(null) || new Set(levels).size < 2) return null;
  return Object.fromEntries(
    positions.map((position, at) => [
      position,
      inputs.filter(({ level }) => level === levels[at]).map(({ name }) => name),
    ]),
  );
}

/** The level that the words of a position tell, `HIGH LEVEL` and `LINE`; null where they tell none, or both. */
function levelOf(position: string): Level | null {
  const told = new Set(
    position
      .toUpperCase()
      .split(/[^A-Z]+/)
      .flatMap((word) => levelWords[word] ?? []),
  );
  const [only, other] = told;
  return only !== undefined && other === undefined ? only : null;
}

/** How a switch for inputs stands by what is linked; null where no position, or more than one, lets all of it through. */
export function inputState(job: Pick<Job, 'links'>, device: Device, spec: ControlSpec): TurnOnState | null {
  const heard = heardInputs(job, device, spec);
  const [state, other] = heard?.whole ?? [];
  if (!heard || state === undefined || other !== undefined) return null;
  return {
    state,
    why: `${listed(heard.linked)} ${heard.linked.length === 1 ? 'is' : 'are'} linked: in another position ${heard.linked.length === 1 ? 'it is' : 'they are'} not heard`,
  };
}
