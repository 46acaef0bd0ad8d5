import { type CleanVoltage, cleanVoltage } from '../../audio/clean-voltage.ts';
import { inputMatch } from '../../audio/input-sensitivity.ts';
import { passedVoltage } from '../../audio/passed-voltage.ts';
import { mergeOutputFacts, type OutputFacts } from '../../model/content/output-facts.ts';
import { type Device, type Job, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { RatedPowers } from '../../model/kinds/fields/powers.ts';
import type { PlanInput, PlanOutput } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { Traced } from '../../model/trace.ts';
import type { OutputFact, TerminalRole } from '../../model/vocabulary.ts';
import type { PlanBook } from '../plan-book.ts';
import { type DevicesById, terminalRole } from '../wiring/conductor-role.ts';
import { passedInputs } from './passed-on.ts';
import { feedOf } from './signal-feed.ts';

const outputRoles: readonly TerminalRole[] = ['signal-out', 'speaker-out-positive'];
const inputRoles: readonly TerminalRole[] = ['signal-in', 'speaker-in-positive'];

/** Every input on the way of the signal, with what arrives there and whether the input suits it. */
export function planInputs(job: Job, devices: DevicesById, book: PlanBook): PlanInput[] {
  return job.links.flatMap((link): PlanInput[] => {
    const ends = [link.from, link.to];
    const output = ends.find((end) => outputRoles.includes(terminalRole(devices, end)));
    const input = ends.find((end) => inputRoles.includes(terminalRole(devices, end)));
    if (!output || !input) return [];
    const spec = devices.get(input.device)?.facts.terminals[input.terminal];
    const range = spec?.['signal-range'];
    const id = terminalId(input);
    const { sourceV, rated, passed } = arriving(job, devices, output);
    const reckoned = passed ?? rated?.voltageV;
    const known = {
      sourceV: reckoned ? book.trace(`audio.inputs.${id}.sourceV`, reckoned) : sourceV,
      leastV: range?.from ?? null,
      greatestV: range?.to ?? null,
    };
    const level = terminalRole(devices, output) === 'signal-out' ? 'low' : 'high';
    const sourceRated = rated && { powerW: rated.powerW, loadOhm: rated.loadOhm };
    return [
      {
        ...{ input: id, output: terminalId(output), wire: link.id, level, ...known },
        ...(sourceRated && { sourceRated }),
        ...matched(id, known, book),
      },
    ];
  });
}

function matched(
  id: string,
  { sourceV, leastV, greatestV }: Pick<PlanInput, 'sourceV' | 'leastV' | 'greatestV'>,
  book: PlanBook,
): Pick<PlanInput, 'headroomDb' | 'reserveDb' | 'verdict'> {
  const unknown = { headroomDb: null, reserveDb: null, verdict: 'unknown' } as const;
  if (sourceV === null || greatestV === null) return unknown;
  const match = inputMatch({ input: id, sourceV, leastV, greatestV });
  if (isFault(match)) return unknown;
  const at = `audio.inputs.${id}`;
  return {
    headroomDb: book.trace(`${at}.headroomDb`, match.headroomDb),
    reserveDb: match.reserveDb && book.trace(`${at}.reserveDb`, match.reserveDb),
    verdict: match.verdict,
  };
}

interface Arriving {
  readonly sourceV: number | null;
  /** What it was reckoned from, where nobody measured or stated it. */
  readonly rated: CleanVoltage | null;
  /** The share of an input that it is, at a line output of an amplifier. */
  readonly passed?: Traced<number>;
}

const unknownLevel: Arriving = { sourceV: null, rated: null };

/**
 * Greatest clean voltage of an output: as measured in the vehicle, else by its part, else by its rated power. What a line
 * output of an amplifier gives follows from what arrives at the amplifier: the most that it can give is no level.
 */
function arriving(job: Job, devices: DevicesById, end: LinkEnd, through: readonly string[] = []): Arriving {
  const device = devices.get(end.device);
  if (!device || through.includes(device.id)) return unknownLevel;
  if (device.spec?.kind === 'amplifier' && terminalRole(devices, end) === 'signal-out')
    return passedOn(job, devices, device, end.terminal, [...through, device.id]);
  const facts = factsOfOutput(job, device, stemName(end.terminal));
  const told = facts['clean-voltage'] ?? device.facts.terminals[end.terminal]?.signal;
  if (told !== undefined) return { sourceV: told, rated: null };
  const powers = facts.powers ?? channelPowers(device, end.terminal);
  const rated = cleanVoltage(powers.map(({ power, load }) => ({ powerW: power, loadOhm: load })));
  return { sourceV: rated?.voltageV.value ?? null, rated };
}

/** Of the one linked input that a line output passes on ahead of the gain; of several, or behind the gain, nobody can say. */
function passedOn(
  job: Job,
  devices: DevicesById,
  device: Device,
  output: string,
  through: readonly string[],
): Arriving {
  const passed = passedInputs(job, device, output);
  const [only, other] = passed?.tap === 'inputs' ? passed.inputs : [];
  const feeding = only && !other ? feedOf(job, only.end) : null;
  if (!only || !feeding) return unknownLevel;
  const arrivingV = arriving(job, devices, feeding, through);
  const inV = arrivingV.passed?.value ?? arrivingV.sourceV;
  if (inV === null) return unknownLevel;
  const mostV = device.facts.terminals[output]?.signal ?? null;
  const voltageV = passedVoltage({ arrivingV: inV, share: only.share, mostV });
  return { sourceV: voltageV.value, rated: null, passed: voltageV };
}

/** The rated powers of the channel of an amplifier that ends at a terminal. */
function channelPowers({ spec }: Device, terminal: string): RatedPowers {
  if (spec?.kind !== 'amplifier') return [];
  return Object.values(spec.channels).find(({ positive }) => positive === terminal)?.powers ?? [];
}

/** What is known of an output of a source: as found in the vehicle, else as its part says. */
export function factsOfOutput(job: Job, device: Device, name: string): OutputFacts {
  const { spec, origin, id } = device;
  return mergeOutputFacts(
    spec?.kind === 'source-unit' ? spec.outputs[name] : undefined,
    origin === 'vehicle' ? job.vehicle.fitted[id]?.outputs[name] : undefined,
  );
}

/** The outputs of every source that came with the vehicle and feeds the job, and what is not known of them. */
export function planOutputs(job: Job, devices: DevicesById): PlanOutput[] {
  return job.devices
    .filter(({ origin, spec }) => origin === 'vehicle' && spec?.kind === 'source-unit')
    .flatMap((device) => {
      const names = Object.keys(device.facts.terminals).filter((terminal) =>
        outputRoles.includes(terminalRole(devices, { device: device.id, terminal }) ?? null),
      );
      return names.map((terminal) => planOutput(job, devices, device, terminal));
    });
}

function planOutput(job: Job, devices: DevicesById, device: Device, terminal: string): PlanOutput {
  const name = stemName(terminal);
  const facts = factsOfOutput(job, device, name);
  const end = terminalId({ device: device.id, terminal });
  const feeds = job.links.flatMap(({ from, to }) => {
    if (terminalId(from) !== end && terminalId(to) !== end) return [];
    const other = terminalId(from) === end ? to : from;
    return devices.get(other.device)?.origin === 'job' ? [terminalId(other)] : [];
  });
  const known = {
    form: facts.form ?? null,
    fromHz: facts.bandwidth?.from ?? null,
    toHz: facts.bandwidth?.to ?? null,
    polarity: facts.polarity ?? null,
    cleanVoltageV: facts['clean-voltage'] ?? null,
    offsetV: facts.offset ?? null,
    equalising: facts.equalising ?? null,
    loadSensing: facts['load-sensing'] ?? null,
    noiseCancelling: facts['noise-cancelling'] ?? null,
    chimes: facts.chimes ?? null,
  };
  const missing =
    feeds.length === 0 ? [] : asked.filter(([, isKnown]) => !isKnown(known)).map(([what]) => what);
  return { id: `${device.id}.${name}`, item: device.id, feeds, ...known, missing };
}

type Known = Omit<PlanOutput, 'id' | 'item' | 'feeds' | 'missing'>;

/** What must be known of an output before the plan stands; its form shows at the plug. */
const asked: readonly (readonly [OutputFact, (known: Known) => boolean])[] = [
  ['bandwidth', ({ fromHz, toHz }) => fromHz !== null && toHz !== null],
  ['polarity', ({ polarity }) => polarity !== null],
  ['greatest clean voltage', ({ cleanVoltageV }) => cleanVoltageV !== null],
  ['direct-current offset', ({ offsetV }) => offsetV !== null],
  ['equalising that moves with the level', ({ equalising }) => equalising !== null],
  ['load sensing', ({ loadSensing }) => loadSensing !== null],
  ['noise cancelling', ({ noiseCancelling }) => noiseCancelling !== null],
  ['chimes', ({ chimes }) => chimes !== null],
];
