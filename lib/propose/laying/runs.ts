import type { JobLink } from '../../model/content/job.ts';
import { bodyId, linkEndOf } from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import { roleBetween } from '../../model/ports/conductor-roles.ts';
import { listed } from '../../model/printed/listed.ts';
import type { ConductorRole, TerminalRole, VehicleSide } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';
import { pairOf } from '../draft/draft-device.ts';
import { lengthOver, lengthWithin } from '../draft/shop-lengths.ts';
import {
  directRoutes,
  endsOf,
  isOnePlace,
  reachedFrom,
  routesBetween,
  type Way,
  type Whereabouts,
} from '../draft/ways.ts';
import { batteriesOf } from '../supply/battery-places.ts';

/** What a link carries, by the terminals at its ends. */
export function linkRole(draft: Draft, link: { readonly from: string; readonly to: string }): ConductorRole {
  return roleBetween([link.from, link.to].flatMap((reference) => roleAt(draft, reference) ?? []));
}

/** True for a link, by its id, that is there and carries what is asked for. */
export function carries(draft: Draft, id: string, role: ConductorRole): boolean {
  const link = draft.links[id];
  return link !== undefined && linkRole(draft, link) === role;
}

function roleAt(draft: Draft, reference: string): TerminalRole | null {
  const { device: id, terminal: name } = linkEndOf(reference);
  if (id === bodyId) return 'body';
  const device = draft.device(id);
  const [first = name] = (device && pairOf(device, name)) ?? [name.split('|')[0] ?? name];
  return device?.facts.terminals[first]?.role ?? null;
}

/**
 * Of several routes that serve: for power that of the battery's side, for signal one that carries no power, else the
 * shortest. Common practice, no source.
 */
export function pickRoute(
  routes: readonly Way[],
  role: ConductorRole,
  batterySide: VehicleSide,
  withPower: ReadonlySet<string> = new Set(),
): Way | null {
  if (role === 'power') return routes.find(({ route }) => route.side === batterySide) ?? routes[0] ?? null;
  if (role === 'ground') return routes[0] ?? null;
  return routes.find(({ ways }) => !ways.some(({ id }) => withPower.has(id))) ?? routes[0] ?? null;
}

/** Has every link that leaves its board or lies in the vehicle go by a route: links of one route are one run. */
export function layRuns(draft: Draft): void {
  const inRuns = new Set(Object.values(draft.runs).flatMap(({ links }) => links));
  const open = Object.entries(draft.links).filter(
    ([id, link]) =>
      !inRuns.has(id) &&
      link.length === undefined &&
      link.branch === undefined &&
      // Nobody knows which place lies so far along another run.
      (link.joint?.after === undefined || link.joint.at !== undefined),
  );
  const side = batteriesOf(draft).starter?.side ?? 'middle';
  const byRoute = new Map<string, { readonly way: Way; readonly links: string[] }>();
  const withPower = new Set<string>();
  const inTurn = open.toSorted(([, a], [, b]) => Number(isPower(draft, b)) - Number(isPower(draft, a)));
  for (const [id, link] of inTurn) {
    const way = routeOf(draft, id, link, side, withPower);
    if (way === null) continue;
    if (isPower(draft, link)) for (const { id: route } of way.ways) withPower.add(route);
    byRoute.set(way.id, { way, links: [...(byRoute.get(way.id)?.links ?? []), id] });
  }
  const order = Object.keys(draft.links);
  for (const { way, links } of byRoute.values()) {
    const tied = branchesOf(draft, links, inRuns);
    const sorted = [...links, ...tied].toSorted((a, b) => order.indexOf(a) - order.indexOf(b));
    const first = draft.links[sorted[0] ?? ''];
    const about = first ? linkEndOf(first.to).device : '';
    const routes = way.ways.map((one) => one.id);
    const isChain = routes.length > 1;
    const route = isChain ? routes : way.id;
    const id = draft.freeName(isChain ? chainName(draft, way, first) : way.id, 'run');
    draft.addRun(id, { route, links: sorted }, { rule: 'runs', reason: whyBy(way), cp: true }, about);
  }
}

