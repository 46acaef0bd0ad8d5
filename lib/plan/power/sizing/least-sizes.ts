import type { LossSide } from '../../../model/vocabulary.ts';
import type { CableCandidate } from '../../../power/conductor/conductor-choice.ts';

/** What a conductor grew for: the drop of a device that the last of its smaller sizes left over the limit. */
export interface GrownFor {
  /** The size that its fuse asks for, and the last one that was too thin for the drop. */
  readonly from: CableCandidate['size'];
  readonly with: CableCandidate['size'];
  readonly item: string;
  readonly side: LossSide;
  /** What the device would lose with that one, and what is allowed (V); both 0 where it could not be fed at all. */
  readonly lostV: number;
  readonly allowedV: number;
}

/** Why a conductor may not be thinner than it is. */
export interface LeastSize {
  readonly areaMm2: number;
  readonly why: string;
  /** What it grew for, where that is a drop. */
  readonly grown?: GrownFor;
}

/** How conductors that grow may end in their ports: as they are, or through reducers too. */
export type PortEnds = 'bare' | 'reduced';

/** How many attempts to grow for each device came to nothing. */
export type Tried = Map<string, number>;

/** Least sizes as plain data: by link, by fuse the least current (A), and by the ends of conductors what was tried in vain. */
export interface LeastSizesHeld {
  readonly sizes: ReadonlyMap<string, LeastSize>;
  readonly flowsA: ReadonlyMap<string, number>;
  readonly tried: Readonly<Record<PortEnds, ReadonlyMap<string, number>>>;
}

/**
 * The least size of each conductor, by link, the least current that each fuse is chosen for, and the attempts to grow that
 * came to nothing. They only grow: a size never shrinks between passes, which is what ends the loop between size and
 * length, and what was given up in one pass is not taken up in the next.
 */
export class LeastSizes {
  readonly #sizes = new Map<string, LeastSize>();
  readonly #flowsA = new Map<string, number>();
  readonly #tried: Readonly<Record<PortEnds, Tried>> = { bare: new Map(), reduced: new Map() };

  constructor(tried?: LeastSizesHeld['tried']) {
    if (tried) this.adopt({ sizes: new Map(), flowsA: new Map(), tried });
  }

  of(link: string): LeastSize {
    return this.#sizes.get(link) ?? { areaMm2: 0, why: '' };
  }

  /** The same sizes, to try on what may be given up again. */
  copy(): LeastSizes {
    const copy = new LeastSizes();
    copy.adopt(this.held());
    return copy;
  }

  /** Takes over what others came to. */
  adopt({ sizes, flowsA, tried }: LeastSizesHeld): void {
    for (const [link, { areaMm2, why, grown }] of sizes) this.raise(link, areaMm2, why, grown);
    for (const [fuse, currentA] of flowsA) this.raiseFlow(fuse, currentA);
    for (const ends of ['bare', 'reduced'] as const) this.giveUp(ends, tried[ends]);
  }

  held(): LeastSizesHeld {
    const tried = { bare: this.tried('bare'), reduced: this.tried('reduced') };
    return { sizes: new Map(this.#sizes), flowsA: new Map(this.#flowsA), tried };
  }

  /** What was tried in vain with such ends. */
  tried(ends: PortEnds): Tried {
    return new Map(this.#tried[ends]);
  }

  /** Notes what was tried in vain; fewer attempts than before change nothing. */
  giveUp(ends: PortEnds, tried: ReadonlyMap<string, number>): void {
    const own = this.#tried[ends];
    for (const [device, attempts] of tried) own.set(device, Math.max(attempts, own.get(device) ?? 0));
  }

  /** The current that a fuse carries at the voltages that its devices really get (A); 0 while none was solved. */
  flowA(fuse: string): number {
    return this.#flowsA.get(fuse) ?? 0;
  }

  raiseFlow(fuse: string, currentA: number): void {
    if (currentA > this.flowA(fuse)) this.#flowsA.set(fuse, currentA);
  }

  /** Raises the least size of a conductor; a smaller one changes nothing. */
  raise(link: string, areaMm2: number, why: string, grown?: GrownFor): void {
    if (areaMm2 > this.of(link).areaMm2) this.#sizes.set(link, { areaMm2, why, ...(grown && { grown }) });
  }
}
