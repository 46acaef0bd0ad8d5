import type { Job, Link, LinkEnd } from '../../model/content/resolved-job.ts';
import { linkName, stemName } from '../../model/ports/pair-name.ts';
import type { ConductorRole, ConductorSign, TerminalRole } from '../../model/vocabulary.ts';

/** The two conductors that join one speaker, by their links. */
export interface SpeakerConductors {
  readonly positive: string;
  readonly negative: string;
}

/**
 * The sign of every speaker conductor, by its link: that of the amplifier's terminal where it has one, since a speaker may
 * be joined the other way round on purpose. One that joins the minus of a coil to the plus of the next has none.
 */
export function speakerSigns(
  job: Pick<Job, 'links' | 'devices'>,
  roles: ReadonlyMap<string, ConductorRole>,
): ReadonlyMap<string, ConductorSign> {
  const terminalRole = (end: LinkEnd): TerminalRole | undefined =>
    job.devices.find(({ id }) => id === end.device)?.facts.terminals[end.terminal]?.role;
  return new Map(
    job.links.flatMap((link): [string, ConductorSign][] => {
      const written = signInId(link);
      if (written !== null) return [[link.id, written]];
      if (roles.get(link.id) !== 'speaker') return [];
      const sign = signBetween(terminalRole(link.from), terminalRole(link.to));
      return sign === null ? [] : [[link.id, sign]];
    }),
  );
}

function signInId({ id }: Link): ConductorSign | null {
  if (id.endsWith('.+')) return '+';
  return id.endsWith('.-') ? '-' : null;
}

function signBetween(from: TerminalRole | undefined, to: TerminalRole | undefined): ConductorSign | null {
  const output = [from, to].find((role) => role?.startsWith('speaker-out'));
  if (output !== undefined) return signOfRole(output);
  const signs = new Set([signOfRole(from), signOfRole(to)].filter((sign) => sign !== null));
  const [only] = signs;
  return signs.size === 1 && only !== undefined ? only : null;
}

function signOfRole(role: TerminalRole | undefined): ConductorSign | null {
  if (role?.endsWith('-positive')) return '+';
  return role?.endsWith('-negative') ? '-' : null;
}

/**
 * Speaker conductors that make a pair: those that the job writes as one link, then those between the same two devices at
 * one coil, then the only plus and the only minus between two devices, as of coils in series and of bridged outputs.
 */
export function speakerConductors(
  { links }: Pick<Job, 'links'>,
  signs: ReadonlyMap<string, ConductorSign>,
): readonly SpeakerConductors[] {
  const pairs: SpeakerConductors[] = [];
  let open = links.filter(({ id }) => signs.has(id));
  for (const keyOf of [writtenAs, atOneCoil, betweenDevices]) {
    const groups = new Map<string, Link[]>();
    for (const link of open) groups.set(keyOf(link), [...(groups.get(keyOf(link)) ?? []), link]);
    for (const group of groups.values()) pairs.push(...pairIn(group, signs));
    const paired = new Set(pairs.flatMap(({ positive, negative }) => [positive, negative]));
    open = open.filter(({ id }) => !paired.has(id));
  }
  return pairs;
}

function pairIn(group: readonly Link[], signs: ReadonlyMap<string, ConductorSign>): SpeakerConductors[] {
  const [positive, ...morePositive] = group.filter(({ id }) => signs.get(id) === '+');
  const [negative, ...moreNegative] = group.filter(({ id }) => signs.get(id) === '-');
  const isOne = positive && negative && morePositive.length + moreNegative.length === 0;
  return isOne ? [{ positive: positive.id, negative: negative.id }] : [];
}

function writtenAs({ id }: Link): string {
  return linkName(id);
}

function atOneCoil(link: Link): string {
  return `${betweenDevices(link)} ${stemName(link.to.terminal)}`;
}

function betweenDevices({ from, to }: Link): string {
  return [from.device, to.device].sort().join(' ');
}
