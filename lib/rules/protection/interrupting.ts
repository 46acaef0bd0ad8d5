import type { ActingLevel } from '../../model/finding.ts';
import { defaultSource, type Source } from '../../model/findings/source.ts';
import type { PlanFuse } from '../../model/plan/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { flowText } from '../../read/yaml/write-value.ts';
import { deviceIdOf, deviceOf, fuseSpot, partOf } from '../look-up.ts';
import type { Case, Rule, RuleOf, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed } from '../words.ts';
import { unfusedWays } from './fuse-at-source.ts';
import { alternativesText, fuseOfCatalogueFirst } from './fuse-rating.ts';

/** The batteries and capacitor banks that reach each fuse without another before it, by the fuse's id. */
export function batteriesBare(about: Case): (fuse: PlanFuse) => readonly string[] {
  const ways = unfusedWays(about);
  return ({ id, source }) => {
    const own = ways.filter(({ fuse }) => fuse === id).map((way) => deviceIdOf(way.source));
    return [...new Set([...own, ...(source === null ? [] : [source])])].filter((device) => {
      const kind = deviceOf(about.job, device)?.spec?.kind;
      return kind === 'battery' || kind === 'capacitor-bank';
    });
  };
}

/** What a fuse interrupts, and by whom. */
export function interruptsText(
  { id, form, interruptA, interruptBasis }: PlanFuse,
  ids: readonly string[] = [id],
): string {
  const one = ids.length === 1;
  const fuse = `the ${fuseForms[form].name} ${one ? 'fuse' : 'fuses'} ${listed(ids)}`;
  if (interruptA === null) return `it is not known what fault current ${fuse} interrupts`;
  const silent =
    interruptBasis === 'maker'
      ? ''
      : `, as ${one ? 'a fuse of its form' : 'fuses of their form'} whose maker is silent`;
  return `${fuse} ${one ? 'interrupts' : 'interrupt'} ${amps(interruptA)}${silent}`;
}

const bases = { maker: 'by its maker', stated: 'by its resistance', assumed: 'assumed' } as const;

/** What a dead short drives through a fuse, and what each source gives of it. */
export function shortText({ job }: Case, { faultA, faultFrom = [], faultUnknown = [] }: PlanFuse): string {
  const each = faultFrom.map(
    // Of a bank its maker states the resistance; the current follows from it.
    ({ source, currentA, basis }) =>
      `${ampsDrawn(currentA)} from ${source} (${deviceOf(job, source)?.spec?.kind === 'capacitor-bank' ? bases.stated : bases[basis]})`,
  );
  const give = faultUnknown.length === 1 ? 'gives' : 'give';
  const past =
    faultUnknown.length > 0 ? `, and what ${listed(faultUnknown)} ${give}, which nobody states` : '';
  return `a dead short drives about ${ampsDrawn(faultA ?? 0)} through it${each.length > 0 ? `: ${listed(each)}` : ''}${past}`;
}

/** The lithium batteries among some, with those of them whose maker's short-circuit current is not stated. */
function lithiumAmong(about: Case, batteries: readonly string[]) {
  const all = batteries.filter((id) => {
    const spec = deviceOf(about.job, id)?.spec;
    return spec?.kind === 'battery' && spec.chemistry === 'lithium';
  });
  const silent = all.filter((id) => {
    const spec = deviceOf(about.job, id)?.spec;
    return spec?.kind === 'battery' && spec['short-circuit'] === undefined;
  });
  return { all, silent };
}

interface Judged {
  readonly level: ActingLevel;
  readonly message: string;
  readonly remedy: string;
  readonly cited?: Source;
}

/** Lithium gives several kiloamperes: where a maker's figure is missing nothing is taken for granted. */
function judgeLithium(about: Case, fuse: PlanFuse, batteries: readonly string[]): Judged | null {
  const { all, silent } = lithiumAmong(about, batteries);
  const isRated = fuse.interruptA !== null && fuse.interruptBasis === 'maker';
  if (all.length === 0 || (silent.length === 0 && isRated)) return null;
  const missing = [
    ...silent.map((id) => `the short-circuit current of ${id}`),
    ...(isRated ? [] : [`what the ${fuseForms[fuse.form].name} fuse ${fuse.id} interrupts`]),
  ];
  const write = [
    ...(silent.length > 0 ? ["short-circuit: in the battery's part"] : []),
    ...(isRated ? [] : ["interrupts: in the fuse's part"]),
  ];
  return {
    level: 'stop',
    message: `${listed(all)} before the fuse ${fuse.id} is lithium and may give several kA into a short, but no maker's figure states ${listed(missing)}`,
    remedy: `write ${listed(write)}, as their makers print them; ${alternativesText(about, fuse.alternatives)}${holderToWrite(about, fuse)}`,
  };
}

