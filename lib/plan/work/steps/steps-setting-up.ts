import { linkEndOf } from '../../../model/content/resolved-job.ts';
import type { PlanControl } from '../../../model/plan/index.ts';
import { percentKept } from '../../../model/printed/told.ts';
import { hasSound, minutesFor, readingsOf, type Step, step, type Work } from '../work.ts';

const setting = { layer: 'set-up', place: 'vehicle', by: 'vehicle' } as const;

/**
 * Setting up with power on: filters, equalising and boosts, since the gain is read through them; then gains with the speakers off (a muted output or a gain fully down lets no tone
 * through, so filters are proved there), then speakers and delays, then the readings under
 * load. Each control that does not stay as it was preset gets its final state in one of them. `before` is the step that
 * gave power.
 */
export function settingSteps(work: Work, before: string): Step[] {
  const steps = hasSound(work) ? [filterStep(work, before), gainStep(work), speakerStep(work)] : [];
  const load = readingsOf(work, 'load');
  if (load.length > 0) steps.push(loadStep(work, load, steps.at(-1)?.id ?? before));
  return steps;
}

/** Controls that get their final state at one time, and the acts for it. */
function finished(work: Work, during: PlanControl['final']['during']) {
  const controls = work.plan.controls.filter(({ final }) => final.during === during);
  const knobs = dashLevels(work);
  // A gain is told by its voltage, which stands on the presets sheet beside its blank; a knob of the dash by its own words.
  const sources = work.plan.items.filter(({ kind }) => kind === 'source-unit').map(({ id }) => id);
  // The step of the gains tells by its own words how far up a source stands.
  const told = controls.filter(({ item }) => during !== 'gains' || ![...knobs, ...sources].includes(item));
  const names = told.map(({ item, control, final }) =>
    during === 'gains'
      ? `${item} ${control}`
      : `${item} ${control} to ${final.state ?? 'what its maker says'}`,
  );
  return { names: names.join(', '), acts: controls.map(({ item, control }) => `finish:${item}.${control}`) };
}

/** Level controls that the driver reaches. */
function dashLevels({ plan }: Work): readonly string[] {
  return plan.items.flatMap(({ id, kind, origin }) =>
    kind === 'level-control' && origin === 'job' ? [id] : [],
  );
}

/** What is set flat while the gain of some channels is read, and only then as planned. */
interface LeftFlat {
  readonly channels: readonly string[];
  /** Outputs whose equaliser waits; a boost is told as the control that it is. */
  readonly outputs: readonly string[];
}

function leftFlat({ plan }: Work): LeftFlat {
  const channels = plan.audio.channels.filter(({ gain }) => gain?.state === 'equalising-flat');
  const processors = plan.items.filter(({ kind }) => kind === 'processor').map(({ id }) => id);
  const outputs = channels
    .flatMap(({ peaks }) => peaks.map(({ where }) => where))
    .filter((where) => processors.includes(linkEndOf(where).device));
  return { channels: channels.map(({ id }) => id), outputs: [...new Set(outputs)] };
}

/** What stays on the vehicle's own source as it is preset: set here, where it has power and the speakers are off. */
function sourceFirst({ plan }: Work) {
  const fitted = plan.items.filter(({ origin }) => origin === 'vehicle').map(({ id }) => id);
  const controls = plan.controls.filter(({ item }) => fitted.includes(item));
  const names = controls.map(({ item, control, preset }) => `${item} ${control} to ${preset}`);
  return {
    text: names.length === 0 ? '' : `. First set ${names.join(', ')}`,
    acts: controls.map(({ item, control }) => `set:${item}.${control}`),
  };
}

