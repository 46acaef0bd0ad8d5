import type { BuildPlan, PlanBoard, PlanFilter, PlanSize } from '../../lib/model/plan/index.ts';
import type { JoinedRemark, PlacedRemark } from '../../lib/model/remark.ts';
import type { Case } from '../../lib/rules/rule.ts';
import { about, aboutContent, aboutPlan, byId, entry, one, partIn } from './case.ts';
import type { Written } from './content.ts';

export const fuse = (plan: BuildPlan, id: string) => byId(plan.power.fuses, id);
export const conductor = (plan: BuildPlan, id: string) => byId(plan.power.conductors, id);
export const wire = (plan: BuildPlan, id: string) => byId(plan.wires, id);
export const point = (plan: BuildPlan, name: string) => one(plan.power.points, (each) => each.name === name);
export const drop = (plan: BuildPlan) => one(plan.power.drops, ({ item }) => item === 'amp');
export const regime = (plan: BuildPlan, name: string) =>
  one(plan.power.charging, (each) => each.name === name);
export const channel = (plan: BuildPlan, id: string) => byId(plan.audio.channels, id);
export const speaker = (plan: BuildPlan, id: string) => byId(plan.audio.speakers, id);
export const control = (plan: BuildPlan, name: string) => one(plan.controls, (each) => each.control === name);
export const board = (plan: BuildPlan) => byId(plan.boards, 'main');
export const run = (plan: BuildPlan) => byId(plan.runs, 'left');
export const space = ({ vehicle }: Written) => entry(vehicle.spaces, 'well');
export const soundPoint = (content: Written) => entry(space(content)['sound-points'], 'p1');

export function setNode(plan: BuildPlan, name: string, node: string, voltageV: number | null): void {
  byId(point(plan, name).nodes, node).voltageV = voltageV;
}

/** The size of a wire that no cable was found for. */
export const unsized: PlanSize = { label: 'none', awg: null, areaMm2: 0 };

/** A second battery of the job on the distribution, with a fuse of its own or without. */
export function secondBattery(fused: boolean, plan: (plan: BuildPlan) => void = () => {}): Case {
  return about({
    content: ({ job }) => {
      job.devices.second = { part: 'agm', in: 'boot' };
      job.links['second-ground'] = { from: 'second.NEG', to: 'body.cargo' };
      if (fused) {
        job.devices['second-fuse'] = { part: 'holder', in: 'boot' };
        job.links['second-tail'] = { from: 'second.POS', to: 'second-fuse.IN' };
        job.links.link = { from: 'second-fuse.OUT', to: 'block.IN' };
      } else job.links['second-tail'] = { from: 'second.POS', to: 'block.IN' };
    },
    plan: (made) => {
      if (fused) fuse(made, 'main-fuse').protects.push('link');
      plan(made);
    },
  });
}

/** A second battery of the job behind an isolating relay on the distribution, its coil fed from somewhere. */
export function isolated(
  coil: string | null,
  change: (content: Written) => void = () => {},
  plan: (plan: BuildPlan) => void = () => {},
): Case {
  return about({
    content: (content) => {
      const { job } = content;
      Object.assign(job.devices, {
        second: { part: 'agm', in: 'boot' },
        'second-fuse': { part: 'holder', in: 'boot' },
        isolator: { part: 'isolator', in: 'boot' },
      });
      Object.assign(job.links, {
        'second-ground': { from: 'second.NEG', to: 'body.cargo' },
        'second-tail': { from: 'second.POS', to: 'second-fuse.IN' },
        'isolator-rear': { from: 'second-fuse.OUT', to: 'isolator.B' },
        'isolator-front': { from: 'isolator.A', to: 'block.IN' },
        'coil-ground': { from: 'isolator.85', to: 'body.dash' },
      });
      if (coil !== null) job.links['coil-rem'] = { from: coil, to: 'isolator.86' };
      change(content);
    },
    plan,
  });
}

/** What the starter draws, and what of it flows through the main fuse or a contact. */
export function cranks(
  shares: readonly (readonly [id: string, currentA: number])[],
  more: { readonly seconds?: number; readonly measured?: boolean } = {},
): (plan: BuildPlan) => void {
  return ({ power }) => {
    power.cranking = {
      currentA: 400,
      seconds: more.seconds ?? 5,
      measured: more.measured ?? false,
      shares: shares.map(([id, currentA]) => ({ id, currentA })),
    };
  };
}

/** The vehicle with a fuse block of its own whose way is switched by the vehicle. */
export function withIgnition({ vehicle, parts }: Written): void {
  parts.switched = { ...entry(parts, 'fused') };
  vehicle.fitted.panel = { part: 'switched', zone: 'cabin' };
}

/** The main fuse at a distance from the battery, in inches, in a covering or bare. */
export function mainFuseAt(distanceIn: number, covering: readonly string[] = []): Case {
  return aboutPlan((plan) => {
    Object.assign(wire(plan, 'feed'), { lengthM: distanceIn * 0.0254, covering: [...covering] });
    fuse(plan, 'main-fuse').distanceM = distanceIn * 0.0254;
  });
}

/** A relay that the processor drives and that switches the amplifier on. */
export function withRelay(
  suppression: 'diode' | 'none',
  change: (job: Written['job']) => void = () => {},
): Case {
  return aboutContent((content) => {
    const { job } = content;
    partIn(content, 'relay', 'relay').suppression = suppression;
    job.devices.relay = { part: 'relay', on: 'main' };
    job.links['coil-rem'] = { from: 'dsp.REM-OUT', to: 'relay.86' };
    job.links['coil-ground'] = { from: 'relay.85', to: 'body.dash' };
    job.links['contact-feed'] = { from: 'block.OUT2', to: 'relay.30' };
    job.links['amp-rem'] = { from: 'relay.87', to: 'amp.REM' };
    change(job);
  });
}

