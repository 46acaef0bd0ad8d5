import type { PlanWire, WireEnd } from '../../model/plan/index.ts';
import { largestTwinMm2 } from '../../model/tables/ferrules.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceIdOf, deviceSpot, hasSize, jobWires, partOf, terminalSpecOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { counted, listed, squareMm } from '../words.ts';
import { hasFerrule } from './copper-clad.ts';

/** Areas within a tenth of a per cent are the same size. */
const grace = 1.001;

interface End {
  readonly wire: PlanWire;
  readonly end: WireEnd;
}

/** Ends that are spliced: to another wire before a port, to a lead of the maker's or at a plug. They enter no port. */
const spliced: readonly WireEnd['form'][] = ['joint', 'supplied-lead', 'tap', 'cut-lead'];

const enters = ({ form }: WireEnd): boolean => !spliced.includes(form);

/** Both ends of every wire of the job that enter their ports. */
function jobEnds(about: Case): readonly End[] {
  return jobWires(about).flatMap((wire) => wire.ends.filter(enters).map((end) => ({ wire, end })));
}

const portTooSmall: Rule = {
  id: 'port-too-small',
  judge(about) {
    return jobEnds(about).flatMap(({ wire, end }): Verdict<'port-too-small'>[] => {
      const takes = terminalSpecOf(about.job, end.terminal)?.takes;
      const fitted = partOf(about.job, end.part);
      const reduced = fitted?.kind === 'terminal' && fitted.form === 'reducer';
      if (!takes || reduced || wire.size.areaMm2 <= takes.to.areaMm2 * grace) return [];
      return [
        {
          level: 'stop',
          of: [end.terminal, wire.id],
          message: `${wire.id} is ${wire.size.label}, and ${end.terminal} takes at most ${takes.to.label}`,
          value: wire.size.areaMm2,
          limit: takes.to.areaMm2,
          unit: 'mm2',
          remedy: `fit a reducer to ${takes.to.label} or less, use a part with a larger port, or a thinner conductor with a fuse to match`,
          ...wireSpot(about, wire.id),
          givesWayTo: ['port-refuses-conductor'],
        },
      ];
    });
  },
};

const portTooLarge: Rule = {
  id: 'port-too-large',
  judge(about) {
    return jobEnds(about).flatMap(({ wire, end }): Verdict<'port-too-large'>[] => {
      const takes = terminalSpecOf(about.job, end.terminal)?.takes;
      if (!takes || !hasSize(wire) || wire.size.areaMm2 * grace >= takes.from.areaMm2) return [];
      return [
        {
          level: 'caution',
          of: [end.terminal, wire.id],
          message: `${wire.id} is ${wire.size.label}, and ${end.terminal} is made for ${takes.from.label} or larger: the screw may not hold it`,
          value: wire.size.areaMm2,
          limit: takes.from.areaMm2,
          unit: 'mm2',
          remedy: 'use a larger conductor, or a ferrule or adapter that fills the port',
          ...wireSpot(about, wire.id),
          givesWayTo: ['port-note', 'port-refuses-conductor'],
        },
      ];
    });
  },
};

