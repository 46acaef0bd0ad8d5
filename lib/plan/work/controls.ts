import { type Device, type Job, linkEndOf } from '../../model/content/resolved-job.ts';
import type { PlanAudio, PlanControl } from '../../model/plan/index.ts';
import type { Panel } from '../../model/vocabulary.ts';
import { isSameState } from '../audio/path/control-state.ts';
import { finalStates } from './final-states.ts';
import { inputState } from './input-switch.ts';
import { cleanAt } from './readings/sources-at.ts';
import { subsonicLeftOut } from './subsonic-left-out.ts';
import { turnOnState } from './turn-on-state.ts';

/** Farther along than any panel is long: a control without a place comes last. */
const unplacedM = 100;
/** Panels in the order in which they are gone through: round the part, then its face. */
const panels: readonly Panel[] = ['left', 'top', 'right', 'bottom', 'face'];

/**
 * The state of every knob and switch, as the panels present them: before first power-up as the job says, as the links
 * ask of a switch for the turn-on or for inputs, as a subsonic that nothing asks for stays, or the safe one of its part; and after
 * commissioning. The source that came with the vehicle and feeds the job is set as well, as far as its part tells its
 * controls.
 */
export function planControls(job: Job, audio: Pick<PlanAudio, 'channels' | 'inputs'>): PlanControl[] {
  const feeds = ({ id, spec }: Device) =>
    spec?.kind === 'source-unit' && audio.inputs.some(({ output }) => linkEndOf(output).device === id);
  return job.devices
    .filter((device) => device.origin === 'job' || feeds(device))
    .flatMap((device) => controlsOf(job, device, audio));
}

function controlsOf(job: Job, device: Device, audio: Pick<PlanAudio, 'channels' | 'inputs'>): PlanControl[] {
  const { id, facts, given } = device;
  const byJob = new Map(
    Object.entries(facts.controls).flatMap(([name, spec]) => {
      const asked =
        turnOnState(job, device, spec) ?? inputState(job, device, spec) ?? subsonicLeftOut(device, name);
      return asked ? [[name, asked] as const] : [];
    }),
  );
  const finals = finalStates(
    device,
    given?.settings ?? {},
    { ...audio, cleanAt: cleanAt(job, device) },
    byJob,
  );
  const inOrder = Object.entries(facts.controls).toSorted(
    ([, a], [, b]) =>
      panels.indexOf(a.panel) - panels.indexOf(b.panel) || (a.at ?? unplacedM) - (b.at ?? unplacedM),
  );
  return inOrder.map(([control, { safe: ofPart, why, panel, at }], index): PlanControl => {
    const own = given?.settings[control];
    const asked = byJob.get(control);
    const safe = asked?.state ?? ofPart;
    const preset = own ?? safe;
    const isSafe = isSameState(preset, safe);
    return {
      item: id,
      control,
      preset,
      why: asked?.why ?? (isSafe ? why : 'as the job says'),
      safeState: safe,
      panel,
      atM: at ?? null,
      order: index + 1,
      chosen: own === undefined ? 'computed' : 'given',
      safe: isSafe,
      final: finals.get(control) ?? { state: null, why: '', chosen: 'computed', during: 'presets' },
    };
  });
}
