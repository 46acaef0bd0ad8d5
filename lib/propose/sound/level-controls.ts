import type { Draft, Why } from '../draft/draft.ts';
import { terminalsWith } from '../draft/draft-device.ts';
import type { SignalChain } from './signal-chain.ts';
import { isNameFree } from './source-outputs.ts';

/** Links a level control to the socket of the processor, else to that of the amplifier of the subwoofers. */
export function linkLevels(draft: Draft, chain: SignalChain, bassAmplifiers: readonly string[]): void {
  for (const control of draft.own.filter(({ spec }) => spec.kind === 'level-control')) {
    const [plug] = terminalsWith(control, 'control-line');
    if (plug === undefined || !isNameFree(draft, control, plug)) continue;
    const hosts = [...chain.processors, ...chain.amplifiers.filter(({ id }) => bassAmplifiers.includes(id))];
    for (const host of hosts) {
      const socket = terminalsWith(host, 'control-line').find((name) => isNameFree(draft, host, name));
      if (socket === undefined) continue;
      const why: Why = { rule: 'turn-on', reason: `the level socket of ${host.id}`, cp: true };
      draft.addLink(
        draft.freeName(`${control.id}-lead`, host.id),
        { from: `${control.id}.${plug}`, to: `${host.id}.${socket}` },
        why,
        control.id,
      );
      break;
    }
  }
}
