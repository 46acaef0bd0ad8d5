import { RealRoom, WholeRoom } from './scratch-arrays.ts';

/**
 * The branches of a network between the unknowns of its solution, column by column, since there are many of them. Rows
 * of the ends: one past the last unknown is the reference; both are, where the ends are tied together. The voltage over
 * a branch is u = V[from] - V[to] + offsetV.
 */
export interface Branches {
  readonly count: number;
  /** Numbers of the network's elements that they stand for. */
  readonly element: number[];
  readonly from: number[];
  readonly to: number[];
  /** Slot of (from, to) in the matrix; the one that nobody reads where either end is the reference. */
  readonly slot: number[];
  readonly offsetV: number[];
}

/** Branches whose current follows their voltage in a straight line: siemens * u + fixedA. */
export interface LinearBranches extends Branches {
  readonly siemens: number[];
  readonly fixedA: number[];
}

/** Loads of which a share can be on: share * (givenA + powerW / u). */
export interface LoadBranches extends Branches {
  readonly givenA: number[];
  readonly powerW: number[];
}

/** Voltage over branch k at the unknowns x. */
export function branchV({ from, to, offsetV }: Branches, k: number, x: number[]): number {
  return (x[from[k] ?? 0] ?? 0) - (x[to[k] ?? 0] ?? 0) + (offsetV[k] ?? 0);
}

/** Current of the linear branch k at the unknowns x. */
export function linearA(branches: LinearBranches, k: number, x: number[]): number {
  return (branches.siemens[k] ?? 0) * branchV(branches, k, x) + (branches.fixedA[k] ?? 0);
}

/** Current of the load k, all of it on, at the unknowns x. */
export function loadA(loads: LoadBranches, k: number, x: number[]): number {
  const givenA = loads.givenA[k] ?? 0;
  const powerW = loads.powerW[k] ?? 0;
  return powerW === 0 ? givenA : givenA + powerW / branchV(loads, k, x);
}

/** Room for the columns that all branches have. */
class EndsRoom {
  readonly element = new WholeRoom();
  readonly from = new WholeRoom();
  readonly to = new WholeRoom();
  readonly slot = new WholeRoom();
  readonly offsetV = new RealRoom();
}

/** What every branch has. */
interface BranchEnds {
  readonly element: number;
  readonly from: number;
  readonly to: number;
  readonly slot: number;
  readonly offsetV: number;
}

/** Branches as they are found. */
class GrowingBranches implements Branches {
  count = 0;
  readonly element: number[];
  readonly from: number[];
  readonly to: number[];
  readonly slot: number[];
  readonly offsetV: number[];

  constructor(room: EndsRoom, most: number) {
    this.element = room.element.of(most);
    this.from = room.from.of(most);
    this.to = room.to.of(most);
    this.slot = room.slot.of(most);
    this.offsetV = room.offsetV.of(most);
  }

  /** Adds a branch; its number. */
  protected addEnds({ element, from, to, slot, offsetV }: BranchEnds): number {
    const k = this.count;
    this.count = k + 1;
    this.element[k] = element;
    this.from[k] = from;
    this.to[k] = to;
    this.slot[k] = slot;
    this.offsetV[k] = offsetV;
    return k;
  }
}

const [linearRoom, siemensRoom, fixedRoom] = [new EndsRoom(), new RealRoom(), new RealRoom()];

export class GrowingLinear extends GrowingBranches implements LinearBranches {
  readonly siemens: number[];
  readonly fixedA: number[];

  constructor(most: number) {
    super(linearRoom, most);
    this.siemens = siemensRoom.of(most);
    this.fixedA = fixedRoom.of(most);
  }

  add(ends: BranchEnds, siemens: number, fixedA: number): void {
    const k = this.addEnds(ends);
    this.siemens[k] = siemens;
    this.fixedA[k] = fixedA;
  }
}

const [loadRoom, givenRoom, powerRoom] = [new EndsRoom(), new RealRoom(), new RealRoom()];

export class GrowingLoads extends GrowingBranches implements LoadBranches {
  readonly givenA: number[];
  readonly powerW: number[];

  constructor(most: number) {
    super(loadRoom, most);
    this.givenA = givenRoom.of(most);
    this.powerW = powerRoom.of(most);
  }

  add(ends: BranchEnds, givenA: number, powerW: number): void {
    const k = this.addEnds(ends);
    this.givenA[k] = givenA;
    this.powerW[k] = powerW;
  }
}