const portFerrule: Rule = {
  id: 'port-ferrule',
  judge(about) {
    return jobEnds(about).flatMap(({ wire, end }): Verdict<'port-ferrule'>[] => {
      const asked = terminalSpecOf(about.job, end.terminal)?.ferrule;
      const has = hasFerrule(about.job, end);
      const wrong = (asked === 'required' && !has) || (asked === 'no' && has);
      if (!wrong) return [];
      return [
        {
          level: 'caution',
          of: [end.terminal, wire.id],
          message: has
            ? `${wire.id} has a ferrule, and the maker of ${end.terminal} refuses one`
            : `${wire.id} has no ferrule, and the maker of ${end.terminal} asks for one`,
          remedy: has ? 'leave the ferrule off' : 'crimp a ferrule of the next size up from the conductor',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

/** Terminals with the wires that end at them. */
function crowded(about: Case): readonly { readonly terminal: string; readonly wires: readonly PlanWire[] }[] {
  const at = new Map<string, PlanWire[]>();
  for (const wire of about.plan.wires)
    for (const { terminal } of wire.ends.filter(enters))
      at.set(terminal, [...(at.get(terminal) ?? []), wire]);
  return [...at]
    .map(([terminal, wires]) => ({ terminal, wires }))
    .filter(({ wires }) => wires.length > 1 && wires.some(({ origin }) => origin === 'job'));
}

const portShared: Rule = {
  id: 'port-shared',
  judge(about) {
    return crowded(about).flatMap(({ terminal, wires }): Verdict<'port-shared'>[] => {
      const spec = terminalSpecOf(about.job, terminal);
      if (spec?.joint === 'phono') return plugsShared(about, terminal, wires);
      if (spec?.joint !== 'set-screw' && spec?.joint !== 'screw-clamp') return [];
      const tooMany = wires.length > spec.conductors;
      const thickest = Math.max(...wires.map(({ size }) => size.areaMm2));
      if (!tooMany && (wires.length !== 2 || thickest <= largestTwinMm2 * grace)) return [];
      return [
        {
          level: tooMany ? 'stop' : 'caution',
          of: [terminal, ...wires.map(({ id }) => id)],
          message: tooMany
            ? `${listed(wires.map(({ id }) => id))} share ${terminal}, whose maker allows ${counted(spec.conductors, 'conductor')}`
            : `two conductors of ${squareMm(thickest)} share ${terminal}: no twin ferrule is made above 2 x ${largestTwinMm2} mm2`,
          value: tooMany ? wires.length : thickest,
          limit: tooMany ? spec.conductors : largestTwinMm2,
          ...(!tooMany && { unit: 'mm2' }),
          remedy: 'use a distribution part with a port for each',
          ...deviceSpot(about.job, deviceIdOf(terminal)),
          givesWayTo: ['port-refuses-conductor'],
        },
      ];
    });
  },
};

/** A socket into which more goes than one plug: what lies in a Y-lead begins at one. */
function plugsShared(about: Case, terminal: string, wires: readonly PlanWire[]): Verdict<'port-shared'>[] {
  const yLeadOf = (wire: string) => {
    const cable = about.job.links.find(({ id }) => id === wire)?.cable;
    const part = about.job.parts[cable?.part ?? ''];
    return cable && part?.kind === 'cable' && part['y-lead'] ? cable.id : null;
  };
  const plugs = new Set(wires.map(({ id }) => yLeadOf(id) ?? id));
  const allowed = terminalSpecOf(about.job, terminal)?.conductors ?? 1;
  if (plugs.size <= allowed) return [];
  return [
    {
      level: 'stop',
      of: [terminal, ...wires.map(({ id }) => id)],
      message: `${listed(wires.map(({ id }) => id))} share ${terminal}, which holds ${counted(allowed, 'plug')}`,
      value: plugs.size,
      limit: allowed,
      remedy: 'lay them in a Y-lead, or use another output',
      ...deviceSpot(about.job, deviceIdOf(terminal)),
    },
  ];
}

const lugsOnStud: Rule = {
  id: 'lugs-on-stud',
  judge(about) {
    const { value: limit, from } = houseRule(about.job, 'lugs-on-stud');
    return crowded(about).flatMap(({ terminal, wires }): Verdict<'lugs-on-stud'>[] => {
      const joint = terminalSpecOf(about.job, terminal)?.joint;
      const isStud = joint === 'stud' || joint === 'body-bolt' || joint === 'post-clamp';
      if (!isStud || wires.length <= limit) return [];
      return [
        {
          level: 'caution',
          of: [terminal, ...wires.map(({ id }) => id)],
          message: `${wires.length} lugs are on the stud ${terminal}; ${limit} is the limit`,
          value: wires.length,
          limit,
          remedy: 'spread them over a second stud or a bar',
          ...from,
          ...deviceSpot(about.job, deviceIdOf(terminal)),
          givesWayTo: ['port-refuses-conductor'],
        },
      ];
    });
  },
};

const lugHole: Rule = {
  id: 'lug-off-stud',
  judge(about) {
    return jobEnds(about).flatMap(({ wire, end }): Verdict<'lug-off-stud'>[] => {
      const lug = partOf(about.job, end.part);
      const stud = terminalSpecOf(about.job, end.terminal)?.stud;
      if (lug?.kind !== 'terminal' || lug.form !== 'ring-lug' || lug.stud === undefined || stud === undefined)
        return [];
      if (lug.stud === stud) return [];
      return [
        {
          level: 'caution',
          of: [end.terminal, wire.id],
          message: `the lug of ${wire.id} is for ${lug.stud}, and the stud of ${end.terminal} is ${stud}`,
          value: lug.stud,
          limit: stud,
          remedy: `use a lug for ${stud}; never drill a lug out`,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

const endPartSize: Rule = {
  id: 'end-off-size',
  judge(about) {
    return jobEnds(about).flatMap(({ wire, end }): Verdict<'end-off-size'>[] => {
      const fitted = partOf(about.job, end.part);
      if (fitted?.kind !== 'terminal') return [];
      const { from, to } = fitted.takes;
      const { areaMm2, label } = wire.size;
      if (areaMm2 * grace >= from.areaMm2 && areaMm2 <= to.areaMm2 * grace) return [];
      return [
        {
          level: 'caution',
          of: [end.terminal, wire.id],
          message: `${end.part ?? 'the terminal'} on ${wire.id} takes ${from.label === to.label ? '' : `${from.label} to `}${to.label}, and the conductor is ${label}`,
          value: areaMm2,
          limit: areaMm2 > to.areaMm2 ? to.areaMm2 : from.areaMm2,
          unit: 'mm2',
          remedy: 'use the size made for the conductor; no strand is cut away to make it fit',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

export const portRules: readonly Rule[] = [
  portTooSmall,
  portShared,
  portTooLarge,
  portFerrule,
  lugsOnStud,
  lugHole,
  endPartSize,
];
