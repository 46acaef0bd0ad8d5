import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, standsNowhere, terminalAt, terminalsWith } from '../draft/draft-device.ts';
import { batteriesOf, placeBeside } from './battery-places.ts';
import { mainFuseAt, postsOf } from './main-fuse.ts';
import { feedWay } from './supply.ts';
import { isUntouched } from './turn-on.ts';

/** One end of a link that a conductor goes on from, and the device that it is of. */
interface Reach {
  readonly device: DraftDevice;
  readonly terminal: string;
}

/**
 * Links a second battery to that of the engine: a fuse within reach of each, since each is a source, an isolating relay of
 * the job between them, in the place where it stands. Batteries of unlike chemistry are never joined without a charger.
 * `currentA`: what the job draws, which the link carries while the engine runs.
 */
export function linkBatteries(draft: Draft, currentA: number): void {
  const { starter, second } = batteriesOf(draft);
  if (!starter || !second || second.origin === 'vehicle' || isJoined(draft, starter, second)) return;
  if (draft.own.some(({ spec }) => spec.kind === 'charger')) {
    draft.ask(
      ['devices', second.id],
      `a charger stands between ${starter.id} and ${second.id}, and nothing links it`,
      'write the links of the charger',
    );
    return;
  }
  const chemistry = ({ spec }: DraftDevice) => (spec.kind === 'battery' ? spec.chemistry : '');
  if ((chemistry(starter) === 'lithium') !== (chemistry(second) === 'lithium')) {
    const word = (battery: DraftDevice) => chemistry(battery).replaceAll('-', ' ');
    draft.ask(
      ['devices', second.id],
      `${second.id} is ${word(second)} and ${starter.id} ${word(starter)}`,
      'name a charger between them',
    );
    return;
  }
  joinBatteries(draft, starter, second, currentA);
}

/** What passes current on from one battery towards another. */
const passing: readonly DraftDevice['spec']['kind'][] = [
  'battery',
  'fuse-holder',
  'distribution',
  'isolating-relay',
  'charger',
];

/** True where links lead from one battery to another over fuses, blocks and relays; the body joins nothing here. */
function isJoined(draft: Draft, starter: DraftDevice, second: DraftDevice): boolean {
  const ends = Object.values(draft.links).map(({ from, to }) =>
    [from, to].map((end) => linkEndOf(end).device),
  );
  const reached = new Set([starter.id]);
  for (const id of reached)
    for (const pair of ends)
      if (pair.includes(id))
        for (const other of pair) {
          const kind = draft.device(other)?.spec.kind;
          if (kind !== undefined && passing.includes(kind)) reached.add(other);
        }
  return reached.has(second.id);
}

function joinBatteries(draft: Draft, starter: DraftDevice, second: DraftDevice, currentA: number): void {
  const isolator =
    draft.own.find((one) => one.spec.kind === 'isolating-relay' && isUntouched(draft, one)) ?? null;
  const seats = { starter: placeBeside(draft, starter), second: placeBeside(draft, second) };
  if (seats.starter === null || seats.second === null) {
    if (standsNowhere(second)) return;
    draft.ask(
      ['devices', second.id],
      `no route of ${draft.around.vehicle.id} tells a place beside ${starter.id} for its fuse`,
      `write ends: with ${starter.id} and the place at a route of the vehicle`,
    );
    return;
  }
  const front = fuseAt(draft, starter, seats.starter, second, isolator, currentA);
  const rear = fuseAt(draft, second, seats.second, second, isolator, currentA);
  if (!front || !rear) return;
  const why: Why = {
    rule: 'supply',
    reason: `${starter.id} and ${second.id} are both sources: a fuse beside each`,
    cp: true,
  };
  const contacts = isolator ? terminalsWith(isolator, 'relay-contact') : [];
  const [near, far] = contacts;
  const link = (name: string, from: Reach, to: Reach) =>
    draft.addLink(
      draft.freeName(name, second.id),
      { from: `${from.device.id}.${from.terminal}`, to: `${to.device.id}.${to.terminal}` },
      why,
      second.id,
    );
  if (!isolator || near === undefined || far === undefined) {
    link('battery-link', front, rear);
    return;
  }
  link('battery-link', front, { device: isolator, terminal: near });
  link('isolator-link', { device: isolator, terminal: far }, rear);
}

/** The fuse beside a battery with its tail; gives the side of it that looks away from the battery. */
function fuseAt(
  draft: Draft,
  battery: DraftDevice,
  seat: string,
  second: DraftDevice,
  isolator: DraftDevice | null,
  currentA: number,
): Reach | null {
  const [contact] = isolator ? terminalsWith(isolator, 'relay-contact') : [];
  const fuse = mainFuseAt(draft, {
    battery,
    seat,
    currentA,
    ceilingA: null,
    way: feedWay(draft, seat, isolator ?? second, battery),
    port: isolator && contact !== undefined ? terminalAt(isolator, contact) : null,
    name: draft.freeName(`fuse-${battery.id}`, 'link'),
    title: `Link fuse at ${battery.id.replaceAll('-', ' ')}`,
    about: second.id,
  });
  if (!fuse) return null;
  const [input] = terminalsWith(fuse, 'feed-in');
  const [output] = terminalsWith(fuse, 'feed-out');
  const { plus } = postsOf(battery);
  if (input === undefined || output === undefined || plus === null) return null;
  const why: Why = {
    rule: 'supply',
    reason: `${battery.id} is a source of the link: its fuse stands beside it`,
    cp: true,
  };
  draft.addLink(
    draft.freeName(`tail-${battery.id}`, 'link'),
    { from: `${battery.id}.${plus}`, to: `${fuse.id}.${input}` },
    why,
    fuse.id,
  );
  return { device: fuse, terminal: output };
}
