import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, standsNowhere, terminalAt, terminalsWith } from '../draft/draft-device.ts';
import { likePorts, portName } from '../draft/like-ports.ts';
import { type Batteries, batteriesOf, placeBeside } from './battery-places.ts';
import { feedWay } from './feed-way.ts';
import { type BlockPlan, hasBlock, planBlock } from './fused-ways.ts';
import { mainFuseAt, postsOf } from './main-fuse.ts';
import type { SupplyNeed } from './supply-needs.ts';
import { standing } from './turn-on.ts';
import { linkTails, unfedBlocks } from './written-in-part.ts';

/** Devices that one feed from one battery goes to: those of a board, or one that stands by itself. */
interface FeedGroup {
  readonly battery: DraftDevice;
  readonly needs: readonly SupplyNeed[];
  /** What its parts are called by beside the first group's. */
  readonly apart: string | null;
}

/**
 * Links every supply terminal that nothing feeds: battery, fuse beside it, run, block with fused ways, device; and what is
 * still missing of a way that the job writes in part. `drawA`: what a device draws.
 */
export function linkSupply(
  draft: Draft,
  needs: readonly SupplyNeed[],
  drawA: (device: DraftDevice) => number,
): void {
  const batteries = batteriesOf(draft);
  for (const group of groupsOf(draft, needs, batteries)) feedGroup(draft, group);
  for (const need of unfedBlocks(draft, drawA)) {
    const battery = batteryFor(draft, need, batteries);
    if (battery) linkFeed(draft, { battery, needs: [need], apart: null }, need.device, need.terminal);
  }
  linkTails(draft, batteries);
}

function groupsOf(draft: Draft, needs: readonly SupplyNeed[], batteries: Batteries): readonly FeedGroup[] {
  const groups = new Map<string, SupplyNeed[]>();
  const sources = new Map<string, DraftDevice>();
  for (const need of needs) {
    const battery = batteryFor(draft, need, batteries);
    if (!battery) continue;
    const { board, seat } = need.device;
    const key = `${battery.id} ${board ?? seat ?? need.device.id}`;
    groups.set(key, [...(groups.get(key) ?? []), need]);
    sources.set(key, battery);
  }
  return [...groups].flatMap(([key, own], at) => {
    const battery = sources.get(key);
    const [, where = ''] = key.split(' ');
    return battery ? [{ battery, needs: own, apart: at === 0 ? null : where }] : [];
  });
}

/** The battery that feeds a device: as it or its board says, else the second battery of the job, else the starter battery. */
function batteryFor(
  draft: Draft,
  { device }: SupplyNeed,
  { starter, second }: Batteries,
): DraftDevice | null {
  const named = device.given?.['fed-by'] ?? draft.boards[device.board ?? '']?.['fed-by'];
  if (named !== undefined) {
    // A name that is none of a battery is told by the reader.
    const battery = draft.device(named);
    return battery?.spec.kind === 'battery' ? battery : null;
  }
  const battery = second ?? starter;
  if (!battery)
    draft.ask(
      ['devices', device.id],
      `nothing feeds ${device.id}: the vehicle and the job have no battery`,
      'write the battery into the vehicle',
    );
  return battery;
}

function feedGroup(draft: Draft, group: FeedGroup): void {
  const { needs, apart } = group;
  const [first] = needs;
  if (!first) return;
  const found = needs.length > 1 || hasBlock(draft, needs) ? planBlock(draft, needs) : null;
  // One device alone is fed through a block only where the job has one.
  const plan = needs.length > 1 || found?.block.device ? found : null;
  if (needs.length > 1 && !plan) {
    draft.ask(
      ['devices', first.device.id],
      `no block of the catalogue has fused ways for ${needs.map(({ device }) => device.id).join(', ')}`,
      'add one to the catalogue, or write the feeds',
    );
    return;
  }
  const block = plan && blockDevice(draft, plan, first.device, apart === null ? 'dist' : `dist-${apart}`);
  const target = block ?? first.device;
  const input = block ? terminalsWith(block, 'feed-in')[0] : first.terminal;
  if (input !== undefined && draft.isFree(target.id, input)) linkFeed(draft, group, target, input);
  if (plan && block) linkWays(draft, plan, block);
}

