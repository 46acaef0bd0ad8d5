import {
  type Device,
  type Link,
  type Run,
  sharedTerminal,
  terminalId,
} from '../../model/content/resolved-job.ts';
import type { Part } from '../../model/kinds/index.ts';
import { roleBetween } from '../../model/ports/conductor-roles.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import type { Report } from '../report.ts';
import { placeJoints } from '../resolve/place-joints.ts';
import { checkBranches } from './audio-names.ts';

interface Looking {
  readonly links: readonly Link[];
  readonly devices: readonly Device[];
  readonly parts: Readonly<Record<string, Part>>;
  readonly report: Report;
}

/**
 * Links that share a terminal with another: those that part from it on their run, and those that are joined to it. The
 * links as they are then, with the distance of each joint on a way.
 */
export function checkShared(looking: Looking & { readonly runs: readonly Run[] }): readonly Link[] {
  checkBranches(looking.links, looking.runs, looking.report);
  checkJoints(looking);
  return placeJoints(looking);
}

/** A joint is to a link that enters the port at which both begin, and of a splice; a feed or a ground has none. */
function checkJoints(looking: Looking): void {
  const { links, parts, report } = looking;
  for (const link of links) {
    const joint = link.given?.joint;
    if (!joint || link.id.endsWith('.-')) continue;
    const path = ['links', linkName(link.id), 'joint'];
    if (joint.part !== undefined) checkSplice([...path, 'part'], joint.part, parts, report);
    checkTrunk([...path, 'with'], link, joint.with, looking);
  }
}

function checkTrunk(path: readonly string[], link: Link, name: string, looking: Looking): void {
  const { links, report } = looking;
  const own = linkName(link.id);
  const known = links.filter((other) => linkName(other.id) === name && other.origin === 'job');
  if (known.length === 0) {
    report.unknown(path, 'link', name, [...new Set(links.map(({ id }) => linkName(id)))]);
    return;
  }
  const trunk = known.find((other) => other.id !== link.id && sharedTerminal(link, other) !== null);
  if (!trunk) {
    report.at(
      path,
      `${own} shares no terminal with "${name}"`,
      'name the link that enters the same terminal',
    );
    return;
  }
  const shared = sharedTerminal(link, trunk) ?? '';
  const role = roleBetween([link.from, link.to].map((end) => roleAt(looking, end) ?? 'sense'));
  if (role === 'power' || role === 'ground')
    report.at(
      path.slice(0, -1),
      `${own} is a ${role === 'power' ? 'feed' : 'ground'}: it is not joined to another before a port`,
      role === 'power'
        ? 'take joint: out, and part it at a distribution part, where each way has its fuse'
        : 'take joint: out, and take each to a ground bar or to the ground point',
    );
  else if (isPhono(looking, link, shared))
    report.at(
      path.slice(0, -1),
      `${shared} takes a plug: a line lead is parted by a Y-lead, not by a joint`,
      'take joint: out, and lay both links in a cable with y-lead: true',
    );
  else if (trunk.given?.joint && linkName(trunk.id) !== own)
    report.at(
      path,
      `${name} is joined to ${trunk.given.joint.with} itself, and does not enter ${shared}`,
      `write with: ${trunk.given.joint.with}`,
    );
}

function specAt({ devices }: Looking, end: Link['from']) {
  return devices.find(({ id }) => id === end.device)?.facts.terminals[end.terminal];
}

function roleAt(looking: Looking, end: Link['from']) {
  return specAt(looking, end)?.role;
}

function isPhono(looking: Looking, link: Link, shared: string): boolean {
  const end = [link.from, link.to].find((one) => terminalId(one) === shared);
  return end !== undefined && specAt(looking, end)?.joint === 'phono';
}

function checkSplice(
  path: readonly string[],
  id: string,
  parts: Readonly<Record<string, Part>>,
  report: Report,
): void {
  const part = report.look(path, 'part', id, parts);
  if (!part) return;
  const isSplice = part.kind === 'terminal' && (part.form === 'butt-splice' || part.form === 'solder-sleeve');
  if (!isSplice)
    report.at(
      path,
      `${id} is no splice`,
      'name a terminal of the catalogue with form: butt-splice or solder-sleeve, or leave part: out',
    );
}
