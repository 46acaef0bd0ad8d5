import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, standsNowhere, terminalsWith } from '../draft/draft-device.ts';
import { placeBeside } from './battery-places.ts';
import { feedWay } from './feed-way.ts';
import { mainFuseAt, postsOf } from './main-fuse.ts';

/** One end of a link that a conductor goes on from, and the device that it is of. */
export interface Reach {
  readonly device: DraftDevice;
  readonly terminal: string;
}

/** What the fuse beside a battery has to do for a link to another. */
export interface LinkFuseDuty {
  readonly battery: DraftDevice;
  /** Where its conductor goes on to, and the port that it has there. */
  readonly to: DraftDevice;
  readonly port: TerminalSpec | null;
  readonly currentA: number;
  readonly ceilingA: number | null;
  readonly about: string;
}

/** The fuses beside some batteries; asks, and proposes none, where the vehicle tells no place beside one of them. */
export function linkFuses(
  draft: Draft,
  duties: readonly LinkFuseDuty[],
  about: DraftDevice,
): readonly (Reach | null)[] {
  const lost = duties.find(({ battery }) => placeBeside(draft, battery) === null)?.battery;
  if (!lost) return duties.map((duty) => linkFuse(draft, duty));
  // A place that there is not is told where it is written.
  if ([lost, about].some(standsNowhere)) return [];
  draft.ask(
    ['devices', about.id],
    `no route of ${draft.around.vehicle.id} tells a place beside ${lost.id} for its fuse`,
    `write ends: with ${lost.id} and the place at a route of the vehicle`,
  );
  return [];
}

/** The fuse beside a battery with its tail; gives the side of it that looks away from the battery. */
function linkFuse(
  draft: Draft,
  { battery, to, port, currentA, ceilingA, about }: LinkFuseDuty,
): Reach | null {
  const seat = placeBeside(draft, battery);
  if (seat === null) return null;
  const fuse = mainFuseAt(draft, {
    battery,
    seat,
    currentA,
    ceilingA,
    way: feedWay(draft, seat, to, battery),
    port,
    name: draft.freeName(`fuse-${battery.id}`, 'link'),
    title: `Link fuse at ${battery.id.replaceAll('-', ' ')}`,
    about,
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
