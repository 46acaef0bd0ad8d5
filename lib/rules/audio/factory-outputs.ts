import type { FindingId } from '../../model/findings/index.ts';
import type { PlanOutput } from '../../model/plan/index.ts';
import { deviceIdOf, deviceOf, deviceSpot, hasRole, wireSpot } from '../look-up.ts';
import type { Case, Rule, RuleOf, Verdict } from '../rule.ts';
import { decibels, hertz, listed, volts } from '../words.ts';
import { inputOverdriven, ratedText } from './overdriven.ts';

/** Full range for music in a vehicle: what an output must reach to feed a system by itself. */
const fullRange = { fromHz: 60, toHz: 15_000 };

type Says<Id extends FindingId> = Pick<Verdict<Id>, 'level' | 'message' | 'remedy'> &
  Partial<Pick<Verdict<Id>, 'value' | 'limit' | 'unit'>>;

/** A rule about what one output of the source gives. */
function outputRule<Id extends FindingId>(
  id: Id,
  says: (output: PlanOutput, about: Case) => Says<Id> | null,
): RuleOf<Id> {
  return {
    id,
    judge: (about) =>
      about.plan.audio.outputs.flatMap((output): Verdict<Id>[] => {
        const said = says(output, about);
        if (!said) return [];
        const spot = deviceSpot(about.job, output.item);
        return [{ ...said, of: [output.id, output.item], ...spot }];
      }),
  };
}

const chimeLost = outputRule('chime-lost', ({ id, chimes, feeds }, { job }) => {
  const leftOpen = [id, `${id}+`, `${id}-`].some((end) => Object.hasOwn(job.file['left-open'], end));
  if (chimes !== true || feeds.length > 0 || !leftOpen) return null;
  return {
    level: 'stop',
    message: `warnings of the vehicle sound through ${id}, and the job leaves it open: they would be lost`,
    remedy:
      'leave its own speaker on it, feed it into the system, or add a sounder as the vehicle maker says',
  };
});

const noiseCancelling = outputRule('noise-cancelling-on', ({ id, noiseCancelling: isOn, feeds }) =>
  isOn !== true || feeds.length === 0
    ? null
    : {
        level: 'caution',
        message: `active noise cancelling plays through ${id}: with other gain and delay behind it, it howls or booms`,
        remedy: 'switch it off as the vehicle maker says, or unplug its microphones, before the first sound',
      },
);

const offsetUnlikely = outputRule('output-offset-unlikely', ({ id, item, offsetV }, { job }) => {
  const isLine = hasRole(job, id, 'signal-out');
  const limitV = job.rules['line-offset'].value;
  if (offsetV === null || !isLine || Math.abs(offsetV) <= limitV) return null;
  return {
    level: 'caution',
    message: `${id} is a line output of ${item}, and is written with a direct-current offset of ${volts(offsetV)}`,
    value: offsetV,
    limit: limitV,
    unit: 'V',
    remedy: 'measure it again with nothing joined to it; half the supply is the offset of a speaker output',
  };
});

const bandLimited = outputRule('band-limited-output', ({ id, fromHz, toHz, feeds }, { job }) => {
  const isLow = fromHz !== null && fromHz > fullRange.fromHz;
  const isHigh = toHz !== null && toHz < fullRange.toHz;
  const isSummed = feeds.every((end) => {
    const spec = deviceOf(job, deviceIdOf(end))?.spec;
    return spec?.kind === 'processor' && spec.summing === true;
  });
  if (!(isLow || isHigh) || isSummed) return null;
  return {
    level: 'caution',
    message: `${id} gives ${hertz(fromHz ?? 0)} to ${toHz === null ? 'the top' : hertz(toHz)} alone, and feeds ${listed(feeds)}, which does not sum`,
    remedy: 'take the signal from full-range outputs, or sum the bands in a processor that can',
  };
});

