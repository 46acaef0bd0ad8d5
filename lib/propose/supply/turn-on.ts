import { turnOnDrawOf } from '../../model/kinds/fields/turn-on-draw.ts';
import { amps, ampsDrawn } from '../../model/printed/told.ts';
import { onShelf } from '../draft/around.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, terminalAt, terminalsWith } from '../draft/draft-device.ts';
import type { SignalChain } from '../sound/signal-chain.ts';
import {
  askForTurnOn,
  leaveToThemselves,
  outputWithin,
  type TurnOnOutput,
  type Waiting,
} from './turn-on-without-source.ts';

/** The contact of a proposed relay, which the supply must feed. */
export interface SwitchedContact {
  readonly relay: string;
  readonly terminal: string;
  /** What the turn-on inputs behind it draw (A). */
  readonly currentA: number;
}

/**
 * Links what turns on what: the source unit, then the processor, then the amplifiers that play from it; fans with what
 * the source unit turns on. Without an output of the source what turns itself on does so, and what is left hangs on an
 * output of an amplifier. More wires than the output takes ask for a strip, more current than it gives for a relay with
 * a diode. Gives the contacts to feed.
 */
export function linkTurnOn(draft: Draft, chain: SignalChain): readonly SwitchedContact[] {
  const contacts: SwitchedContact[] = [];
  const switched = (outputs: TurnOnOutput | null, waiting: readonly Waiting[]) => {
    if (outputs) {
      if (waiting.length > 0) contacts.push(...linkFrom(draft, outputs, waiting));
      return;
    }
    const left = leaveToThemselves(draft, waiting);
    const [first] = left;
    if (!first) return;
    const other = outputWithin(draft, left);
    if (other) contacts.push(...linkFrom(draft, other, left));
    else askForTurnOn(draft, chain, first);
  };
  const sourceOut = chain.source && outputOf(chain.source);
  const direct: Waiting[] = chain.processors.flatMap((one) => waitingOf(draft, one));
  for (const amplifier of chain.amplifiers) {
    const before = chain.processorOf.get(amplifier.id);
    if (!before || !outputOf(before)) direct.push(...waitingOf(draft, amplifier));
  }
  direct.push(...draft.own.filter(({ spec }) => spec.kind === 'fan').flatMap((one) => waitingOf(draft, one)));
  switched(sourceOut, direct);
  for (const processor of chain.processors) {
    const behind = chain.amplifiers.filter(({ id }) => chain.processorOf.get(id) === processor);
    if (outputOf(processor))
      switched(
        outputOf(processor),
        behind.flatMap((one) => waitingOf(draft, one)),
      );
  }
  return contacts;
}

function outputOf(device: DraftDevice): TurnOnOutput | null {
  const [terminal] = terminalsWith(device, 'turn-on-out');
  return terminal === undefined ? null : { device, terminal };
}

function waitingOf(draft: Draft, device: DraftDevice): readonly Waiting[] {
  if (device.origin === 'vehicle') return [];
  return terminalsWith(device, 'turn-on-in')
    .filter((terminal) => draft.isFree(device.id, terminal) && !draft.isLeftOpen(device.id, terminal))
    .map((terminal) => ({ device, terminal }));
}

function linkFrom(
  draft: Draft,
  output: TurnOnOutput,
  waiting: readonly Waiting[],
): readonly SwitchedContact[] {
  const spec = terminalAt(output.device, output.terminal);
  const already = draft.linksAt(output.device.id, output.terminal).length;
  const drawA = ({ device }: Waiting) => turnOnDrawOf(device.spec, draft.around.rules)?.currentA ?? 0;
  const sumA = Number(waiting.reduce((sum, one) => sum + drawA(one), 0).toPrecision(12));
  const limitA = spec?.current;
  const ports = (spec?.conductors ?? 1) - already;
  const from = `${output.device.id}.${output.terminal}`;
  if (limitA !== undefined && sumA > limitA && already === 0) {
    const reason = `the turn-on inputs draw ${ampsDrawn(sumA)}, and ${from} gives ${amps(limitA)}`;
    return throughRelay(draft, output, waiting, sumA, reason);
  }
  const strip = stripBehind(draft, output);
  if (waiting.length <= ports) linkEach(draft, from, waiting);
  else if (strip && freeWays(draft, strip).length >= waiting.length) linkWays(draft, strip, waiting);
  else
    throughStrip(
      draft,
      from,
      waiting,
      `${from} takes ${Math.max(0, ports)} conductors, and ${waiting.length} are asked for`,
    );
  return [];
}

