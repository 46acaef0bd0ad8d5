import { bodyId, terminalId } from '../../model/content/resolved-job.ts';
import { measuresAt } from '../../model/content/written-measures.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import { linkEntry, linkName } from '../../model/ports/pair-name.ts';
import { parseQuantity } from '../../model/quantity/quantity.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { RemarkBody } from '../../model/remark.ts';
import { crossing, supplyGroups } from '../../plan/power/supply-groups.ts';
import { asksShortGround } from '../../plan/wiring/lengths/ground-lead.ts';
import { conductanceGrace } from '../../power/network/conductance.ts';
import { houseRule } from '../house-rule-of.ts';
import {
  deviceIdOf,
  deviceOf,
  deviceSpot,
  endsOf,
  hasRole,
  jobWires,
  terminalNameOf,
  terminalSpecOf,
  wireSpot,
} from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn, listed, percentKept } from '../words.ts';
import { conductanceOf } from './conductance.ts';
import { turnedAbout } from './turned-about.ts';

const isBody = (terminal: string): boolean => deviceIdOf(terminal) === bodyId;

/** Ground wires of the job that end at the body, with the terminal at the other end and the ground point. */
function bodyLeads(about: Case): readonly { wire: PlanWire; device: string; point: string }[] {
  return jobWires(about).flatMap((wire) => {
    const point = endsOf(wire).find(isBody);
    const other = endsOf(wire).find((end) => !isBody(end));
    return point === undefined || other === undefined ? [] : [{ wire, device: deviceIdOf(other), point }];
  });
}

