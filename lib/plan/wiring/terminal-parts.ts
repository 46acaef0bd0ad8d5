import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { Part, PartOf } from '../../model/kinds/index.ts';
import { entersPort } from './joints.ts';

/** What goes on an end. */
export type TerminalForm = PartOf<'terminal'>['form'];

/** The catalogue's terminal of a form for a conductor: the one with the narrowest range that takes it. */
export function terminalPart(
  parts: Readonly<Record<string, Part>>,
  form: TerminalForm,
  areaMm2: number,
  stud: string | undefined,
): string | null {
  const fitting = partsOfKind(parts, 'terminal')
    .flatMap(([id, part]) => (part.form === form ? [{ id, part }] : []))
    .filter(
      ({ part }) => areaMm2 >= part.takes.from.areaMm2 / 1.001 && areaMm2 <= part.takes.to.areaMm2 * 1.001,
    )
    .filter(({ part }) => form !== 'ring-lug' || part.stud === stud)
    .toSorted((a, b) => a.part.takes.to.areaMm2 - b.part.takes.to.areaMm2 || (a.id < b.id ? -1 : 1));
  return fitting[0]?.id ?? null;
}

/**
 * True where a conductor of a size finds fewer lugs of the catalogue for the studs at its ends than one of another size
 * does: what can't be ended is not proposed in the place of what can.
 */
export function losesLug(
  job: Pick<Job, 'parts' | 'links' | 'devices'>,
  link: Link,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  const studs = [link.from, link.to].flatMap((end) => {
    const spec = job.devices.find(({ id }) => id === end.device)?.facts.terminals[end.terminal];
    return spec?.stud !== undefined && entersPort(job, link, end) ? [spec.stud] : [];
  });
  const has = (areaMm2: number, stud: string) => terminalPart(job.parts, 'ring-lug', areaMm2, stud) !== null;
  return studs.some((stud) => has(from, stud) && !has(to, stud));
}
