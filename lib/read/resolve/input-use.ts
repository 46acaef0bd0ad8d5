import type { JobDevice } from '../../model/content/job.ts';
import type { Part } from '../../model/kinds/index.ts';
import type { Report } from '../report.ts';

/** What a job says of the inputs of an amplifier is what its part says that they can. */
export function checkInputUse(id: string, given: JobDevice, part: Part, report: Report): void {
  if (part.kind !== 'amplifier') {
    for (const key of ['speaker-level', 'summed-inside'] as const)
      for (const index of given[key].keys())
        report.at(
          ['devices', id, key, String(index)],
          `${id} is no amplifier (${part.kind})`,
          `take ${key}: out`,
        );
    return;
  }
  for (const [index, name] of given['speaker-level'].entries()) {
    const path = ['devices', id, 'speaker-level', String(index)];
    const terminal = report.look(path, `terminal of ${id}`, name, part.terminals);
    if (terminal && !terminal['speaker-level'])
      report.at(
        path,
        `${given.part} does not say that ${name} takes speaker level`,
        `where its leaflet does, write speaker-level: { to: 12 V } with the voltage of the leaflet at ${name} in the part ${given.part}`,
      );
  }
  for (const [index, name] of given['summed-inside'].entries()) {
    const path = ['devices', id, 'summed-inside', String(index)];
    const channel = report.look(path, `channel of ${id}`, name, part.channels);
    if (channel && channel['also-takes'].length === 0)
      report.at(
        path,
        `${given.part} does not say that its channel ${name} takes other inputs inside`,
        `where its leaflet does, write also-takes: with these inputs at the channel ${name} in the part ${given.part}`,
      );
  }
}
