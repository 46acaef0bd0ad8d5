/** The lines across one axis of a grid, as a search goes along them: what follows from them alone, worked out once. */
export class DressLines {
  readonly at: Float64Array;
  /** From each line to the next (m), and what such a piece costs where it is not dear. */
  readonly pieceM: Float64Array;
  readonly plain: Float64Array;
  /** By line: the one on which a wire that was bent there and goes up, or down, may be bent again; -1 where none. */
  readonly up: Int16Array;
  readonly down: Int16Array;
  /** By line: what is left to go across to the goal at least (m), and 1 where the goal may lie straight ahead. */
  readonly leftM: Float64Array;
  readonly ahead: Uint8Array;

  constructor(at: Float64Array, betweenBendsM: number, plainMetre: number) {
    const count = at.length;
    this.at = at;
    this.pieceM = new Float64Array(count);
    this.plain = new Float64Array(count);
    for (let line = 0; line + 1 < count; line += 1) {
      this.pieceM[line] = (at[line + 1] ?? 0) - (at[line] ?? 0);
      this.plain[line] = (this.pieceM[line] ?? 0) * plainMetre;
    }
    this.up = new Int16Array(count);
    this.down = new Int16Array(count);
    for (let line = 0; line < count; line += 1) {
      this.up[line] = this.#bentAgain(line, 1, betweenBendsM);
      this.down[line] = this.#bentAgain(line, -1, betweenBendsM);
    }
    this.leftM = new Float64Array(count);
    this.ahead = new Uint8Array(count).fill(1);
  }

  /** The goal lies on a line: to be met going up (1) or down (-1), or across it (0). */
  aimAt(goalM: number, sign: 1 | -1 | 0): void {
    for (let line = 0; line < this.at.length; line += 1) {
      const leftM = goalM - (this.at[line] ?? 0);
      this.leftM[line] = Math.abs(leftM);
      this.ahead[line] = (sign === 0 ? leftM === 0 : sign * leftM >= 0) ? 1 : 0;
    }
  }

  /** The goal lies beyond a place, going up (1) or down (-1): by the least that `sign` times it comes to. */
  leaveBeyond(nearestM: number, sign: 1 | -1): void {
    for (let line = 0; line < this.at.length; line += 1)
      this.leftM[line] = Math.max(0, nearestM - sign * (this.at[line] ?? 0));
  }

  #bentAgain(from: number, step: 1 | -1, betweenBendsM: number): number {
    let [line, runM] = [from, 0];
    do {
      line += step;
      if (line < 0 || line >= this.at.length) return -1;
      runM += this.pieceM[step > 0 ? line - 1 : line] ?? 0;
    } while (runM < betweenBendsM - 1e-9);
    return line;
  }
}
