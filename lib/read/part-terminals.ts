import type { KindName, Part, PartOf } from '../model/kinds/index.ts';
import { partFacts } from '../model/kinds/index.ts';
import { terminalsOf } from '../model/kinds/kind.ts';
import { stemName } from '../model/ports/pair-name.ts';
import type { TerminalRole } from '../model/vocabulary.ts';
import type { Report } from './report.ts';
import { withPairs } from './resolve/resolve-devices.ts';

/** Terminals of one role that a kind of part has, neither more nor fewer, and what lacks without them. */
interface Need {
  readonly role: TerminalRole;
  readonly count: number;
  readonly lacks: string;
}

const supply: readonly Need[] = [
  { role: 'supply-positive', count: 1, lacks: 'its current would not be counted' },
  { role: 'supply-negative', count: 1, lacks: 'its current would not be counted' },
];
const source: readonly Need[] = [
  { role: 'source-positive', count: 1, lacks: 'it would feed nothing' },
  { role: 'source-negative', count: 1, lacks: 'it would feed nothing' },
];

/** What the network is built from: with a terminal too few a part would silently drop out of it. */
const needs: Readonly<Partial<Record<KindName, readonly Need[]>>> = {
  amplifier: supply,
  processor: supply,
  'source-unit': supply,
  battery: source,
  alternator: source,
  'fuse-holder': [
    { role: 'feed-in', count: 1, lacks: 'its fuse would protect nothing' },
    { role: 'feed-out', count: 1, lacks: 'its fuse would protect nothing' },
  ],
  charger: [...supply, { role: 'source-positive', count: 1, lacks: 'it would charge nothing' }],
  'capacitor-bank': source,
  crossover: [
    { role: 'coil-positive', count: 1, lacks: 'no amplifier would drive it' },
    { role: 'coil-negative', count: 1, lacks: 'no amplifier would drive it' },
  ],
  'isolating-relay': [{ role: 'relay-contact', count: 2, lacks: 'it would join nothing' }],
  fan: [
    { role: 'turn-on-in', count: 1, lacks: 'nothing would switch it on with the system' },
    { role: 'supply-negative', count: 1, lacks: 'its current would not come back' },
  ],
  relay: [
    { role: 'relay-coil', count: 2, lacks: 'nothing would pull it in' },
    { role: 'relay-contact', count: 2, lacks: 'it would switch nothing' },
  ],
};

/** A part has the terminals that its kind is computed by, and each name in it stands for one of them. */
export function checkPartTerminals(id: string, part: Part, report: Report): void {
  const { terminals } = partFacts(part);
  for (const { role, count, lacks } of needs[part.kind] ?? []) {
    const found = terminalsOf(terminals, role).length;
    const path = ['parts', id, 'terminals'];
    const asked = `${count === 1 ? 'one terminal' : `${count} terminals`} with role: ${role}`;
    if (found < count)
      report.atKey(path, `${id} needs ${asked} and has ${found}: ${lacks}`, `write ${asked}`);
    else if (found > count)
      report.atKey(
        path,
        `${id} has ${found} terminals with role: ${role}, but only ${count} can be computed`,
        role === 'relay-contact'
          ? 'keep the two of the make contact'
          : 'keep one; several conductors in it are told by conductors:',
      );
  }
  if (part.kind === 'isolating-relay') checkIsolator(id, part, report);
  if (part.kind === 'distribution') checkDistribution(id, part, report);
  if (part.kind === 'amplifier') checkChannels(id, part, report);
  if (part.kind === 'speaker') checkCoils(id, part, report);
  if (part.kind === 'crossover') checkWays(id, part, report);
}

/** Each way of a crossover is a pair of its outputs, and each output is of a way. */
function checkWays(id: string, part: PartOf<'crossover'>, report: Report): void {
  const { terminals, ways } = part;
  for (const way of Object.keys(ways))
    for (const [end, role] of wayEnds(way)) {
      const found = terminals[end]?.role;
      if (found === role) continue;
      report.atKey(
        ['parts', id, 'ways', way],
        found === undefined
          ? `the way ${way} of ${id} has no terminal ${end}`
          : `the way ${way} of ${id} ends at ${end}, which has the role ${found}`,
        `write ${way}: { role: speaker-out } under terminals:, which makes ${way}+ and ${way}-`,
      );
    }
  const ends = new Set(Object.keys(ways).flatMap((way) => wayEnds(way).map(([end]) => end)));
  for (const name of terminalsOf(terminals, 'speaker-out-positive', 'speaker-out-negative'))
    if (!ends.has(name))
      report.atKey(
        ['parts', id, 'terminals', name],
        `${name} of ${id} is an output of no way`,
        `write under ways: what it lets through, such as ${name.replace(/[+-]$/, '')}: from 3 kHz`,
      );
}