function filterStep(work: Work, before: string): Step {
  const source = sourceFirst(work);
  const processors = work.plan.items.filter(({ kind, origin }) => kind === 'processor' && origin === 'job');
  const { names, acts } = finished(work, 'filters');
  const what = work.plan.audio.channels.some(({ peaks }) => peaks.length > 0)
    ? 'filters and equalising'
    : 'filters';
  const { channels: flat } = leftFlat(work);
  const load =
    processors.length > 0
      ? `Load the ${what} into ${processors.map(({ id }) => id).join(' and ')}`
      : `Set the ${what} of the filter sheet`;
  const waits = flat.length === 0 ? '' : `, but leave equalising and boost of ${flat.join(' and ')} flat`;
  return step('filters', [{ step: before, why: 'a filter is loaded with power on' }], {
    ...setting,
    text: `Speakers off${source.text}. ${load}${waits}${names === '' ? '' : `. Only then set ${names}`}`,
    minutes: minutesFor(work, 'set-control', source.acts.length + acts.length + processors.length) || 1,
    acts: [...source.acts, 'load-filters', ...acts],
    proof:
      'Type, order and corner of each read back as on the filter sheet; no path is filtered twice at one corner',
  });
}

function gainStep(work: Work): Step {
  const readings = readingsOf(work, 'gains');
  const { names, acts } = finished(work, 'gains');
  const knobs = dashLevels(work).length > 0 ? ', level control of the dash fully up' : '';
  const sources = work.sourcesAt.length === 0 ? '' : `, ${work.sourcesAt.join(', ')} and never above`;
  return step(
    'gains',
    [
      {
        step: 'filters',
        why: 'the voltages are those of a tone through the filters, as they stand for good',
      },
    ],
    {
      ...setting,
      text: `Speakers off${knobs}${sources}. Filters stay as loaded. Set the gains by the meter, each with its own tone, to the voltages of the presets sheet${names === '' ? '' : `: ${names}`}. Then prove each filter with a tone inside its band and one an octave outside`,
      tools: ['true-RMS meter', 'test tones', 'hearing protection'],
      minutes: Math.max(1, minutesFor(work, 'set-gain', readings.length)),
      acts: ['gains', ...acts, 'prove-filters', ...readings.map((id) => `measure:${id}`)],
      proof: `Each gain reads its voltage or up to ${percentKept(work.gainUnder)} less, never more; outside its band each output falls as its filters say`,
    },
  );
}

function speakerStep(work: Work): Step {
  const readings = readingsOf(work, 'delays');
  const { names, acts } = finished(work, 'delays');
  const { outputs: waiting } = leftFlat(work);
  const tweeters =
    work.activeTweeters.length === 0
      ? ''
      : `, ${work.activeTweeters.join(' and ')} through a series capacitor at first`;
  const load = waiting.length === 0 ? '' : `Load the equalising of ${waiting.join(' and ')}. `;
  const delayed = work.plan.audio.speakers.some(({ delayMs }) => delayMs !== null && delayMs > 0);
  const set = delayed ? 'Set delays and polarity' : 'Set polarity; no delay is planned';
  return step(
    'speakers-on',
    [{ step: 'gains', why: 'no speaker hears a test tone at full level, nor a filter that is not proved' }],
    {
      ...setting,
      text: `${load}Source at its lowest level, speaker plugs on${tweeters}. ${set}${names === '' ? '' : `; set ${names}`}`,
      tools: ['polarity tester', 'hearing protection'],
      minutes: Math.max(
        1,
        minutesFor(work, 'take-reading', readings.length) + minutesFor(work, 'set-control', acts.length),
      ),
      acts: ['speakers-on', ...acts, ...readings.map((id) => `measure:${id}`)],
      proof: `Each ${delayed ? 'delay and polarity' : 'polarity'} is as on the sheet; every speaker plays its own band`,
    },
  );
}

function loadStep(work: Work, readings: readonly string[], before: string): Step {
  const guarded = before === 'speakers-on';
  const why = guarded ? 'full load only once gains and filters guard the speakers' : 'supply before load';
  return step('load-readings', [{ step: before, why }], {
    ...setting,
    text: 'Take the readings under load, then of noise, and of the draw with the key off',
    tools: ['true-RMS meter', 'shorting plugs', 'hearing protection'],
    minutes: minutesFor(work, 'take-reading', readings.length),
    acts: readings.map((id) => `measure:${id}`),
    proof: 'Each reading lies within its limits or is explained; the presets sheet is ticked in both columns',
  });
}
