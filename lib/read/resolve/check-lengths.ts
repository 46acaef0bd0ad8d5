import type { Device, Link, LinkEnd } from '../../model/content/resolved-job.ts';
import type { Part } from '../../model/kinds/index.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import type { Undecided } from '../../propose/draft/undecided.ts';
import type { Report } from '../report.ts';

/**
 * A length is given, made, or measured along a board or a run; it is never guessed. Links whose way was asked for are
 * told already.
 */
export function checkLengths(
  {
    links,
    devices,
    undecided,
  }: {
    readonly links: readonly Link[];
    readonly devices: readonly Device[];
    readonly undecided: readonly Undecided[];
  },
  parts: Readonly<Record<string, Part>>,
  report: Report,
): void {
  const asked = undecided.flatMap((one) => one.links ?? []);
  const deviceAt = (end: LinkEnd) => devices.find(({ id }) => id === end.device);
  const boardOf = (end: LinkEnd) => deviceAt(end)?.board ?? null;
  // A place that there is not was told: what a length lacks follows from it.
  const isNowhere = (end: LinkEnd) => {
    const device = deviceAt(end);
    return device?.origin === 'job' && device.board === null && device.seat === null;
  };
  for (const { id, given, cable, run, from, to } of links) {
    const part = cable ? parts[cable.part] : undefined;
    const isMade = part?.kind === 'cable' && part['made-length'] !== undefined;
    const onOneBoard = boardOf(from) !== null && boardOf(from) === boardOf(to);
    if (!given || given.length !== undefined || isMade || run !== null || onOneBoard) continue;
    const name = linkName(id);
    if (isNowhere(from) || isNowhere(to) || asked.includes(name)) continue;
    report.at(
      ['links', name],
      `${name} leaves its board or lies in the vehicle, and its length is not known`,
      'name it in a run, or write the length that you measured, such as length: 14 in',
    );
  }
}
