import { bodyId, groundRefs } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { Part } from '../../model/kinds/index.ts';
import { partFacts } from '../../model/kinds/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import type { Report } from '../report.ts';
import { checkOutputs } from './audio-names.ts';
import { lookPart } from './look-part.ts';

/** Looks up every name that a vehicle file uses: its parts, the ends of its links, the spaces of its routes. */
export function vehicleNames(vehicle: Vehicle, parts: Readonly<Record<string, Part>>, report: Report): void {
  for (const [id, fitted] of Object.entries(vehicle.fitted)) {
    if (id === bodyId)
      report.atKey(['fitted', id], `"${bodyId}" is the vehicle's body: call the device something else`);
    const part = lookPart(report, ['fitted', id, 'part'], fitted.part, parts, 'mounted');
    if (part) {
      fittedFuses(id, fitted.fuses, part, report);
      for (const name of Object.keys(fitted['left-open']))
        report.look<unknown>(
          ['fitted', id, 'left-open', name],
          `terminal of ${id}`,
          name,
          partFacts(part).terminals,
        );
    }
  }
  checkOutputs(vehicle, parts, report);
  for (const [id, link] of Object.entries(vehicle.links)) {
    for (const end of ['from', 'to'] as const)
      vehicleTerminal(vehicle, parts, link[end], ['links', id, end], report);
    if (link.from === link.to)
      report.at(
        ['links', id, 'to'],
        `${id} joins ${link.from} to itself`,
        'name the terminal at its other end',
      );
  }
  for (const [id, { right, upward }] of Object.entries(vehicle.spaces))
    if (axisOf[right] === axisOf[upward])
      report.at(
        ['spaces', id, 'upward'],
        `right and upward of ${id} lie along one line: ${right} and ${upward}`,
        'write where the right-hand side of the board points, and where its upper edge points',
      );
  for (const [id, route] of Object.entries(vehicle.routes)) {
    if (route.reaches) {
      report.look(['routes', id, 'reaches', 'space'], 'space', route.reaches.space, vehicle.spaces);
      comesInOnEdge(vehicle, id, route.reaches, report);
    }
    for (const [index, end] of (route.ends ?? []).entries())
      routeEnd(vehicle, end, ['routes', id, 'ends', String(index)], report);
    for (const [index, name] of (route.serves ?? []).entries())
      report.look<unknown>(
        ['routes', id, 'serves', String(index)],
        'place, fitted device or ground point',
        name,
        {
          ...vehicle.fitted,
          ...vehicle.places,
          ...Object.fromEntries(groundRefs(Object.keys(vehicle.grounds)).map((ref) => [ref, true])),
        },
      );
  }
}

/** Where a route comes in lies on the edge that it names. */
function comesInOnEdge(
  { spaces }: Vehicle,
  id: string,
  { space: name, edge, at }: NonNullable<Vehicle['routes'][string]['reaches']>,
  report: Report,
): void {
  const space = spaces[name];
  if (!space || at === undefined) return;
  const isLevel = edge === 'top' || edge === 'bottom';
  const mostM = Math.max(...space.outline.map(([xM, yM]) => (isLevel ? xM : yM)));
  if (at > mostM + 1e-9)
    report.at(
      ['routes', id, 'reaches', 'at'],
      `the ${edge} edge of ${name} ends before it`,
      `measure it along that edge ${isLevel ? 'from the left' : 'from below'}, or leave at: out`,
    );
}

/** A place or a fitted device where wires leave a route; a ground point lies along it, under `serves`. */
function routeEnd(vehicle: Vehicle, end: string, path: readonly string[], report: Report): void {
  const grounds = groundRefs(Object.keys(vehicle.grounds));
  const [meant] = groundRefs([end]);
  if (meant !== undefined && grounds.includes(meant) && !(end in vehicle.fitted || end in vehicle.places))
    report.at(
      path,
      `${end} is a ground point, and is called ${meant}`,
      `write ${meant} in its place, under serves: of the route`,
    );
  else
    report.look<unknown>(
      path,
      'place or fitted device',
      end,
      { ...vehicle.fitted, ...vehicle.places },
      grounds.length === 0 ? undefined : `a ground point, which is called ${grounds.join(' or ')}`,
    );
}

/** The line that a direction lies along. */
const axisOf = {
  front: 'along',
  rear: 'along',
  left: 'across',
  right: 'across',
  up: 'upright',
  down: 'upright',
} as const;

/** Ratings are read off a holder, under `fuse`, or off the fused ways of a block. */
function fittedFuses(
  id: string,
  fuses: Vehicle['fitted'][string]['fuses'],
  part: Part,
  report: Report,
): void {
  const ways =
    part.kind === 'fuse-holder' ? { fuse: true } : part.kind === 'distribution' ? part['fused-ways'] : null;
  for (const name of Object.keys(fuses)) {
    const path = ['fitted', id, 'fuses', name];
    if (ways) {
      report.look<unknown>(path, `fuse of ${id}`, name, ways);
      checkMade(path, fuses[name], part, name, report);
    } else report.atKey(path, `${id} holds no fuse (${part.kind})`, 'take the line out');
  }
}

/** A fuse that was read off is of a rating that is made in its form. */
function checkMade(
  path: readonly string[],
  ratingA: number | undefined,
  part: Part,
  name: string,
  report: Report,
): void {
  const form =
    part.kind === 'fuse-holder'
      ? part['fuse-form']
      : part.kind === 'distribution'
        ? part['fused-ways'][name]?.['fuse-form']
        : undefined;
  if (form === undefined || ratingA === undefined) return;
  const { name: formName, ratingsA } = fuseForms[form];
  if (!ratingsA.includes(ratingA))
    report.at(
      path,
      `${ratingA} A is no rating that ${formName} fuses are made for (${ratingsA.join(', ')})`,
      'read it off the fuse again; colour and print both tell it',
    );
}

function vehicleTerminal(
  vehicle: Vehicle,
  parts: Readonly<Record<string, Part>>,
  reference: string,
  path: readonly string[],
  report: Report,
): void {
  const dot = reference.indexOf('.');
  const device = reference.slice(0, dot);
  const terminal = reference.slice(dot + 1);
  if (device === bodyId) {
    report.look(path, 'ground point', terminal, vehicle.grounds);
    return;
  }
  const [ground] = Object.keys(vehicle.grounds);
  const orElse =
    ground === undefined ? undefined : `a ground point is body. with its name, such as body.${ground}`;
  const fitted = report.look(path, 'fitted device', device, vehicle.fitted, orElse);
  const part = fitted ? parts[fitted.part] : undefined;
  if (part) report.look(path, `terminal of ${device}`, terminal, partFacts(part).terminals);
}
