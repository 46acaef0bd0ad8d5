import type { Device } from '../../model/content/resolved-job.ts';
import { looseDevices } from '../../plan/work/loose-parts.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { kilograms } from '../words.ts';

/** What sticks a part on and gives in heat or in a crash. */
const stuck: readonly string[] = ['tape', 'hook-and-loop'];

/** What is screwed to the board beside a part. */
const screwed: readonly string[] = ['bracket', 'clamp'];

const notHeld: Rule = {
  id: 'part-not-held',
  judge(about) {
    const { job, plan } = about;
    const { value: limit, from } = houseRule(job, 'stuck-mass');
    const onBoards = plan.boards.flatMap(({ id: board, placements }) =>
      placements.flatMap(({ item }): Verdict<'part-not-held'>[] => {
        const device = deviceOf(job, item);
        const print = device?.facts.footprint;
        if (!device || !print || print.holes.length + print.bracketHoles.length > 0) return [];
        const held = device.given?.held;
        const isScrewed = held !== undefined && screwed.includes(held);
        const verdict = { level: 'caution', of: [item, board], ...deviceSpot(job, item) } as const;
        if (held === undefined)
          return [
            {
              ...verdict,
              message: `${item} has no mounting holes, and nothing says what holds its ${kilograms(print.massKg)} on ${board}`,
              remedy: `write held: of ${item} (strap, bracket, clamp), or mounting-holes: or bracket-holes: of its part`,
            },
          ];
        if (isScrewed)
          return [
            {
              ...verdict,
              message: `${item} is held on ${board} by a ${held}, and nothing says where its screws go: the drill table has no holes for it`,
              remedy: `measure them from the lower left corner of ${item}, and write bracket-holes: of ${device.part ?? 'its part'}: [{ x: , y: , diameter: }]`,
            },
          ];
        if (!stuck.includes(held) || print.massKg <= limit + 1e-9) return [];
        return [
          {
            ...verdict,
            message: `${item}, ${kilograms(print.massKg)}, is held on ${board} by ${held} alone; ${kilograms(limit)} is the most for it`,
            value: print.massKg,
            limit,
            unit: 'kg',
            remedy: 'screw a strap, a bracket or a clamp over it, and write it under held:',
            ...from,
          },
        ];
      }),
    );
    return [...onBoards, ...looseNotHeld(about)];
  },
};

/** What is bolted or screwed down wherever it stands. A speaker has its opening, and a holder in a lead hangs in it. */
const screwedDown: ReadonlySet<string> = new Set([
  'amplifier',
  'processor',
  'distribution',
  'crossover',
  'charger',
  'capacitor-bank',
]);

/** The same of a part at a place of the vehicle that is too heavy to be stuck on. */
function looseNotHeld({ job }: Case): Verdict<'part-not-held'>[] {
  const { value: limit, from } = houseRule(job, 'stuck-mass');
  return looseDevices(job).flatMap(({ id, spec, seat, facts, given }): Verdict<'part-not-held'>[] => {
    const print = facts.footprint;
    if (!screwedDown.has(spec?.kind ?? '') || !print || print.massKg <= limit + 1e-9) return [];
    if (print.holes.length + print.bracketHoles.length > 0) return [];
    const held = given?.held;
    if (held !== undefined && !stuck.includes(held)) return [];
    return [
      {
        ...{ level: 'caution', of: [id], value: print.massKg, limit, unit: 'kg', ...from },
        message:
          held === undefined
            ? `${id} has no mounting holes, and nothing says what holds its ${kilograms(print.massKg)} at ${seat}`
            : `${id}, ${kilograms(print.massKg)}, is held at ${seat} by ${held} alone; ${kilograms(limit)} is the most for it`,
        remedy: `write held: of ${id} (strap, bracket, clamp), or mounting-holes: of its part`,
        ...deviceSpot(job, id),
      },
    ];
  });
}

/** What is told to hold an enclosure: at itself, or at a speaker in it. */
function boxHeld(devices: readonly Device[], box: Device): readonly string[] {
  const inIt = devices.filter(({ spec, seat }) => spec?.kind === 'speaker' && seat === box.seat);
  return [box, ...inIt].flatMap(({ given }) => given?.held ?? []);
}

/** An enclosure at a place of the vehicle that nothing is told to hold, or only what gives in a crash. */
const boxNotHeld: Rule = {
  id: 'box-not-held',
  judge({ job }) {
    const { value: limit, from } = houseRule(job, 'stuck-mass');
    return job.devices.flatMap((box): Verdict<'box-not-held'>[] => {
      const { id, origin, spec, seat, facts } = box;
      const value = facts.footprint?.massKg ?? 0;
      if (origin !== 'job' || spec?.kind !== 'enclosure' || seat === null || value <= limit + 1e-9) return [];
      const held = boxHeld(job.devices, box);
      if (held.some((one) => !stuck.includes(one))) return [];
      const how = held.includes('tape') ? 'tape' : 'hook-and-loop';
      return [
        {
          level: 'caution',
          of: [id],
          message:
            held.length === 0
              ? `nothing says what holds ${id}, ${kilograms(value)} without its speaker, at ${seat}: a crash throws it forward`
              : `${id}, ${kilograms(value)} without its speaker, is held at ${seat} by ${how} alone; ${kilograms(limit)} is the most for it`,
          value,
          limit,
          unit: 'kg',
          remedy: `bolt or strap it to sound metal of the body, and write held: strap, bracket or clamp at ${id}, or at the speaker in it`,
          ...from,
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

export const heldPartRules: readonly Rule[] = [notHeld, boxNotHeld];
