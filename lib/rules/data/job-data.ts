import type { Device } from '../../model/content/resolved-job.ts';
import { onAnyDisk } from '../../model/file-name.ts';
import { pointer } from '../../model/place.ts';
import { deviceSpot, jobWires, partOf, wireSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

const revision: Rule = {
  id: 'revision-not-listed',
  judge({ job }) {
    const { revision: own, revisions } = job.file;
    const last = revisions.at(-1);
    const twice = revisions.find(({ revision }, k) =>
      revisions.slice(0, k).some((one) => onAnyDisk(one.revision) === onAnyDisk(revision)),
    );
    if (!last || (last.revision === own && !twice)) return [];
    const [message, path] = twice
      ? [
          `revision ${twice.revision} stands twice in the list`,
          pointer(['revisions', String(revisions.indexOf(twice))]),
        ]
      : [`the job is at revision ${own}, and its list ends with ${last.revision}`, '/revision'];
    return [
      {
        level: 'caution',
        of: [job.id],
        message,
        value: own,
        limit: last.revision,
        remedy: 'list each revision once, the present one last',
        path,
      },
    ];
  },
};

const sides = { left: 'right', right: 'left' } as const;

/** The device that is called the same of the other side: `tweeter-right` for `tweeter-left`. */
function fellowOf({ id }: Device, devices: readonly Device[]): Device | undefined {
  const words = id.split('-');
  const other = words.map((word) => (word === 'left' ? sides.left : word)).join('-');
  return words.includes('left') ? devices.find((one) => one.id === other) : undefined;
}

const differentParts: Rule = {
  id: 'pair-of-different-parts',
  judge({ job }) {
    const speakers = job.devices.filter(({ origin, spec }) => origin === 'job' && spec?.kind === 'speaker');
    return speakers.flatMap((left): Verdict<'pair-of-different-parts'>[] => {
      const right = fellowOf(left, speakers);
      if (!right || right.part === left.part) return [];
      return [
        {
          level: 'caution',
          of: [left.id, right.id],
          message: `${left.id} is ${left.part}, and ${right.id} is ${right.part}: left and right would not sound alike`,
          remedy: 'write one part for both, or call them otherwise',
          ...deviceSpot(job, left.id, 'part'),
        },
      ];
    });
  },
};

const leftSafe: Rule = {
  id: 'control-left-safe',
  judge({ job }) {
    return job.devices.flatMap(({ id, given, facts }) =>
      Object.entries(given?.['after-commissioning'] ?? {}).flatMap(
        ([name, state]): Verdict<'control-left-safe'>[] => {
          const control = facts.controls[name];
          if (control?.final === undefined || state === control.final || state !== control.safe) return [];
          return [
            {
              level: 'caution',
              of: [`${id}.${name}`, id],
              message: `${name} on ${id} is to stay at "${state}", its state of first power-up; its part ends at "${control.final}"`,
              value: state,
              limit: control.final,
              remedy: `write "${control.final}", or leave it out`,
              ...deviceSpot(job, id, 'after-commissioning', name),
            },
          ];
        },
      ),
    );
  },
};

/** Roles that share what they are made of: a lead for signal serves a control line as well. */
const alike: Readonly<Record<string, readonly string[]>> = {
  control: ['signal', 'turn-on'],
  'turn-on': ['control'],
};

const otherUse: Rule = {
  id: 'cable-for-other-use',
  judge(about) {
    const { job } = about;
    const told = new Set<string>();
    return jobWires(about).flatMap(({ id, role, part: partId }): Verdict<'cable-for-other-use'>[] => {
      const link = job.links.find((one) => one.id === id);
      const named = link?.cable?.part;
      const part = partOf(job, named ?? null);
      // A reel is told by its colour.
      if (named === undefined || part?.kind !== 'cable') return [];
      const serves = [role, ...(alike[role] ?? [])];
      const key = `${link?.cable?.id ?? id}.${role}`;
      if (part.for.some((use) => serves.includes(use)) || told.has(key)) return [];
      told.add(key);
      return [
        {
          level: 'caution',
          of: [id, named],
          message: `${id} carries ${role}, and ${partId ?? named} is for ${listed(part.for)}`,
          value: role,
          limit: part.for.join(', '),
          remedy: `name a cable for ${role}, or add it to for: of the part`,
          ...wireSpot(about, id),
        },
      ];
    });
  },
};

export const jobDataRules: readonly Rule[] = [revision, differentParts, leftSafe, otherUse];