/** Branches that are written and in no run: one lies in that of the link which it leaves. */
function branchesOf(draft: Draft, links: readonly string[], inRuns: ReadonlySet<string>): readonly string[] {
  return Object.entries(draft.links).flatMap(([id, { branch }]) =>
    branch && links.includes(branch.from) && !inRuns.has(id) ? [id] : [],
  );
}

function whyBy({ id, ways, route }: Way): string {
  return ways.length === 1
    ? `${id} serves both ends`
    : `no one route leads there, and ${listed(ways.map((one) => one.id))} meet: the shortest of such ways, ${Math.round(routeLengthM(route) * 1000)} mm`;
}

/** What a run over several routes is called: by where its ends lie. */
function chainName(draft: Draft, way: Way, link: JobLink | undefined): string {
  const ends = link ? laidBetween(draft, link) : [];
  const names = ends.flatMap((end) => (end ? placeName(draft, end) : []));
  return names.length === 2 ? names.toReversed().join('-to-') : way.ways.map(({ id }) => id).join('-and-');
}

/** The name of a place, of the space of a board, of a device or of a ground point. */
function placeName(draft: Draft, end: Whereabouts): string {
  const name = 'board' in end ? (draft.spaceOf(end.board) ?? end.board) : (end.served[0] ?? '');
  return name.replace(`${bodyId}.`, '');
}

const isPower = (draft: Draft, link: { readonly from: string; readonly to: string }) =>
  linkRole(draft, link) === 'power';

/** The route of a link; null where it needs none, or where that was told or asked. */
function routeOf(
  draft: Draft,
  id: string,
  link: JobLink,
  side: VehicleSide,
  withPower: ReadonlySet<string>,
): Way | null {
  const [one, other] = laidBetween(draft, link);
  if (!one || !other) return null;
  if (isOnePlace(one, other)) {
    if (!('board' in one)) beside(draft, id, 'both ends stand in one place');
    return null;
  }
  const isNear = isTail(draft, link) || isToBody(link);
  const ways = isNear ? directRoutes(draft, one, other) : routesBetween(draft, one, other);
  const way = pickRoute(ways, linkRole(draft, link), side, withPower);
  if (way && isTail(draft, link)) {
    tailAlong(draft, id, way);
    return null;
  }
  if (way) return way;
  if (isTail(draft, link)) beside(draft, id, 'no route of the vehicle tells its length');
  else if (isToBody(link)) groundLead(draft, id);
  else askForRoute(draft, id, link, [one, other]);
  return null;
}

/** Where the wire of a link begins and ends: one that is joined to another on its way begins there. */
function laidBetween(draft: Draft, link: Pick<JobLink, 'from' | 'to' | 'joint'>) {
  const [one, other] = endsOf(draft, link);
  const { at, with: name = '' } = link.joint ?? {};
  const trunk = draft.links[name];
  if (at === undefined || !trunk) return [one, other] as const;
  const isShared = [trunk.from, trunk.to].includes(link.from);
  return isShared ? ([{ served: [at] }, other] as const) : ([one, { served: [at] }] as const);
}

/** A link between a battery and what stands beside it. */
function isTail(draft: Draft, { from, to }: { readonly from: string; readonly to: string }): boolean {
  const devices = [from, to].map((reference) => draft.device(linkEndOf(reference).device));
  const battery = devices.find((one) => one?.spec.kind === 'battery');
  const other = devices.find((one) => one !== battery);
  return (
    battery != null && other?.seat != null && draft.around.vehicle.places[other.seat]?.zone === battery.zone
  );
}

const isToBody = ({ from, to }: { readonly from: string; readonly to: string }) =>
  [from, to].some((reference) => linkEndOf(reference).device === bodyId);