function wayEnds(way: string): readonly (readonly [terminal: string, role: TerminalRole])[] {
  return [
    [`${way}+`, 'speaker-out-positive'],
    [`${way}-`, 'speaker-out-negative'],
  ];
}

/** What pulls an isolating relay in decides which terminals it must have: both of its coil, or a ground of its own. */
function checkIsolator(id: string, part: PartOf<'isolating-relay'>, report: Report): void {
  const byCoil = part['pulls-in'] === 'coil';
  const asked = byCoil
    ? ({ role: 'relay-coil', count: 2, text: '2 terminals with role: relay-coil' } as const)
    : ({ role: 'supply-negative', count: 1, text: 'one terminal with role: supply-negative' } as const);
  const found = terminalsOf(part.terminals, asked.role).length;
  if (found === asked.count) return;
  report.atKey(
    ['parts', id, 'terminals'],
    `${id} pulls in by ${byCoil ? 'its coil' : 'the charging voltage'}, needs ${asked.text} and has ${found}: nothing would pull it in`,
    `write ${asked.text}, or correct pulls-in:`,
  );
}

/** Fused ways lead from the bar to their own terminals; feeds and grounds never share a bar. */
function checkDistribution(id: string, part: PartOf<'distribution'>, report: Report): void {
  const { terminals, 'fused-ways': ways } = part;
  for (const [name, { from }] of Object.entries(ways)) {
    const path = ['parts', id, 'fused-ways', name];
    report.look<unknown>(path, `terminal of ${id}`, name, terminals);
    if (Object.hasOwn(ways, from))
      report.at(
        [...path, 'from'],
        `the fused way ${name} begins at ${from}, which is a fused way itself`,
        'name the terminal of the bar',
      );
    else report.look<unknown>([...path, 'from'], `terminal of ${id}`, from, terminals);
  }
  const [feed] = terminalsOf(terminals, 'feed-in', 'feed-out');
  const [ground] = terminalsOf(terminals, 'ground-bar');
  if (feed !== undefined && ground !== undefined)
    report.atKey(
      ['parts', id, 'terminals', ground],
      `${id} has feeds (${feed}) and grounds (${ground}) on one bar: that is a short`,
      'write a part for the feeds and one for the grounds',
    );
}

function checkChannels(id: string, part: PartOf<'amplifier'>, report: Report): void {
  for (const [name, channel] of Object.entries(part.channels))
    for (const [index, other] of channel['also-takes'].entries())
      report.look<unknown>(
        ['parts', id, 'channels', name, 'also-takes', String(index)],
        `terminal of ${id}`,
        other,
        withPairs(part.terminals),
      );
  checkPassedOn(id, part, report);
  for (const [name, terminal] of Object.entries(part.terminals))
    if (terminal['speaker-level'] && terminal.role !== 'signal-in')
      report.at(
        ['parts', id, 'terminals', name, 'speaker-level'],
        `${name} has the role ${terminal.role}: only a line input takes speaker level beside it`,
        'write role: signal-in, or take speaker-level: out',
      );
  for (const group of ['channels', 'bridges'] as const)
    for (const [name, channel] of Object.entries(part[group])) {
      const path = ['parts', id, group, name];
      for (const end of ['positive', 'negative', 'input'] as const)
        report.look<unknown>(
          [...path, end],
          `terminal of ${id}`,
          channel[end],
          end === 'input' ? withPairs(part.terminals) : part.terminals,
        );
      for (const [index, added] of channel.summed.entries())
        report.look<unknown>(
          [...path, 'summed', String(index)],
          `terminal of ${id}`,
          added,
          withPairs(part.terminals),
        );
    }
  for (const name of Object.keys(part.bridges))
    for (const half of name.split('+'))
      report.look<unknown>(['parts', id, 'bridges', name], `channel of ${id}`, half, part.channels);
}

/** A line output passes on what arrives at inputs: it is an output of line level, and they are inputs. */
function checkPassedOn(id: string, { terminals, passes }: PartOf<'amplifier'>, report: Report): void {
  const outputs = terminalsOf(terminals, 'signal-out');
  const inputs = terminalsOf(terminals, 'signal-in', 'speaker-in-positive').map(stemName);
  const named = (names: readonly string[]) => Object.fromEntries(names.map((name) => [name, name]));
  for (const [output, { of }] of Object.entries(passes)) {
    const path = ['parts', id, 'passes', output];
    report.look(path, `line output of ${id}`, output, named(outputs));
    for (const input of Object.keys(of))
      report.look([...path, 'of', input], `input of ${id}`, input, named(inputs));
  }
}

function checkCoils(id: string, part: PartOf<'speaker'>, report: Report): void {
  for (const [name, coil] of Object.entries(part.coils))
    for (const end of ['positive', 'negative'] as const)
      report.look<unknown>(['parts', id, 'coils', name, end], `terminal of ${id}`, coil[end], part.terminals);
}