const deviceWithoutGround: Rule = {
  id: 'device-without-ground',
  judge({ job, plan }) {
    return job.devices.flatMap(({ id, facts, origin }): Verdict<'device-without-ground'>[] => {
      const names = Object.keys(facts.terminals).filter(
        (name) => facts.terminals[name]?.role === 'supply-negative',
      );
      const grounded = plan.wires.some((wire) =>
        endsOf(wire).some((end) => names.includes(terminalNameOf(end)) && deviceIdOf(end) === id),
      );
      if (origin !== 'job' || names.length === 0 || grounded) return [];
      return [
        {
          level: 'stop',
          of: [id],
          message: `${id} has no ground: nothing is connected to ${listed(names)}, and its current would return by signal shields`,
          remedy: `link ${id}.${names[0] ?? ''} to the ground of its board or to a ground point of the body`,
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

const batteryWithoutGround: Rule = {
  id: 'battery-without-ground',
  judge({ job, plan }) {
    const joined = new Set(plan.wires.flatMap(endsOf));
    return job.devices.flatMap(({ id, facts, origin, spec }): Verdict<'battery-without-ground'>[] => {
      const posts = Object.keys(facts.terminals)
        .filter((name) => facts.terminals[name]?.role === 'source-negative')
        .map((terminal) => terminalId({ device: id, terminal }));
      const isStore = spec?.kind === 'battery' || spec?.kind === 'capacitor-bank';
      if (origin !== 'job' || !isStore || posts.some((post) => joined.has(post))) return [];
      return [
        {
          level: 'stop',
          of: [id, ...posts],
          message: `nothing is connected to ${listed(posts)}: ${id} neither gives nor takes current`,
          remedy: `link ${posts[0] ?? id} to a ground point of the body, as large as what hangs on its positive post`,
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

/** Where a port keeps a ground from being as large as its feed, which one, and what brings it in. */
function portTaking({ job }: Case, feeds: readonly PlanWire[], grounds: readonly PlanWire[]): string {
  const [feed] = feeds.toSorted((a, b) => b.size.areaMm2 - a.size.areaMm2);
  if (!feed) return '';
  const told = grounds.flatMap(endsOf).flatMap((terminal) => {
    const takes = terminalSpecOf(job, terminal)?.takes;
    return takes && takes.to.areaMm2 * 1.001 < feed.size.areaMm2
      ? [`${terminal} takes at most ${takes.to.label}`]
      : [];
  });
  return told.length === 0
    ? ''
    : `; ${[...new Set(told)].join(', and ')}: that asks for a reducer for ${feed.size.label}, or for a part with a larger port`;
}

const groundUnderFeed: Rule = {
  id: 'ground-under-feed',
  judge(about) {
    const { job } = about;
    return supplyGroups(job).flatMap((group): Verdict<'ground-under-feed'>[] => {
      const { kind, id: name } = group;
      const spot = kind === 'board' ? { path: `/boards/${name}` } : deviceSpot(job, name);
      const feeds = crossing(job, jobWires(about), 'power', group);
      const grounds = crossing(job, jobWires(about), 'ground', group);
      const sum = (wires: readonly PlanWire[]) =>
        wires.reduce((total, wire) => total + conductanceOf(about, wire), 0);
      const [feed, ground] = [sum(feeds), sum(grounds)];
      if (feeds.length === 0 || grounds.length === 0 || ground >= feed * (1 - conductanceGrace)) return [];
      const sizes = (wires: readonly PlanWire[]) =>
        listed(wires.map(({ id, size }) => `${id} ${size.label}`));
      return [
        {
          level: 'caution',
          of: [name, ...grounds.map(({ id }) => id), ...feeds.map(({ id }) => id)],
          message: `the ground of ${name} (${sizes(grounds)}) conducts ${percentKept(ground / feed)} of what its feed does (${sizes(feeds)})`,
          value: ground,
          limit: feed,
          unit: 'S m',
          remedy: `run the ground at least as large as the feed, of the same material${portTaking(about, feeds, grounds)}`,
          ...spot,
        },
      ];
    });
  },
};

/** How a ground lead is made shorter: of what its length is the sum where the plan reckoned it, and the field for a tape's. */
function shorterLead(about: Case, wire: PlanWire, limitM: number): Pick<RemarkBody, 'remedy' | 'writesAt'> {
  const { id } = wire;
  const length = lengthIn(about.job, wireSpot(about, id));
  const turned = turnedAbout(about.plan, wire);
  const turn =
    turned && turned.lengthM <= limitM
      ? `write turn: ${turned.turnDeg} at ${turned.device}, where its other wires and its knobs allow: turned about, its terminal lies near that edge, and the lead comes to about ${length(turned.lengthM)}; or `
      : '';
  const nearer = `${turn}choose a ground point nearer to the board, of those under grounds: in the vehicle's file, by ground: at the board${lengthSlip(about, id, limitM)}`;
  const larger = 'a larger lead does not shorten it';
  const reckoned = (about.plan.traces[`wires.${id}.lengthM`]?.inputs ?? []).flatMap(({ name, value }) =>
    typeof value === 'number' && value > 0 ? [{ name, value }] : [],
  );
  if (reckoned.length === 0) return { remedy: `${nearer}; ${larger}` };
  const told = reckoned.map(({ name, value }) => `${length(value)} ${partNames[name] ?? name}`);
  const run = about.job.runs.find((one) => one.id === wire.run);
  const comesIn =
    run?.route.reaches &&
    run.route.reaches.at === undefined &&
    reckoned.some(({ name }) => name === 'board to rim')
      ? `; the part to the rim is the most that it can be: at: under reaches: of ${run.ways.find(({ route }) => route.reaches)?.id ?? run.routeId} tells where its way comes in`
      : '';
  const line = `length: ${tapeText(limitM, about.job.shop.units)}`;
  return {
    remedy: `measure along its way, and where the tape reads less write it at the link, such as ${line} at ${linkName(id)}: no loop is added to a length that is written; or ${nearer}; ${larger}. Its length is reckoned: ${listed(told)}${comesIn}`,
    writesAt: [linkEntry(id)],
  };
}

/** What the length of a wire is the sum of, in words. */
const partNames: Readonly<Record<string, string>> = {
  run: 'on its way through the vehicle',
  hinges: 'as slack at the hinge of a door',
  board: 'on the board',
  'board to rim': 'from the board to the rim of the space',
  loops: 'for service loops',
};

/** What a slip of the unit was meant to be, where it is then within the limit; else that the length may be one. */
function lengthSlip({ job }: Case, wire: string, limitM: number): string {
  const link = job.links.find(({ id }) => id === wire);
  const [written] = link?.given?.length === undefined ? [] : measuresAt(job, { path: `${link.path}/length` });
  const number = written && /^([\d./ -]+?) ?(ft|cm|m)$/.exec(written.text.trim());
  const [, digits = '', unit = ''] = number ?? [];
  const meant = { ft: 'in', cm: 'mm', m: 'cm' }[unit];
  if (meant === undefined) return '';
  const lengthM = parseQuantity(`${digits} ${meant}`, 'length');
  return typeof lengthM === 'number' && lengthM <= limitM
    ? `, or write ${digits} ${meant} if that was meant`
    : ', or correct the length if its number or its unit is a slip';
}

const groundLeadLong: Rule = {
  id: 'ground-lead-long',
  judge(about) {
    const { value: limit, from } = houseRule(about.job, 'ground-lead');
    return bodyLeads(about).flatMap(({ wire, device, point }): Verdict<'ground-lead-long'>[] => {
      if (!asksShortGround(deviceOf(about.job, device)) || wire.lengthM <= limit + 1e-9) return [];
      const length = lengthIn(about.job, wireSpot(about, wire.id));
      return [
        {
          level: 'caution',
          of: [wire.id, point],
          message: `the ground lead ${wire.id} to ${point} is ${length(wire.lengthM)} long; ${length(limit)} is the limit`,
          value: wire.lengthM,
          limit,
          unit: 'm',
          ...shorterLead(about, wire, limit),
          ...from,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

const groundAreas: Rule = {
  id: 'ground-areas-differ',
  judge(about) {
    const leads = bodyLeads(about);
    return about.job.boards.flatMap(({ id, path }): Verdict<'ground-areas-differ'>[] => {
      const own = leads.filter(({ device }) => deviceOf(about.job, device)?.board === id);
      const points = [...new Set(own.map(({ point }) => point))];
      if (points.length < 2) return [];
      return [
        {
          level: 'caution',
          of: [id, ...points],
          message: `the devices of ${id} are grounded at ${listed(points)}: the voltage between the points gets into the signal as noise`,
          value: points.length,
          limit: 1,
          remedy: 'take all grounds of the board to one distribution part, and from it to one ground point',
          path,
        },
      ];
    });
  },
};

const refused: Readonly<Record<string, string>> = {
  'seat-belt': 'a seat belt',
  'seat-frame': 'a seat frame',
  airbag: 'an airbag',
  'fuel-line': 'a fuel line',
};

const groundFastener: Rule = {
  id: 'ground-on-restraint-fastener',
  judge(about) {
    return bodyLeads(about).flatMap(({ wire, point }): Verdict<'ground-on-restraint-fastener'>[] => {
      const holds = about.job.vehicle.grounds[terminalNameOf(point)]?.holds ?? 'nothing-else';
      const what = refused[holds];
      if (what === undefined && holds !== 'trim') return [];
      return [
        {
          level: what === undefined ? 'caution' : 'stop',
          of: [wire.id, point],
          message: `${wire.id} is grounded at ${point}, whose fastener holds ${what ?? 'trim'}`,
          remedy: 'use a ground point of its own on bare structural metal, with a bolt or rivet nut',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

const groundPastSensor: Rule = {
  id: 'ground-past-sensor',
  judge(about) {
    if (!about.job.vehicle['negative-sensor']) return [];
    return jobWires(about).flatMap((wire): Verdict<'ground-past-sensor'>[] => {
      const post = endsOf(wire).find(
        (end) =>
          hasRole(about.job, end, 'source-negative') &&
          deviceOf(about.job, deviceIdOf(end))?.origin === 'vehicle',
      );
      if (post === undefined) return [];
      return [
        {
          level: 'stop',
          of: [wire.id, post],
          message: `${wire.id} goes to ${post}, past the current sensor on that post: the vehicle would not see the current and would misjudge its battery`,
          remedy: 'take the ground to a ground point of the body, or to the vehicle side of the sensor',
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

export const groundRules: readonly Rule[] = [
  deviceWithoutGround,
  batteryWithoutGround,
  groundFastener,
  groundPastSensor,
  groundUnderFeed,
  groundLeadLong,
  groundAreas,
];
