import type { Device } from '../../model/content/resolved-job.ts';
import { finalFilters } from '../audio/final-filters.ts';
import { isSameState } from '../audio/path/control-state.ts';
import type { TurnOnState } from './turn-on-state.ts';

/**
 * How a switch for subsonics, or a knob that ends in OFF, stands before first power where it lets everything through for
 * good: so already then, for no speaker is on before filters and gains are set, and it would only be turned on and off
 * again. Null where it is to cut, where it is neither, and where the job wants it to stand otherwise first.
 */
export function subsonicLeftOut(device: Device, name: string): TurnOnState | null {
  const { what, filter } = device.facts.controls[name] ?? {};
  if (what !== 'subsonic' || !(filter?.passes || filter?.off)) return null;
  const own = finalFilters(device).find(({ states }) => states.has(name));
  const state = own?.states.get(name)?.state ?? null;
  const written = device.given?.settings[name];
  if (state === null || own?.pass !== null || (written !== undefined && !isSameState(written, state)))
    return null;
  return {
    state,
    why: 'it lets all through for good, and no speaker is on before filters and gains are set',
  };
}