/** The link from the battery over its fuse to a block or a device. */
function linkFeed(
  draft: Draft,
  { battery, needs, apart }: FeedGroup,
  target: DraftDevice,
  input: string,
): void {
  const seat = placeBeside(draft, battery);
  const { plus } = postsOf(battery);
  if (seat === null || plus === null) {
    if (standsNowhere(battery)) return;
    draft.ask(
      ['vehicle'],
      `no route of ${draft.around.vehicle.id} tells a place beside ${battery.id} for its fuse`,
      `write ends: with ${battery.id} and the place at a route of the vehicle`,
    );
    return;
  }
  const named = (name: string) => (apart === null ? name : `${name}-${apart}`);
  const ceilings = needs.length === 1 && target === needs[0]?.device ? needs[0].ceilingA : null;
  const fuse = mainFuseAt(draft, {
    battery,
    seat,
    currentA: needs.reduce((sum, need) => sum + need.currentA, 0),
    ceilingA: ceilings,
    way: feedWay(draft, seat, target, battery),
    port: terminalAt(target, input),
    name: draft.freeName(named('main-fuse'), battery.id),
    title: 'Main fuse',
    about: needs[0]?.device.id ?? target.id,
  });
  const [from, out] = fuse ? [terminalsWith(fuse, 'feed-in')[0], terminalsWith(fuse, 'feed-out')[0]] : [];
  if (!fuse || from === undefined || out === undefined) return;
  const why: Why = { rule: 'supply', reason: `fed from ${battery.id}, the fuse beside it`, cp: true };
  if (draft.isFree(fuse.id, from))
    draft.addLink(
      draft.freeName(named('battery-tail'), battery.id),
      { from: `${battery.id}.${plus}`, to: `${fuse.id}.${from}` },
      why,
      fuse.id,
    );
  draft.addLink(
    target === needs[0]?.device ? `feed-${target.id}` : draft.freeName(named('feed'), battery.id),
    { from: `${fuse.id}.${out}`, to: `${target.id}.${input}` },
    why,
    target.id,
  );
}

function blockDevice(
  draft: Draft,
  { block, ways }: BlockPlan,
  host: DraftDevice,
  name: string,
): DraftDevice | null {
  if (block.device) return block.device;
  const id = draft.freeName(name, host.id);
  const names = [...ways.values()].map(({ device }) => device.id).join(', ');
  const why: Why = {
    rule: 'supply',
    reason: `fused ways for ${names}: fewest parts, then fewest spare ways`,
    cp: true,
  };
  draft.addDevice(
    id,
    {
      part: block.part,
      title: name.startsWith('dist-small') ? 'Small fuse block' : 'Distribution',
      ...standing(host),
    },
    why,
    host.id,
  );
  return draft.device(id);
}

function linkWays(draft: Draft, plan: BlockPlan, block: DraftDevice): void {
  const all = plan.block.ways;
  const reserved = plan.nested?.way;
  // Worked out before any link is at them: a link at one of several takes none from the others.
  const alike = new Map(all.map((way) => [way, likePorts(draft, block, way, all)] as const));
  const link = (way: string, id: string, to: string, about: string) => {
    const like = alike.get(way) ?? [way];
    const why: Why = {
      rule: 'supply',
      reason:
        like.length > 1
          ? 'any of the like ways: the one whose wire crosses least'
          : 'the way that takes its conductor and its fuse',
      cp: true,
    };
    draft.addLink(id, { from: portName(block.id, like), to }, why, about);
  };
  const needs = [...plan.ways].toSorted(([a], [b]) => all.indexOf(a) - all.indexOf(b));
  for (const [way, { device, terminal }] of needs)
    link(way, draft.freeName(`feed-${device.id}`, block.id), `${device.id}.${terminal}`, device.id);
  if (!plan.nested || reserved === undefined) return;
  const [need] = [...plan.nested.plan.ways.values()];
  const host = need?.device ?? block;
  const inner = blockDevice(
    draft,
    plan.nested.plan,
    host,
    `${block.id}-small`.replace(/^dist-small.*$/, 'dist-small'),
  );
  const [input] = inner ? terminalsWith(inner, 'feed-in') : [];
  if (!inner || input === undefined) return;
  link(reserved, draft.freeName(`feed-${inner.id}`, block.id), `${inner.id}.${input}`, inner.id);
  linkWays(draft, plan.nested.plan, inner);
}
