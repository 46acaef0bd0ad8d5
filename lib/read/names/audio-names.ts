import type { JobFile } from '../../model/content/job.ts';
import { type Device, type Link, type Run, sharedTerminal } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import type { TerminalSpecs } from '../../model/kinds/fields/terminal-spec.ts';
import type { Part } from '../../model/kinds/index.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import type { Report } from '../report.ts';
import { withPairs } from '../resolve/resolve-devices.ts';

/** What a device waits for must be a device or a link of the job, and not itself. */
export function checkAfter(file: JobFile, report: Report): void {
  const known = { ...file.links, ...file.devices };
  for (const [id, device] of Object.entries(file.devices)) {
    for (const name of Object.keys(device.after)) {
      const path = ['devices', id, 'after', name];
      report.look<unknown>(path, 'device or link', name, known);
      if (name === id) report.atKey(path, `${id} waits for itself`, 'take the line out');
    }
  }
}

/** A load is asked of a channel that the amplifier has, a mix of the inputs of a processor; polarity is for speakers. */
export function checkAudioFields(devices: readonly Device[], report: Report): void {
  for (const { id, given, spec } of devices) {
    if (!given) continue;
    for (const [output, inputs] of Object.entries(given.mix)) {
      const path = ['devices', id, 'mix', output];
      if (spec?.kind !== 'processor')
        report.atKey(path, `${id} is no processor, so it has no mix`, 'take it out');
      else
        for (const [index, name] of inputs.entries())
          report.look<unknown>([...path, String(index)], `input of ${id}`, name, inputsOf(spec.terminals));
    }
    for (const name of Object.keys(given.loads)) {
      const path = ['devices', id, 'loads', name];
      if (spec?.kind !== 'amplifier')
        report.atKey(path, `${id} is no amplifier, so it has no load`, 'take it out');
      else report.look<unknown>(path, `channel of ${id}`, name, { ...spec.channels, ...spec.bridges });
    }
    if (spec?.kind === 'speaker') continue;
    if (given.level !== undefined)
      report.atKey(
        ['devices', id, 'level'],
        `${id} is no speaker, so it has no level beside others`,
        'take it out',
      );
    if (given.mounted === 'reversed' || given.reversed !== undefined)
      report.at(
        ['devices', id],
        `${id} is no speaker, so it has no polarity`,
        'take mounted: and reversed: out',
      );
  }
}

/** A length of a way in whole millimetres, never above it: what is written so is within the way. */
const mm = (lengthM: number): string => `${Math.floor(lengthM * 1000 + 1e-6)} mm`;

/** A branch shares a terminal and a run with the link that it leaves, and leaves it before its end. */
export function checkBranches(links: readonly Link[], runs: readonly Run[], report: Report): void {
  const nameOf = ({ id }: Link) => linkName(id);
  for (const link of links) {
    const branch = link.given?.branch;
    if (!branch || link.id.endsWith('.-')) continue;
    const path = ['links', nameOf(link), 'branch'];
    const trunks = links.filter((other) => nameOf(other) === branch.from && other !== link);
    const trunk = trunks.find((other) => sharedTerminal(link, other) !== null);
    if (!trunk) {
      report.at(
        [...path, 'from'],
        `${nameOf(link)} shares no terminal with "${branch.from}"`,
        'name a link that begins at the same terminal',
      );
      continue;
    }
    const run = runs.find(({ id }) => id === trunk.run);
    const runM = run && routeLengthM(run.route);
    if (!run || runM === undefined || link.run !== trunk.run)
      report.at(path, `${nameOf(link)} and ${branch.from} lie in no common run`, 'name both in one run');
    else if (branch.after > runM)
      report.at(
        [...path, 'after'],
        `${nameOf(link)} is to part after ${Math.ceil(branch.after * 1000 - 1e-6)} mm, but the run ${run.id} is ${mm(runM)} long`,
        `measure the distance from the shared terminal along the run, and write after: ${mm(runM)} or less`,
      );
  }
}

/** The outputs of a source are named by its terminals or pairs. */
export function checkOutputs(vehicle: Vehicle, parts: Readonly<Record<string, Part>>, report: Report): void {
  for (const [id, { part, outputs }] of Object.entries(vehicle.fitted)) {
    const spec = parts[part];
    for (const name of Object.keys(outputs)) {
      const path = ['fitted', id, 'outputs', name];
      if (!spec) continue;
      if (spec.kind === 'source-unit')
        report.look<unknown>(path, `output of ${id}`, name, withPairs(spec.terminals));
      else report.atKey(path, `${id} is no source unit, so it has no outputs`, 'take it out');
    }
  }
}

/** Inputs of a signal, by terminal or pair. */
function inputsOf(terminals: TerminalSpecs): Record<string, true> {
  const names = terminalsOf(terminals, 'signal-in', 'speaker-in-positive', 'speaker-in-negative');
  return withPairs(
    Object.fromEntries(
      names.flatMap((name) => {
        const terminal = terminals[name];
        return terminal ? [[name, terminal]] : [];
      }),
    ),
  );
}
