import { WholeRoom } from './scratch-arrays.ts';

/** So many names are kept at most: past them the table is emptied before the next network. */
const mostNames = 1 << 16;

/**
 * Numbers the names of one network after another. Names are kept from network to network, since the same ones come
 * again and again and a table that is there already is read much faster than one is made; numbers are not.
 */
export class NameTable {
  #places = new Map<string, number>();
  /** By place in the table: the network, counted from 1, in which the name was met last, and its number there. */
  readonly #metRoom = new WholeRoom();
  readonly #numberRoom = new WholeRoom();
  #met = this.#metRoom.of(0);
  #number = this.#numberRoom.of(0);
  #network = 0;
  #count = 0;

  /** Begins a network: no name has been met in it. */
  begin(): void {
    this.#count = 0;
    this.#network += 1;
    if (this.#places.size <= mostNames && this.#network < 0x7fffffff) return;
    this.#places = new Map();
    this.#met.fill(0);
    this.#network = 1;
  }

  /** Names met in this network. */
  get count(): number {
    return this.#count;
  }

  /** The number of a name in the order in which this network's names are met first: `count` so far, where it is new. */
  numberOf(name: string): number {
    const place = this.#places.get(name) ?? this.#addPlace(name);
    if (this.#met[place] === this.#network) return this.#number[place] ?? 0;
    const number = this.#count;
    this.#met[place] = this.#network;
    this.#number[place] = number;
    this.#count = number + 1;
    return number;
  }

  /** The number of a name that this network has met; -1 of any other. */
  find(name: string): number {
    const place = this.#places.get(name);
    return place !== undefined && this.#met[place] === this.#network ? (this.#number[place] ?? 0) : -1;
  }

  #addPlace(name: string): number {
    const place = this.#places.size;
    this.#places.set(name, place);
    this.#met = this.#metRoom.of(place + 1);
    this.#number = this.#numberRoom.of(place + 1);
    return place;
  }
}
