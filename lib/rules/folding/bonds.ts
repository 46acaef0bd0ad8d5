import { bodyId, type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { Finding } from '../../model/finding.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import type { FilterPass, TerminalRole } from '../../model/vocabulary.ts';
import { askedFilters } from '../../plan/audio/filters-asked.ts';
import { type LiveEdge, liveSide, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, endsOf, terminalSpecOf } from '../look-up.ts';
import type { Case } from '../rule.ts';

/** What binds a finding to the one that it only follows from. */
export type Bond = (cause: Finding, follower: Finding, web: Web) => boolean;

/** What bonds look at: the case, all its findings, and its live side. */
export interface Web extends Case {
  readonly findings: readonly Finding[];
  readonly edges: readonly LiveEdge[];
}

/** The web of a case and its findings. */
export function webOf(about: Case, findings: readonly Finding[]): Web {
  return { ...about, findings, edges: liveSide(about).edges };
}

/** Terminals that a finding is about: those that it names, and both ends of each wire that it names. */
function terminalsOf({ related }: Finding, { job, plan }: Web): ReadonlySet<string> {
  return new Set(
    related.flatMap((id) => {
      const ends = plan.wires.filter((wire) => wire.id === id || wire.link === id).flatMap(endsOf);
      return terminalSpecOf(job, id) ? [id, ...ends] : ends;
    }),
  );
}

/** Devices that a finding is about, the body of the vehicle left out: everything is grounded to it. */
function devicesOf(finding: Finding, web: Web): ReadonlySet<string> {
  const named = finding.related.map((id) => (deviceOf(web.job, id) ? id : deviceIdOf(id)));
  const ends = [...terminalsOf(finding, web)].map(deviceIdOf);
  return new Set([...named, ...ends].filter((id) => id !== bodyId && deviceOf(web.job, id) !== undefined));
}

const meet = (some: ReadonlySet<string>, others: ReadonlySet<string>): boolean =>
  [...some].some((one) => others.has(one));

/** The cause names what the follower is about. */
export const sameSubject: Bond = (cause, follower) => {
  const subject = linkName(follower.related[0] ?? '');
  return cause.related.some((id) => linkName(id) === subject);
};

/** Both are about one terminal, by its name or by a wire that ends there. */
export const sameTerminal: Bond = (cause, follower, web) => {
  const terminals = (finding: Finding) =>
    new Set([...terminalsOf(finding, web)].filter((id) => deviceIdOf(id) !== bodyId));
  return meet(terminals(cause), terminals(follower));
};

/** The follower is about a wire that the cause names, or that ends at a terminal that the cause names. */
export const wireOfSubject: Bond = (cause, follower, { plan }) => {
  const { related } = follower;
  const wires = plan.wires.filter(({ id, link }) => related.includes(id) || related.includes(link));
  return wires.some((wire) => [wire.id, wire.link, ...endsOf(wire)].some((id) => cause.related.includes(id)));
};

/** The follower names what the cause is about. */
export const namesCause: Bond = (cause, follower) => follower.related.includes(cause.related[0] ?? '');

/** Each names what the other is about. */
export const eachNamesTheOther: Bond = (cause, follower) =>
  cause.related.includes(follower.related[0] ?? '') && follower.related.includes(cause.related[0] ?? '');

/** Both are about one wire. */
export const sameWire: Bond = (cause, follower, { plan }) => {
  const wires = ({ related }: Finding) =>
    new Set(
      plan.wires.filter(({ id, link }) => related.includes(id) || related.includes(link)).map(({ id }) => id),
    );
  return meet(wires(cause), wires(follower));
};

/** The follower is an open speaker output of an amplifier that the cause names by a channel. */
export const outputOfDevice: Bond = (cause, { related: [terminal = ''] }, { job }) => {
  const role = terminalSpecOf(job, terminal)?.role;
  const isOutput = role === 'speaker-out-positive' || role === 'speaker-out-negative';
  return isOutput && cause.related.some((id) => deviceIdOf(id) === deviceIdOf(terminal));
};

/** The follower is about a run of what the cause's fuse protects. */
export const runOfFuse: Bond = (cause, { related: [name = ''] }, { plan }) => {
  const protects = plan.power.fuses.find(({ id }) => id === cause.related[0])?.protects ?? [];
  return plan.runs.some(({ id, wires }) => id === name && wires.some((wire) => protects.includes(wire)));
};

/** The follower is a reading at a channel that the cause names, or of current and ground of its amplifier. */
export const readingOfChannel: Bond = (cause, { related: [reading = ''] }) =>
  cause.related.some((id) => reading.startsWith(`${id}.`));

/** The follower is about a run that a wire of the cause goes by, and about a device at an end of that wire. */
export const runOfWire: Bond = (cause, { related: [device = '', run = ''] }, { plan }) => {
  const wires = plan.runs.find(({ id }) => id === run)?.wires ?? [];
  return plan.wires.some(
    (wire) =>
      cause.related.includes(wire.id) &&
      wires.includes(wire.id) &&
      endsOf(wire).some((end) => deviceIdOf(end) === device),
  );
};

/** The follower is about a channel that the cause's filter is written for. */
export const channelOfFilter: Bond = (cause, follower, { plan }) =>
  plan.audio.channels.some(({ id }) => cause.related.includes(id) && follower.related.includes(id));

/** What a speaker lacks where a filter for it is not made. */
const lacked: Readonly<Record<string, readonly FilterPass[]>> = {
  'small-speaker-without-high-pass': ['high-pass'],
  'subwoofer-without-low-pass': ['low-pass'],
  'ported-without-subsonic': ['subsonic', 'high-pass'],
};

/** All channels of the follower lack the filter that the cause's device is asked for and does not make. */
export const lackOfFilter: Bond = (cause, follower, { job, plan }) => {
  const device = deviceOf(job, cause.related[0] ?? '');
  const passes = lacked[follower.rule] ?? [];
  const isAsked = device
    ? askedFilters(device).some(({ isMade, filter }) => !isMade && passes.includes(filter.pass))
    : false;
  const channels = plan.audio.channels.filter(({ id }) => follower.related.includes(id));
  return isAsked && channels.length > 0 && channels.every(({ id }) => cause.related.includes(id));
};

/** The follower rests on what flows in the network that the cause leaves a lead of unknown, and on its figures alone. */
export const figureOfNetwork: Bond = (cause, { related, value, limit, unit }, { job, plan }) => {
  if (typeof limit !== 'number' || (unit !== 'A' && unit !== 'V')) return false;
  const isRead = plan.measurements.some(({ id }) => id === related[0] && typeof value === 'number');
  return isRead || related.includes(cause.related[0] ?? '') || deviceOf(job, related[0] ?? '') !== undefined;
};

/** The follower is the open ground terminal of the cause's device. */
export const groundOfDevice: Bond = (cause, follower, { job }) => {
  const [terminal = ''] = follower.related;
  return (
    terminalSpecOf(job, terminal)?.role === 'supply-negative' && cause.related[0] === deviceIdOf(terminal)
  );
};

/** The follower is the one device without a supply: the feed that the cause leads astray is its own. */
export const oneUnfed: Bond = (_cause, follower, { findings }) =>
  findings.filter(({ rule }) => rule === follower.rule).length === 1;

/** Both are about one device. */
export const sameDevice: Bond = (cause, follower, web) =>
  meet(devicesOf(cause, web), devicesOf(follower, web));

/** The follower is told of a network that the cause makes meaningless, wherever it stands. */
export const wholeNetwork: Bond = () => true;

/** The follower's device hangs, through feeds, bars and fuses, on what the cause is about. Sources end a circuit. */
export const sameCircuit: Bond = (cause, follower, web) => {
  const isSource = (id: string) => terminalSpecOf(web.job, id)?.role === 'source-positive';
  const from = [...devicesOf(cause, web)]
    .flatMap((device) => terminalsOn(web.job, device))
    .filter((id) => !isSource(id));
  const circuit = reached(web.edges, from, ({ ends }) => !ends.some(isSource));
  const devices = new Set([...circuit].map(deviceIdOf));
  return meet(devices, devicesOf(follower, web));
};

function terminalsOn(job: Job, device: string): readonly string[] {
  return Object.keys(deviceOf(job, device)?.facts.terminals ?? {}).map((terminal) =>
    terminalId({ device, terminal }),
  );
}

/** Both are about wires that are cut from one reel, or the cause is about the reel itself. */
export const sameReel: Bond = (cause, follower, { plan }) => {
  const reels = ({ related }: Finding) =>
    new Set([
      ...related,
      ...plan.wires.flatMap(({ id, part }) => (part !== null && related.includes(id) ? [part] : [])),
    ]);
  const parts = new Set(plan.wires.flatMap(({ part }) => part ?? []));
  const [some, others] = [reels(cause), reels(follower)];
  return [...some].some((one) => parts.has(one) && others.has(one));
};

/** The follower's conductor is one that the fuse of the cause decides: before it, behind it, or the ground of its load. */
export const conductorOfFuse: Bond = (cause, follower, { plan }) => {
  const [subject = ''] = follower.related;
  const wire = plan.wires.find(({ id }) => id === subject);
  const fuse = plan.power.fuses.find(({ id }) => id === cause.related[0]);
  if (!wire || !fuse) return false;
  const ends = endsOf(wire);
  const protectedBy = plan.power.conductors.find(({ id }) => id === subject)?.fuses ?? [];
  if (protectedBy.length > 0) return protectedBy.includes(fuse.id);
  if (ends.some((end) => end === fuse.from || end === fuse.to)) return true;
  // A load goes by the fuse next to it: the one that feeds fewest.
  const nearest = (load: string) =>
    plan.power.fuses
      .filter(({ loads }) => loads.includes(load))
      .toSorted((a, b) => a.loads.length - b.loads.length)[0];
  return wire.role === 'ground' && ends.some((end) => nearest(deviceIdOf(end))?.id === fuse.id);
};

/** Both hold one thing against a limit of their own, and what keeps the cause's keeps the follower's too. */
export const stricterLimit: Bond = (cause, follower) =>
  cause.related[0] === follower.related[0] &&
  cause.unit === follower.unit &&
  typeof cause.limit === 'number' &&
  typeof follower.limit === 'number' &&
  cause.limit <= follower.limit;

/** Where the other end of a missing link may be, by the role of the end that wants it. */
const givers: Readonly<Partial<Record<TerminalRole, readonly TerminalRole[]>>> = {
  'supply-positive': ['feed-out', 'relay-contact'],
  'feed-in': ['feed-out', 'relay-contact', 'turn-on-out'],
  'supply-negative': ['ground-bar'],
  'turn-on-in': ['turn-on-out', 'feed-out', 'relay-contact'],
  'relay-coil': ['turn-on-out'],
  'signal-in': ['signal-out'],
  'speaker-in-positive': ['speaker-out-positive'],
  'speaker-in-negative': ['speaker-out-negative'],
  'coil-positive': ['speaker-out-positive'],
  'coil-negative': ['speaker-out-negative'],
};

/**
 * The follower is an open end that gives what the open end of the cause wants: the two ends of one missing link. Only
 * where no more are open that give than want: else one of them was forgotten for itself.
 */
export const otherEndOfLink: Bond = (cause, follower, web) => {
  const role = ({ related: [id = ''] }: Finding) => terminalSpecOf(web.job, id)?.role;
  const given = role(follower);
  const wants = wantedBy(cause, web);
  if (given === undefined || !wants.includes(given)) return false;
  const open = web.findings.filter((one) => one.rule === 'terminal-unaccounted').map(role);
  const giving = open.filter((one) => one === given).length;
  const wanting = open.filter((one) => one !== undefined && givers[one]?.includes(given) === true).length;
  return giving <= wanting || (wanting === 0 && giving === 1);
};

/** Roles that the open terminals of a finding, or of the device that it is about, ask for. */
function wantedBy({ related: [subject = ''] }: Finding, { job }: Web): readonly TerminalRole[] {
  const terminals = terminalSpecOf(job, subject) ? [subject] : terminalsOn(job, subject);
  return terminals.flatMap((id) => {
    const role = terminalSpecOf(job, id)?.role;
    return role === undefined ? [] : (givers[role] ?? []);
  });
}

/** The follower is the one open way out of a fuse or a strip, and the cause's wire to a device passes it by. */
export const feedPassedBy: Bond = (cause, follower, web) => {
  const isOut = ({ related: [id = ''] }: Finding) => terminalSpecOf(web.job, id)?.role === 'feed-out';
  const feeds = [...terminalsOf(cause, web)].some(
    (id) => terminalSpecOf(web.job, id)?.role === 'supply-positive',
  );
  const open = web.findings.filter((one) => one.rule === 'terminal-unaccounted' && isOut(one));
  return feeds && isOut(follower) && open.length === 1;
};

/** Roles of terminals that hand a feed on: what lies behind an open one gets nothing. */
const handingOn: readonly (TerminalRole | undefined)[] = ['feed-in', 'feed-out', 'relay-contact'];

/** The follower lies, through feeds, bars, fuses and contacts, behind the cause's open end, and no source reaches it. */
export const behindOpenEnd: Bond = (cause, follower, web) => {
  const [open = ''] = cause.related;
  if (!handingOn.includes(terminalSpecOf(web.job, open)?.role)) return false;
  const island = reached(web.edges, [open], () => true);
  if ([...island].some((id) => terminalSpecOf(web.job, id)?.role === 'source-positive')) return false;
  const [subject = ''] = follower.related;
  if (terminalSpecOf(web.job, subject)) return island.has(subject);
  return meet(new Set([...island].map(deviceIdOf)), devicesOf(follower, web));
};

/** The ground of the follower's device goes to the strip whose own way to ground is the cause's open end. */
export const groundBehindOpenEnd: Bond = (cause, follower, web) => {
  const [open = ''] = cause.related;
  if (terminalSpecOf(web.job, open)?.role !== 'ground-bar') return false;
  const device = deviceIdOf(open);
  return web.plan.wires.some((wire) => {
    const devices = endsOf(wire).map(deviceIdOf);
    return (
      wire.role === 'ground' &&
      devices.includes(device) &&
      devices.some((id) => id !== device && devicesOf(follower, web).has(id))
    );
  });
};

/** The follower's terminal is wired: what is wrong is what the wire comes from. */
export const isWired: Bond = (_cause, follower, { plan }) =>
  plan.wires.some((wire) => endsOf(wire).includes(follower.related[0] ?? ''));