/** A fuse with figures, held against the short. */
function judgeFigures(about: Case, fuse: PlanFuse, batteries: readonly string[]): Judged | null {
  const { interruptA, needsInterruptA, faultA = null, faultByMakersA = 0 } = fuse;
  if (needsInterruptA === null || (interruptA !== null && interruptA >= needsInterruptA)) return null;
  const byTable = needsInterruptA > (faultA ?? 0);
  const cranking = batteries.flatMap((id) => {
    const spec = deviceOf(about.job, id)?.spec;
    const crankingA = spec?.kind === 'battery' ? spec['cold-cranking'] : undefined;
    return crankingA === undefined ? [] : [`${id} with ${amps(crankingA)} of cold cranking`];
  });
  const asked = `${ampsDrawn(needsInterruptA)} is asked for behind ${listed(cranking.length > 0 ? cranking : batteries)}`;
  const isCertain = fuse.interruptBasis === 'maker' && interruptA !== null && faultByMakersA > interruptA;
  const missing = missingFigures(about, fuse, batteries);
  const figures = isCertain || missing === '' ? '' : `, or write the makers' figures: ${missing}`;
  return {
    level: isCertain ? 'stop' : 'caution',
    message: `${interruptsText(fuse)}; ${byTable ? asked : shortText(about, fuse)}`,
    remedy: `use a fuse that interrupts more (${alternativesText(about, fuse.alternatives)})${holderToWrite(about, fuse)}${figures}`,
    ...(byTable && { cited: defaultSource('interrupt-to-650') }),
  };
}

/** The line of a device that holds the first lawful fuse of another form, where the catalogue has a holder for it. */
function holderToWrite({ job, plan }: Case, { item, way, alternatives }: PlanFuse): string {
  const seat = plan.items.find(({ id }) => id === item);
  const holders = fuseOfCatalogueFirst(job, alternatives).flatMap(({ form, parts }) =>
    parts.filter((id) => {
      const part = partOf(job, id);
      return part?.kind === 'fuse-holder' && part['fuse-form'] === form;
    }),
  );
  const [part] = holders;
  if (part === undefined || !seat || way !== '') return '';
  const title = job.file.devices[item]?.title;
  const line = {
    part,
    ...(title !== undefined && { title }),
    ...(seat.board === null ? { in: seat.seat ?? '' } : { on: seat.board }),
  };
  return `: write ${item}: ${flowText(line)} under devices:`;
}

/** Which figures would settle the matter; none where every maker that can be asked has told. */
function missingFigures(
  { job }: Case,
  { interruptBasis, faultFrom = [] }: PlanFuse,
  batteries: readonly string[],
): string {
  const assumed = faultFrom.some(({ basis }) => basis !== 'maker');
  // What an alternator gives follows from its rating: nothing is to be written there.
  const silent = batteries.some((id) => {
    const spec = deviceOf(job, id)?.spec;
    return spec?.kind === 'battery' && spec['short-circuit'] === undefined;
  });
  return listed([
    ...(interruptBasis === 'maker' ? [] : ["interrupts: in the fuse's part"]),
    ...(silent && (assumed || interruptBasis === 'maker') ? ["short-circuit: in the battery's part"] : []),
  ]);
}

const interrupting: RuleOf<'fuse-interrupting'> = {
  id: 'fuse-interrupting',
  judge(about) {
    const bare = batteriesBare(about);
    return about.plan.power.fuses.flatMap((fuse): Verdict<'fuse-interrupting'>[] => {
      if (deviceOf(about.job, fuse.item)?.origin === 'vehicle') return [];
      const batteries = bare(fuse);
      if (batteries.length === 0) return [];
      const judged = judgeLithium(about, fuse, batteries) ?? judgeFigures(about, fuse, batteries);
      if (!judged) return [];
      const { interruptA, needsInterruptA } = fuse;
      const { level, message, remedy, cited } = judged;
      return [
        {
          level,
          of: [fuse.id, ...batteries],
          message,
          ...(interruptA !== null && { value: interruptA }),
          ...(needsInterruptA !== null && { limit: needsInterruptA }),
          unit: 'A',
          remedy,
          ...cited,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const interruptingRules: readonly Rule[] = [interrupting];
