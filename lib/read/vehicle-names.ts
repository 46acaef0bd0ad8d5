import type { Part } from '../model/kinds/index.ts';
import { partFacts } from '../model/kinds/index.ts';
import { bodyId } from '../model/resolved-job.ts';
import type { Vehicle } from '../model/vehicle.ts';
import { checkOutputs } from './audio-names.ts';
import type { Report } from './report.ts';

/** Looks up every name that a vehicle file uses: its parts, the ends of its links, the spaces of its routes. */
export function vehicleNames(vehicle: Vehicle, parts: Readonly<Record<string, Part>>, report: Report): void {
  for (const [id, fitted] of Object.entries(vehicle.fitted)) {
    if (id === bodyId)
      report.atKey(['fitted', id], `"${bodyId}" is the vehicle's body: call the device something else`);
    report.look(['fitted', id, 'part'], 'part', fitted.part, parts);
  }
  checkOutputs(vehicle, parts, report);
  for (const [id, link] of Object.entries(vehicle.links)) {
    for (const end of ['from', 'to'] as const)
      vehicleTerminal(vehicle, parts, link[end], ['links', id, end], report);
  }
  for (const [id, route] of Object.entries(vehicle.routes)) {
    if (route.reaches)
      report.look(['routes', id, 'reaches', 'space'], 'space', route.reaches.space, vehicle.spaces);
  }
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
  const fitted = report.look(path, 'fitted device', device, vehicle.fitted);
  const part = fitted ? parts[fitted.part] : undefined;
  if (part) report.look(path, `terminal of ${device}`, terminal, partFacts(part).terminals);
}
