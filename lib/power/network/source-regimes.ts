import type { ElementFlow, SourceRegime, VoltageSource } from './network-types.ts';

/** The state of each bounded source, by id. */
export type Regimes = ReadonlyMap<string, SourceRegime>;

/**
 * What a source does at its terminals in a state: the current that it is held to (A, from `from` to `to`) and the
 * voltage at which that state begins, else the resistance behind which it holds its voltage (ohm).
 */
export type SourceLaw = { readonly heldA: number; readonly bendV: number } | { readonly ohm: number };

export function sourceLaw(source: VoltageSource, regime: SourceRegime = 'set-point'): SourceLaw {
  const { emfV, ohm } = source;
  if (source.model === 'emf') {
    const { limitA = 0 } = source;
    if (regime === 'limited') return { heldA: -limitA, bendV: emfV - ohm * limitA };
    return regime === 'set-point' ? { ohm } : { heldA: 0, bendV: emfV };
  }
  const { chargeOhm, acceptA } = source;
  if (regime === 'accepting') return { heldA: acceptA, bendV: emfV + chargeOhm * acceptA };
  return { ohm: regime === 'charging' ? chargeOhm : ohm };
}

/**
 * The state to begin with, that of the highest voltages: a battery below the highest source charges, and whatever else
 * holds its voltage.
 */
export function firstRegime(source: VoltageSource, highestV: number): SourceRegime {
  return source.model === 'two-slope' && source.emfV < highestV ? 'charging' : 'set-point';
}

/** Currents and voltages closer than this to the bend between two states count as on it: both laws hold there. */
const bendA = 1e-7;
const bendV = 1e-9;

/** The state that follows from what flows, one bend at a time; the same where it agrees. */
export function regimeAfter(
  source: VoltageSource,
  regime: SourceRegime,
  { currentA, dropV }: Pick<ElementFlow, 'currentA' | 'dropV'>,
): SourceRegime {
  if (source.model === 'emf') return rectified(source, regime, currentA, dropV);
  const { emfV, chargeOhm, acceptA } = source;
  switch (regime) {
    case 'accepting':
      return dropV < emfV + chargeOhm * acceptA - bendV ? 'charging' : regime;
    case 'charging':
      if (currentA > acceptA + bendA) return 'accepting';
      return currentA < -bendA ? 'set-point' : regime;
    default:
      return currentA > bendA ? 'charging' : 'set-point';
  }
}

function rectified(
  { emfV, ohm, limitA = Number.POSITIVE_INFINITY }: Extract<VoltageSource, { readonly model: 'emf' }>,
  regime: SourceRegime,
  currentA: number,
  dropV: number,
): SourceRegime {
  switch (regime) {
    case 'limited':
      return dropV > emfV - ohm * limitA + bendV ? 'set-point' : regime;
    case 'set-point':
      if (-currentA > limitA + bendA) return 'limited';
      return currentA > bendA ? 'accepting' : regime;
    default:
      return dropV < emfV - bendV ? 'set-point' : regime;
  }
}

const statesOf = ({ model }: VoltageSource): readonly SourceRegime[] =>
  model === 'emf' ? ['set-point', 'limited', 'accepting'] : ['charging', 'set-point', 'accepting'];

/** Every combination of the states that sources can be in. */
export function* everyState(bounded: readonly VoltageSource[]): Generator<Regimes> {
  const [first, ...others] = bounded;
  if (!first) {
    yield new Map();
    return;
  }
  for (const rest of everyState(others))
    for (const regime of statesOf(first)) yield new Map([[first.id, regime], ...rest]);
}
