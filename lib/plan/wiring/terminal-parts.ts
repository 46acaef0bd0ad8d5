import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { Part, PartOf } from '../../model/kinds/index.ts';
import { entersPort } from './joints.ts';

/** What goes on an end. */
export type TerminalForm = PartOf<'terminal'>['form'];

/** What a terminal of the catalogue goes on: a stud, or a blade tab, where its width (m) is told. */
export interface GoesOn {
  readonly stud?: string | undefined;
  readonly tab?: number | undefined;
}

/** Tabs are 2.8, 4.8, 6.3 mm wide or more; told in inches they are a little less or more: two are never so near (m). */
const sameTabM = 2e-4;

/**
 * The catalogue's terminal of a form for a conductor: the one with the narrowest range that takes it. On a tab whose width
 * is told a receptacle of that width alone; on another the widest.
 */
export function terminalPart(
  parts: Readonly<Record<string, Part>>,
  form: TerminalForm,
  areaMm2: number,
  { stud, tab }: GoesOn,
): string | null {
  const fitting = partsOfKind(parts, 'terminal')
    .flatMap(([id, part]) => (part.form === form ? [{ id, part }] : []))
    .filter(
      ({ part }) => areaMm2 >= part.takes.from.areaMm2 / 1.001 && areaMm2 <= part.takes.to.areaMm2 * 1.001,
    )
    .filter(({ part }) => form !== 'ring-lug' || part.stud === stud)
    .filter(
      ({ part }) =>
        form !== 'blade-receptacle' ||
        tab === undefined ||
        (part.tab !== undefined && Math.abs(part.tab - tab) <= sameTabM),
    )
    .toSorted(
      (a, b) =>
        a.part.takes.to.areaMm2 - b.part.takes.to.areaMm2 ||
        (b.part.tab ?? 0) - (a.part.tab ?? 0) ||
        (a.id < b.id ? -1 : 1),
    );
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
  const has = (areaMm2: number, stud: string) =>
    terminalPart(job.parts, 'ring-lug', areaMm2, { stud }) !== null;
  return studs.some((stud) => has(from, stud) && !has(to, stud));
}