/** Outputs of one source whose bass moves are told together: one way of setting up mends all. */
const equalising: Rule = {
  id: 'equalising-moves-with-level',
  judge({ job, plan }) {
    const moving = plan.audio.outputs.filter(
      ({ equalising: how, feeds }) => how === 'moves-with-level' && feeds.length > 0,
    );
    return [...new Set(moving.map(({ item }) => item))].map(
      (item): Verdict<'equalising-moves-with-level'> => {
        const ids = moving.filter((output) => output.item === item).map(({ id }) => id);
        return {
          level: 'caution',
          of: [...ids, item],
          message: `the bass of ${listed(ids)} falls as the level rises: what is set at one level is wrong at another`,
          remedy:
            'set it up at the highest clean level, keep the source there, and turn the level behind it, by a processor or a level control',
          ...deviceSpot(job, item),
        };
      },
    );
  },
};

const behindEqualising: Rule = {
  id: 'gain-behind-equalising',
  judge({ job, plan }) {
    const items = [...new Set(plan.audio.outputs.map(({ item }) => item))];
    return items.flatMap((item): Verdict<'gain-behind-equalising'>[] => {
      const equalised = plan.audio.outputs.filter(
        (output) => output.item === item && output.equalising === 'fixed' && output.feeds.length > 0,
      );
      if (equalised.length === 0) return [];
      return [
        {
          level: 'note',
          of: [item, ...equalised.map(({ id }) => id)],
          message: `${listed(equalised.map(({ id }) => id))} equalise, and by how much is not known: a gain voltage reads right only with a tone at a frequency that the source boosts most; with any other it reads low, and the gain is set too high`,
          remedy:
            'equalise the source flat in the processor first, then set the gains; or feed the tones in behind the source',
          ...deviceSpot(job, item),
        },
      ];
    });
  },
};

const loadSensing = outputRule('load-sensing-output', ({ id, loadSensing: senses, feeds }) =>
  senses !== true || feeds.length === 0
    ? null
    : {
        level: 'caution',
        message: `${id} switches itself off where it feels no speaker, and a signal input is none`,
        remedy: 'fit a load resistor across it as the maker of the source says, mounted where it can get hot',
      },
);

const reversed = outputRule('source-polarity-reversed', ({ id, polarity, feeds }) =>
  polarity !== 'reversed' || feeds.length === 0
    ? null
    : {
        level: 'caution',
        message: `${id} is of reversed polarity`,
        remedy: 'turn it over in the processor, or swap its two conductors at the input and label them so',
      },
);

const digital = outputRule('digital-output-without-interface', ({ id, form, feeds }, { job }) => {
  const analogue = feeds.filter((end) => hasRole(job, end, 'signal-in', 'speaker-in-positive'));
  if (form !== 'digital' || analogue.length === 0) return null;
  return {
    level: 'stop',
    message: `${id} is digital, and ${listed(analogue)} takes an analogue signal`,
    remedy: 'put the interface for this vehicle between them',
  };
});

const underdriven: Rule = {
  id: 'input-underdriven',
  judge(about) {
    return about.plan.audio.inputs.flatMap((one): Verdict<'input-underdriven'>[] => {
      const { input, output, wire, sourceV, sourceRated, leastV, reserveDb, verdict } = one;
      if (verdict !== 'too-low' || sourceV === null || leastV === null || reserveDb === null) return [];
      return [
        {
          level: 'note',
          of: [input, output, wire],
          message: `${output} gives ${volts(sourceV)} clean${ratedText(sourceRated)}, and ${input} asks for ${volts(leastV)} with its gain fully up: ${decibels(-reserveDb)} are missing`,
          value: sourceV,
          limit: leastV,
          unit: 'V',
          remedy: 'take a higher output of the source, or put a line driver behind it',
          ...wireSpot(about, wire),
        },
      ];
    });
  },
};

export const factoryOutputRules: readonly Rule[] = [
  offsetUnlikely,
  chimeLost,
  digital,
  noiseCancelling,
  bandLimited,
  equalising,
  behindEqualising,
  loadSensing,
  reversed,
  inputOverdriven,
  underdriven,
];