/** The tail of a battery is cut as long as its way: it is laid without loops, since its fuse stands so near. */
function tailAlong(draft: Draft, id: string, { id: route, route: way }: Way): void {
  if (!draft.isProposed('links', id)) return;
  draft.refineLink(id, { length: lengthOver(draft.around, routeLengthM(way)) }, `as long as ${route}`);
}

/** A length that nobody measured: as far as the first fuse may stand from its battery. */
function beside(draft: Draft, id: string, reason: string): void {
  assume(draft, id, draft.around.rules['fuse-distance-good'].value, reason);
}

/** A ground lead whose way the vehicle does not tell: the longest that the house rules allow. */
function groundLead(draft: Draft, id: string): void {
  assume(
    draft,
    id,
    draft.around.rules['ground-lead'].value,
    'no route of the vehicle leads to its ground point',
  );
}

function assume(draft: Draft, id: string, lengthM: number, why: string): void {
  if (!draft.isProposed('links', id)) return;
  draft.refineLink(id, { length: lengthWithin(draft.around, lengthM) }, `${why}: assumed`, 'not-measured');
}

function askForRoute(
  draft: Draft,
  id: string,
  link: JobLink,
  ends: readonly [Whereabouts, Whereabouts],
): void {
  // A cable that is written is as long as it was made.
  if (link.cable !== undefined && !draft.isProposed('links', id)) return;
  const { vehicle } = draft.around;
  const [from, to] = [placeName(draft, ends[0]), placeName(draft, ends[1])];
  const message = `no way of ${vehicle.id} leads from ${from} to ${to}, nor do several that meet`;
  const same = `no way of ${vehicle.id} leads from ${to} to ${from}, nor do several that meet`;
  const at = draft.undecided.findIndex((each) => [message, same].includes(each.message));
  const told = draft.undecided[at];
  if (told) {
    draft.undecided[at] = { ...told, links: [...(told.links ?? []), id] };
    return;
  }
  const device = [link.to, link.from].map((end) => linkEndOf(end).device).find((name) => name !== bodyId);
  const path = draft.isProposed('links', id) ? ['devices', device ?? ''] : ['links', id];
  draft.ask(path, message, missingWay(draft, ends), [id]);
}

/** The way that would lead from one place to another, as a file has it: nobody measured it, so its length is asked for. */
function missingWay(draft: Draft, ends: readonly [Whereabouts, Whereabouts]): string {
  const { vehicle, shop } = draft.around;
  const [start, goal] = 'board' in ends[0] ? [ends[1], ends[0]] : ends;
  const [from, to] = [placeName(draft, start), placeName(draft, goal)];
  const place = vehicle.places[from] ?? vehicle.fitted[from];
  const [zone, side] = [place?.zone ?? 'cabin', place?.side ?? 'middle'];
  const measured = `${zone} ${shop.units === 'inch' ? '40 in' : '1000 mm'}`;
  const edge = side === 'middle' ? 'left' : side;
  const isToBoard = 'board' in goal;
  const leads = isToBoard
    ? `ends: [${from}], reaches: { space: ${to}, edge: ${edge} }`
    : `ends: [${from}, ${to}]`;
  const row = `${from}, ${isToBoard ? `${to} ${edge} edge` : to}, ${side}, ${measured}`;
  const meeting = 'served' in start ? [...reachedFrom(draft, start.served).keys()].slice(1) : [];
  const others =
    meeting.length > 0
      ? `; one that begins at ${listed(meeting, 'or')} does as well, with its own stretches alone, since ways meet there`
      : '';
  return `measure the way from ${from} to ${to} and write it under routes: of ${vehicle.id}, such as ${from}-to-${to}: { side: ${side}, ${leads}, passes: [${measured}] }, or as a row of new vehicle, --way "${row}"${others}; or write runs: here`;
}
