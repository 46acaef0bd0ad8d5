import type { BuiltJob, BuiltPlace, HeldValues } from '../../model/content/built.ts';
import type { JobDevice, JobFile, JobLink, WrittenBoard, WrittenJob } from '../../model/content/job.ts';
import { boardSchema } from '../../model/content/job-board.ts';
import { bodyId, type Device, type Link, linkEndOf, type Run } from '../../model/content/resolved-job.ts';
import type { Part } from '../../model/kinds/index.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { isPortPattern, matchesPattern } from '../../model/ports/port-pattern.ts';
import { isQuantity } from '../../model/quantity/quantity.ts';
import { isCutAs } from '../../propose/built/held-fixings.ts';

/** What two lengths may differ by, once written and read again (m). */
const sameM = 1e-6;

/** A job whose boards that are cut and leave their place or their sheet open have them as built. */
export function withBuiltBoards(written: WrittenJob, built: BuiltJob): WrittenJob {
  const boards = Object.entries(written.boards).map(([id, own]) => {
    const board = own.outline || written.anew.includes(id) ? own : { ...builtShape(id, built), ...own };
    const before = built.boards[id];
    const space = board.space ?? written.space;
    if (!before || written.anew.includes(id) || space !== before.space || !isCutAs(board, before))
      return [id, board] as const;
    const [x, y] = [before.xM, before.yM];
    const at = board.at ?? (isQuantity<'m'>(x) && isQuantity<'m'>(y) ? { x, y } : undefined);
    return [id, { ...board, sheet: board.sheet ?? before.sheet, ...(at && { at }) }] as const;
  });
  return { ...written, boards: Object.fromEntries(boards) };
}

/** The shape of a board as a revision proposed it: outline, place and spacers. */
function builtShape(id: string, { proposals }: BuiltJob): Partial<WrittenBoard> {
  const values = proposals.flatMap(({ path: [section, board, ...key], value }) =>
    section === 'boards' && board === id && key.length === 1 ? [[key[0], value] as const] : [],
  );
  return boardSchema.partial().safeParse(Object.fromEntries(values)).data ?? {};
}

/** A job whose devices stand where they were built, and whose links have the ports that they were built with. */
export function withBuiltPlaces(file: JobFile, built: BuiltJob): JobFile {
  const named = new Set(file.anew);
  const devices = Object.entries(file.devices).map(([id, device]) => {
    const place = built.places[id];
    const isOpen = place && !named.has(id) && !named.has(place.board);
    return [
      id,
      isOpen && isStillThere(device, built.items[id]?.part) ? withPlace(device, place) : device,
    ] as const;
  });
  const taken = new Set([
    ...Object.values(file.links).flatMap(({ from, to }) => [from, to]),
    ...Object.keys(file['left-open']),
  ]);
  const links = Object.entries(file.links).map(([id, link]) => {
    const wire = named.has(id) ? undefined : built.wires[id];
    return [id, wire ? withPorts(link, wire, taken) : link] as const;
  });
  return { ...file, devices: Object.fromEntries(devices), links: Object.fromEntries(links) };
}

const isStillThere = (device: JobDevice, part: string | null | undefined): boolean => device.part === part;

/** A device that leaves its place open, where it was built; what it writes of its turn or its height has to be that. */
function withPlace(device: JobDevice, { board, xM, yM, turnDeg, raisedM }: BuiltPlace): JobDevice {
  const turn = [0, 90, 180, 270].find((one): one is 0 | 90 | 180 | 270 => one === turnDeg);
  const isSame =
    device.on === board &&
    device.at === undefined &&
    (device.turn ?? turnDeg) === turnDeg &&
    Math.abs((device.raised ?? raisedM) - raisedM) <= sameM;
  if (!isSame || turn === undefined) return device;
  if (!isQuantity<'m'>(xM) || !isQuantity<'m'>(yM) || !isQuantity<'m'>(raisedM)) return device;
  return { ...device, at: { x: xM, y: yM }, turn, ...(raisedM > 0 && { raised: raisedM }) };
}

function withPorts(
  link: JobLink,
  wire: { readonly from: string; readonly to: string },
  taken: Set<string>,
): JobLink {
  const end = (open: string, own: string): string => {
    const [pattern, port] = [linkEndOf(open), linkEndOf(own)];
    const fits =
      isPortPattern(pattern.terminal) &&
      pattern.device === port.device &&
      matchesPattern(pattern.terminal, port.terminal) &&
      !taken.has(own);
    if (!fits) return open;
    taken.add(own);
    return own;
  };
  return { ...link, from: end(link.from, wire.from), to: end(link.to, wire.to) };
}

/** The links of a job as they were cut: from the same reel, and as long where both ends stand where they stood. */
export function withBuiltWires(
  links: readonly Link[],
  built: BuiltJob,
  around: {
    readonly devices: readonly Device[];
    readonly runs: readonly Run[];
    readonly parts: Readonly<Record<string, Part>>;
    readonly anew: readonly string[];
  },
): { readonly links: readonly Link[]; readonly held: HeldValues } {
  const [reels, lengths]: [string[], string[]] = [[], []];
  const held = links.map((link): Link => {
    const wire = built.wires[link.id];
    const { given } = link;
    const isNamed = around.anew.includes(linkName(link.id));
    if (!wire || !given || isNamed || !isBetween(link, wire)) return link;
    const isOpen = [given.wire, given.size, given.colour, given.cable].every((one) => one === undefined);
    const reel = wire.part !== null && around.parts[wire.part]?.kind === 'wire' ? wire.part : null;
    const { lengthM } = wire;
    const isLaid =
      given.length === undefined &&
      given.branch === undefined &&
      isQuantity<'m'>(lengthM) &&
      (around.runs.find(({ id }) => id === link.run)?.routeId ?? null) === wire.route &&
      [link.from, link.to].every(({ device }) => standsAsBuilt(device, built, around.devices));
    if (isOpen && reel !== null) reels.push(link.id);
    if (isLaid) lengths.push(link.id);
    return {
      ...link,
      given: { ...given, ...(isOpen && reel !== null && { wire: reel }), ...(isLaid && { length: lengthM }) },
    };
  });
  const places = around.devices.filter(
    ({ id }) => built.places[id] && standsAsBuilt(id, built, around.devices),
  );
  return {
    links: held,
    held: { revision: built.revision, places: places.map(({ id }) => id), reels, lengths },
  };
}

function isBetween({ from, to }: Link, wire: { readonly from: string; readonly to: string }): boolean {
  return `${from.device}.${from.terminal}` === wire.from && `${to.device}.${to.terminal}` === wire.to;
}

/** True for a device that is what it was, where it was. */
function standsAsBuilt(id: string, built: BuiltJob, devices: readonly Device[]): boolean {
  const device = devices.find((one) => one.id === id);
  if (!device || id === bodyId || device.origin === 'vehicle') return device !== undefined;
  const before = built.items[id];
  if (!before || before.part !== device.part || before.board !== device.board || before.seat !== device.seat)
    return false;
  const [place, at] = [built.places[id], device.given?.at];
  if (!place) return device.board === null;
  return (
    at !== undefined &&
    Math.hypot(at.x - place.xM, at.y - place.yM) <= sameM &&
    (device.given?.turn ?? 0) === place.turnDeg
  );
}
