import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, terminalAt, terminalsWith } from '../draft/draft-device.ts';
import { batteriesOf } from './battery-places.ts';
import { linkCharger } from './charger-link.ts';
import { linkFuses, type Reach } from './link-fuse.ts';
import { isUntouched } from './turn-on.ts';

/**
 * Links a second battery to that of the engine: a fuse within reach of each, since each is a source, a charger or an
 * isolating relay of the job between them, in the place where it stands. Batteries of unlike chemistry are never joined
 * without a charger. `currentA`: what the job draws, which the link carries while the engine runs.
 */
export function linkBatteries(draft: Draft, currentA: number): void {
  const { starter, second } = batteriesOf(draft);
  if (!starter || !second || second.origin === 'vehicle' || isJoined(draft, starter, second)) return;
  const chargers = draft.own.filter(({ spec }) => spec.kind === 'charger');
  const idle = chargers.find((one) => isBetweenNothing(draft, one));
  if (idle) {
    linkCharger(draft, idle, { starter, second });
    return;
  }
  const [charger] = chargers;
  if (charger) {
    draft.ask(
      ['devices', charger.id],
      `${charger.id} stands between ${starter.id} and ${second.id}, and its links do not join them`,
      'write the rest of its links, or none of them',
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

/** True for a charger whose input and output are both free, whatever else of it is linked. */
function isBetweenNothing(draft: Draft, charger: DraftDevice): boolean {
  return terminalsWith(charger, 'supply-positive', 'source-positive').every((name) =>
    draft.isFree(charger.id, name),
  );
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
  const [near, far] = isolator ? terminalsWith(isolator, 'relay-contact') : [];
  const duties = [starter, second].map((battery) => ({
    battery,
    to: isolator ?? second,
    port: isolator && near !== undefined ? terminalAt(isolator, near) : null,
    currentA,
    ceilingA: null,
    about: second.id,
  }));
  const [front, rear] = linkFuses(draft, duties, second);
  if (!front || !rear) return;
  const why: Why = {
    rule: 'supply',
    reason: `${starter.id} and ${second.id} are both sources: a fuse beside each`,
    cp: true,
  };
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