const inTurn: Why = {
  rule: 'turn-on',
  reason: 'the source unit first, then the processor, then the amplifiers',
  cp: true,
};

function linkEach(draft: Draft, from: string, waiting: readonly Waiting[]): void {
  for (const { device, terminal } of waiting) linkOne(draft, from, device, terminal);
}

function linkOne(draft: Draft, from: string, device: DraftDevice, terminal: string): void {
  const id = draft.freeName(`turn-on-${device.id}`, terminal.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-'));
  draft.addLink(id, { from, to: `${device.id}.${terminal}` }, inTurn, device.id);
}

/** A strip on the board of the first device that waits: the smallest of the catalogue with ways enough. */
function throughStrip(draft: Draft, from: string, waiting: readonly Waiting[], reason: string): void {
  const strip = stripFor(draft, waiting, reason);
  if (!strip) return;
  const [input] = terminalsWith(strip, 'feed-in');
  const why: Why = { rule: 'turn-on', reason, cp: true };
  if (input !== undefined && draft.isFree(strip.id, input))
    draft.addLink(
      draft.freeName('turn-on-strip', strip.id),
      { from, to: `${strip.id}.${input}` },
      why,
      strip.id,
    );
  linkWays(draft, strip, waiting);
}

/** Each on any of the free ways of a strip. */
function linkWays(draft: Draft, strip: DraftDevice, waiting: readonly Waiting[]): void {
  const ways = freeWays(draft, strip).join('|');
  for (const { device, terminal } of waiting) linkOne(draft, `${strip.id}.${ways}`, device, terminal);
}

function freeWays(draft: Draft, strip: DraftDevice): readonly string[] {
  return terminalsWith(strip, 'feed-out').filter((name) => draft.isFree(strip.id, name));
}

/** The strip that an output feeds already. */
function stripBehind(draft: Draft, { device, terminal }: TurnOnOutput): DraftDevice | undefined {
  const links = draft.linksAt(device.id, terminal);
  return draft.own.find(
    (one) =>
      isStrip(one.spec) &&
      terminalsWith(one, 'feed-in').some((name) =>
        draft.linksAt(one.id, name).some((id) => links.includes(id)),
      ),
  );
}

function stripFor(draft: Draft, waiting: readonly Waiting[], reason: string): DraftDevice | null {
  const written = draft.own.find(
    (one) => isStrip(one.spec) && isUntouched(draft, one) && countWays(one) >= waiting.length,
  );
  if (written) return written;
  const [part] = Object.entries(draft.around.parts)
    .filter(([, spec]) => isStrip(spec) && waysOf(spec) >= waiting.length)
    .toSorted(
      ([a, one], [b, other]) =>
        compareShelved(draft, a, b) || waysOf(one) - waysOf(other) || (a < b ? -1 : 1),
    );
  const host = waiting[0]?.device;
  if (!part || !host) {
    draft.ask(
      ['devices', host?.id ?? ''],
      `${reason}, and no terminal strip of the catalogue has so many ways`,
      'add one to the catalogue, or write the turn-on links',
    );
    return null;
  }
  const id = draft.freeName('strip', host.id);
  draft.addDevice(
    id,
    { part: part[0], title: 'Turn-on strip', ...standing(host) },
    { rule: 'turn-on', reason, cp: true },
    host.id,
  );
  return draft.device(id);
}

/** Where something proposed stands: beside the device that it is for. */
export function standing({ board, given }: DraftDevice): { on?: string; in?: string } {
  if (board !== null) return { on: board };
  return given?.in === undefined ? {} : { in: given.in };
}

/** The order of two parts: what is on the shelf goes before what is not. */
export function compareShelved({ around }: Pick<Draft, 'around'>, a: string, b: string): number {
  return Number(onShelf(around, b) > 0) - Number(onShelf(around, a) > 0);
}

/** True for a device that no link touches. */
export function isUntouched(draft: Draft, device: DraftDevice): boolean {
  return Object.keys(device.facts.terminals).every((name) => draft.isFree(device.id, name));
}

type Spec = DraftDevice['spec'];

/** A strip for turn-on wires: a block without fuses whose ways take nothing thicker than they. */
function isStrip(spec: Spec): boolean {
  if (spec.kind !== 'distribution' || Object.keys(spec['fused-ways']).length > 0) return false;
  const outs = Object.values(spec.terminals).filter(({ role }) => role === 'feed-out');
  return outs.length > 0 && outs.every(({ takes }) => (takes?.from.areaMm2 ?? 99) < 1);
}

function waysOf(spec: Spec): number {
  return spec.kind === 'distribution'
    ? Object.values(spec.terminals).filter(({ role }) => role === 'feed-out').length
    : 0;
}

const countWays = ({ spec }: DraftDevice) => waysOf(spec);

/** A relay with a diode: its coil from the output, its contact for the inputs. */
function throughRelay(
  draft: Draft,
  output: TurnOnOutput,
  waiting: readonly Waiting[],
  sumA: number,
  reason: string,
): readonly SwitchedContact[] {
  const relay = relayFor(draft, waiting, sumA, reason);
  if (!relay) return [];
  const [coil] = byMoulding(terminalsWith(relay, 'relay-coil'), '86');
  const [feed, load] = byMoulding(terminalsWith(relay, 'relay-contact'), '30');
  if (coil === undefined || feed === undefined || load === undefined) return [];
  const why: Why = { rule: 'turn-on', reason, cp: true };
  const from = `${output.device.id}.${output.terminal}`;
  draft.addLink(
    draft.freeName('turn-on-relay', relay.id),
    { from, to: `${relay.id}.${coil}` },
    why,
    relay.id,
  );
  if (waiting.length === 1) linkEach(draft, `${relay.id}.${load}`, waiting);
  else throughStrip(draft, `${relay.id}.${load}`, waiting, `the contact of ${relay.id} takes one conductor`);
  return [{ relay: relay.id, terminal: feed, currentA: sumA }];
}

/** Terminals of a relay, the one first that carries a number of DIN 72552: 86 is fed, 85 grounded; 30 fed, 87 switched. */
function byMoulding(names: readonly string[], first: string): readonly string[] {
  return names.toSorted((a, b) => Number(b === first) - Number(a === first));
}

function relayFor(
  draft: Draft,
  waiting: readonly Waiting[],
  sumA: number,
  reason: string,
): DraftDevice | null {
  const isFit = (spec: Spec) =>
    spec.kind === 'relay' && spec.suppression === 'diode' && spec['contact-current'] >= sumA;
  const written = draft.own.find((one) => isFit(one.spec) && isUntouched(draft, one));
  if (written) return written;
  const [part] = Object.entries(draft.around.parts)
    .filter(([, spec]) => isFit(spec))
    .toSorted(([a], [b]) => compareShelved(draft, a, b) || (a < b ? -1 : 1));
  const host = waiting[0]?.device;
  if (!part || !host) {
    draft.ask(
      ['devices', host?.id ?? ''],
      `${reason}, and the catalogue has no relay with a diode`,
      'add one to the catalogue, or write the turn-on links',
    );
    return null;
  }
  const id = draft.freeName('relay', host.id);
  draft.addDevice(
    id,
    { part: part[0], title: 'Turn-on relay', ...standing(host) },
    { rule: 'turn-on', reason, cp: true },
    host.id,
  );
  return draft.device(id);
}
