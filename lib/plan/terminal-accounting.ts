import { bodyId, type Device, type Job, terminalId } from '../model/content/resolved-job.ts';
import type { PlanTerminal } from '../model/plan/index.ts';
import { reasonLeftOpen } from '../model/ports/port-pattern.ts';
import { boxLeads } from './audio/box-leads.ts';

/** Accounts for every terminal: connected, open with a reason, or neither, which the rules stop. */
export function accountTerminals(job: Job): PlanTerminal[] {
  const wires = new Map<string, string[]>();
  for (const link of job.links) {
    for (const end of [link.from, link.to]) {
      const id = terminalId(end);
      wires.set(id, [...(wires.get(id) ?? []), link.id]);
    }
  }
  const leads = boxLeads(job);
  const byLead = (device: Device, terminal: string): string | undefined =>
    leads.find(
      ({ box, speaker, post, end }) =>
        speaker === device.id && end === terminal && wires.has(terminalId({ device: box, terminal: post })),
    )?.box;
  const touched = new Set(job.links.flatMap(({ from, to }) => [from.device, to.device]));
  return job.devices
    .filter(({ id, origin }) => id !== bodyId && (origin === 'job' || touched.has(id)))
    .flatMap((device) =>
      Object.keys(device.facts.terminals).map((name) =>
        accountTerminal(device, name, { job, wires, box: byLead(device, name) }),
      ),
    );
}

function accountTerminal(
  device: Device,
  terminal: string,
  {
    job,
    wires,
    box,
  }: {
    readonly job: Job;
    readonly wires: ReadonlyMap<string, readonly string[]>;
    /** The box whose own lead is joined to it. */
    readonly box: string | undefined;
  },
): PlanTerminal {
  const id = terminalId({ device: device.id, terminal });
  const own = [...(wires.get(id) ?? [])].sort();
  const base = { item: device.id, terminal, wires: own };
  const reason = reasonLeftOpen(job.file['left-open'], device.id, terminal) ?? device.leftOpen[terminal];
  if (own.length > 0) return { ...base, state: 'connected', ...(reason === undefined ? {} : { reason }) };
  if (box !== undefined) return { ...base, state: 'connected', reason: `joined to the lead inside ${box}` };
  if (reason !== undefined) return { ...base, state: 'open', reason };
  if (device.origin === 'vehicle') return { ...base, state: 'open', reason: 'left as the vehicle came' };
  return { ...base, state: 'unaccounted' };
}
