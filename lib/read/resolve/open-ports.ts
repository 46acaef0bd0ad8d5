import type { JobFile } from '../../model/content/job.ts';
import type { Device } from '../../model/content/resolved-job.ts';
import { matchesPattern, patternNames, portLikeness } from '../../model/ports/port-pattern.ts';
import type { Report } from '../report.ts';

/** An end that the job leaves open: the port that it has for now, and all that would do. */
export interface OpenPort {
  readonly terminal: string;
  readonly ports: readonly string[];
}

/** Hands out the ports that links name by a pattern, such as `ground-bar.G2|G3`: each once, the first free one first. */
export class OpenPorts {
  readonly #taken: Set<string>;
  readonly #handedOut = new Set<string>();

  /** What a link, a reason to stay open or a fuse names outright is not handed out. */
  constructor(job: JobFile) {
    const links = Object.values(job.links).flatMap(({ from, to }) => [from, to]);
    const fused = Object.entries(job.devices).flatMap(([id, { fuses }]) =>
      Object.keys(fuses).map((way) => `${id}.${way}`),
    );
    this.#taken = new Set([...links, ...Object.keys(job['left-open']), ...fused]);
  }

  /** A port for one end of a link; null, and told, where the pattern names none, unlike ones, or none is free. */
  take(path: readonly string[], device: Device, pattern: string, report: Report): OpenPort | null {
    const names = Object.keys(device.facts.terminals);
    if (pattern.split('|').includes('')) {
      report.at(
        path,
        `no port of ${device.id} is named beside a stroke`,
        'write the names of like ports with a stroke between them, such as OUT1|OUT2',
      );
      return null;
    }
    const unknown = patternNames(pattern).find((name) => !names.some((one) => matchesPattern(name, one)));
    if (unknown !== undefined) {
      report.unknown(path, `terminal of ${device.id}`, unknown, names);
      return null;
    }
    const ports = names.filter((name) => matchesPattern(pattern, name) && !this.#isNamed(device, name));
    const kinds = new Map(ports.map((name) => [likeness(device, name), name]));
    if (kinds.size > 1) {
      report.at(
        path,
        `${device.id}.${pattern} stands for unlike ports, ${[...kinds.values()].join(' and ')}: only ports of one role, size, current and fuse may be exchanged`,
        'name the like ones with a stroke between them, such as OUT1|OUT2',
      );
      return null;
    }
    const terminal = ports.find((name) => !this.#taken.has(`${device.id}.${name}`));
    if (terminal === undefined) {
      report.at(
        path,
        `no port of ${device.id}.${pattern} is free: ${ports.length === 0 ? 'each is named elsewhere' : `${ports.join(', ')} are taken`}`,
        'use a part with more ports, or name another port',
      );
      return null;
    }
    this.#taken.add(`${device.id}.${terminal}`);
    this.#handedOut.add(`${device.id}.${terminal}`);
    return { terminal, ports };
  }

  #isNamed(device: Device, name: string): boolean {
    const id = `${device.id}.${name}`;
    return this.#taken.has(id) && !this.#handedOut.has(id);
  }
}

function likeness({ spec, facts }: Device, name: string): string {
  const form = spec?.kind === 'distribution' ? spec['fused-ways'][name]?.['fuse-form'] : undefined;
  return portLikeness(facts.terminals[name], form);
}