export function filter(pass: PlanFilter['pass'], cornerHz: number, order = 4): PlanFilter {
  return { where: 'dsp.OUT1', pass, type: 'butterworth', order, cornerHz };
}

/** A channel behind other filters. */
export function filtered(id: string, ...filters: PlanFilter[]): Case {
  return aboutPlan((plan) => {
    channel(plan, id).filters = filters;
  });
}

export function setBoard(change: Partial<PlanBoard>): Case {
  return aboutPlan((plan) => {
    Object.assign(board(plan), change);
  });
}

/** The hole of the board somewhere else. */
export function hole(xM: number, yM: number, behindIt: string | null = 'nothing'): Case {
  return aboutPlan((plan) => {
    const first = one(board(plan).holes, ({ n }) => n === 1);
    Object.assign(first, { xM, yM, behind: behindIt, of: behindIt === null ? 'lead' : 'a' });
  });
}

/** Something behind the first fixing point. */
export function behind(what: 'tank' | 'line' | 'airbag' | 'wiring' | 'unknown'): Case {
  return aboutContent((content) => {
    soundPoint(content).behind = what;
  });
}

/** A rivet nut M8 with its hole, as the catalogue has it. */
export const nutM8 = {
  kind: 'fixing',
  title: 'Rivet nut M8',
  form: 'rivet-nut',
  thread: 'M8',
  length: '18 mm',
  pilot: '11 mm',
} as const;

/** The hole on the way along the sill as it is still to be drilled, with what lies behind it. */
export function wayToDrill(what: 'nothing' | 'line' | 'unknown'): Case {
  return about({
    content: ({ vehicle }) => {
      const pass = one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill');
      Object.assign(pass, { there: false, 'through-hole': '20 mm', behind: what });
    },
    plan: (plan) => {
      const [run] = plan.runs;
      if (!run) throw new Error('The plan has a run.');
      run.grommets = [{ zone: 'sill', holeM: 0.02, part: 'grommet-12', drilledBefore: what }];
    },
  });
}

/** The ground point of the board as it is still to be made, with what lies behind it. */
export function groundToMake(what: 'nothing' | 'tank' | 'unknown', ...nuts: readonly (typeof nutM8)[]): Case {
  return aboutContent(({ vehicle, parts }) => {
    Object.assign(entry(vehicle.grounds, 'cargo'), { there: false, behind: what });
    for (const nut of nuts) Object.assign(parts, { 'nut-m8': nut });
  });
}

export function fixingLength(length: string, what: 'nothing' | 'tank'): Case {
  return aboutContent((content) => {
    partIn(content, 'screw', 'fixing').length = length;
    soundPoint(content).behind = what;
  });
}

/** The board in a wet space, on spacers. */
export function wet(spacerM: number): Case {
  return about({
    content: (content) => {
      space(content).wet = true;
    },
    plan: (plan) => {
      for (const fixing of board(plan).fixings) fixing.spacerM = spacerM;
    },
  });
}

/** Something that a computation noticed, at a place. */
export const remark = (change: Partial<JoinedRemark>, path = '/devices/amp'): PlacedRemark => ({
  remark: {
    rule: 'air-gap-short',
    level: 'caution',
    of: ['amp', 'dsp'],
    message: 'too near',
    source: 'common practice, no source',
    mark: 'cp',
    remedy: 'move it',
    ...change,
  },
  path,
});

/** A job in which many things are wrong at once. */
export const faulty = () =>
  about({
    content: ({ job, vehicle }) => {
      delete job.links['signal-2'];
      vehicle['negative-sensor'] = true;
      job.links['board-ground'] = { from: 'ground.G0', to: 'battery.NEG' };
    },
    plan: (plan) => {
      fuse(plan, 'block.OUT2').ratingA = null;
      conductor(plan, 'main').cautionA = 50;
      conductor(plan, 'main').insulationC = 60;
      wire(plan, 'feed').lengthM = 2;
      channel(plan, 'amp.1').filters = [];
      channel(plan, 'amp.2').loadOhm = null;
    },
  });

/** A fan of 90 m3/h by its maker among the parts. */
export const fanInCatalogue = ({ parts }: Written): void => {
  parts['fan-80'] = {
    kind: 'fan',
    title: 'Fan',
    size: { width: '82 mm', depth: '32 mm', height: '86 mm' },
    mass: '120 g',
    airflow: '90 m3/h',
    draw: '150 mA',
    terminals: {
      '+': { role: 'turn-on-in', panel: 'left', at: '10 mm', joint: 'blade-tab' },
      '-': { role: 'supply-negative', panel: 'left', at: '20 mm', joint: 'blade-tab' },
    },
  };
};

/** A fan in the boot, its ends linked. */
export const fittedFan =
  (cools?: string) =>
  (content: Written): void => {
    fanInCatalogue(content);
    content.job.devices.fan = { part: 'fan-80', in: 'boot', ...(cools !== undefined && { cools }) };
    content.job.links['fan-rem'] = { from: 'dsp.REM-OUT', to: 'fan.+' };
    content.job.links['fan-ground'] = { from: 'fan.-', to: 'body.cargo' };
  };
