import { bodyId, linkEndOf } from '../../model/content/resolved-job.ts';
import { routeLengthM, servedBy } from '../../model/content/vehicle-route.ts';
import { roleBetween } from '../../model/ports/conductor-roles.ts';
import type { ConductorRole, TerminalRole, VehicleSide } from '../../model/vocabulary.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { pairOf } from '../draft/draft-device.ts';
import { lengthOver, lengthWithin } from '../draft/shop-lengths.ts';
import { endsOf, isOnePlace, type NamedRoute, routesBetween } from '../draft/ways.ts';
import { batteriesOf } from '../supply/battery-places.ts';

/** What a link carries, by the terminals at its ends. */
export function linkRole(draft: Draft, link: { readonly from: string; readonly to: string }): ConductorRole {
  return roleBetween([link.from, link.to].flatMap((reference) => roleAt(draft, reference) ?? []));
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
  routes: readonly NamedRoute[],
  role: ConductorRole,
  batterySide: VehicleSide,
  withPower: ReadonlySet<string> = new Set(),
): NamedRoute | null {
  if (role === 'power') return routes.find(({ route }) => route.side === batterySide) ?? routes[0] ?? null;
  if (role === 'ground') return routes[0] ?? null;
  return routes.find(({ id }) => !withPower.has(id)) ?? routes[0] ?? null;
}

/** Has every link that leaves its board or lies in the vehicle go by a route: links of one route are one run. */
export function layRuns(draft: Draft): void {
  const inRuns = new Set(Object.values(draft.runs).flatMap(({ links }) => links));
  const open = Object.entries(draft.links).filter(
    ([id, link]) => !inRuns.has(id) && link.length === undefined && link.branch === undefined,
  );
  const side = batteriesOf(draft).starter?.side ?? 'middle';
  const byRoute = new Map<string, string[]>();
  const withPower = new Set<string>();
  const inTurn = open.toSorted(([, a], [, b]) => Number(isPower(draft, b)) - Number(isPower(draft, a)));
  for (const [id, link] of inTurn) {
    const route = routeOf(draft, id, link, side, withPower);
    if (route === null) continue;
    if (isPower(draft, link)) withPower.add(route);
    byRoute.set(route, [...(byRoute.get(route) ?? []), id]);
  }
  const order = Object.keys(draft.links);
  for (const [route, links] of byRoute) {
    const sorted = links.toSorted((a, b) => order.indexOf(a) - order.indexOf(b));
    const id = draft.freeName(route, 'run');
    const first = draft.links[sorted[0] ?? ''];
    const about = first ? linkEndOf(first.to).device : '';
    const why: Why = { rule: 'runs', reason: `${route} serves both ends`, cp: true };
    draft.addRun(id, { route, links: sorted }, why, about);
  }
}

const isPower = (draft: Draft, link: { readonly from: string; readonly to: string }) =>
  linkRole(draft, link) === 'power';

/** The route of a link; null where it needs none, or where that was told or asked. */
function routeOf(
  draft: Draft,
  id: string,
  link: { readonly from: string; readonly to: string },
  side: VehicleSide,
  withPower: ReadonlySet<string>,
): string | null {
  const [one, other] = endsOf(draft, link);
  if (!one || !other) return null;
  if (isOnePlace(one, other)) {
    if (!('board' in one)) beside(draft, id, 'both ends stand in one place');
    return null;
  }
  const route = pickRoute(routesBetween(draft, one, other), linkRole(draft, link), side, withPower);
  if (route && isTail(draft, link)) {
    tailAlong(draft, id, route);
    return null;
  }
  if (route) return route.id;
  if (isTail(draft, link)) beside(draft, id, 'no route of the vehicle tells its length');
  else if (isToBody(link)) groundLead(draft, id);
  else askForRoute(draft, id, link);
  return null;
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
function tailAlong(draft: Draft, id: string, { id: route, route: way }: NamedRoute): void {
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

function askForRoute(draft: Draft, id: string, link: { readonly from: string; readonly to: string }): void {
  if (!draft.isProposed('links', id)) return;
  const { vehicle } = draft.around;
  const [one, other] = endsOf(draft, link);
  const name = (end: typeof one) =>
    end === null ? '' : 'board' in end ? (draft.spaceOf(end.board) ?? end.board) : (end.served[0] ?? '');
  const [from, to] = [name(one), name(other)];
  const near = Object.entries(vehicle.routes).filter(([, route]) =>
    [from, to].some((end) => servedBy(route).includes(end) || route.reaches?.space === end),
  );
  const message = `no route of ${vehicle.id} serves ${to} from ${from}`;
  if (draft.undecided.some((each) => each.message === message)) return;
  const [nearest] = near.toSorted(([, a], [, b]) => routeLengthM(a) - routeLengthM(b));
  draft.ask(
    [
      'devices',
      linkEndOf(link.to).device === bodyId ? linkEndOf(link.from).device : linkEndOf(link.to).device,
    ],
    message,
    `write serves: at the route${nearest ? `, such as ${nearest[0]},` : ''} in the vehicle, or runs: here`,
  );
}
