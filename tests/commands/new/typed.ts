import { type Asked, type Asker, Interrupted } from '../../../lib/commands/new/ask/question.ts';

/** Somebody who types lines, one an answer; an empty one is Enter. What was refused is told again and again until it fits. */
export class Typed implements Asker {
  readonly said: string[] = [];
  readonly refused: string[] = [];
  /** How many lines were typed. */
  count = 0;
  readonly #lines: readonly string[];

  constructor(...lines: readonly string[]) {
    this.#lines = lines;
  }

  say(text: string): void {
    this.said.push(text);
  }

  /** Breaks off where nothing more is to be typed. */
  async ask({ message, choices, fallback, fault }: Asked): Promise<string> {
    for (;;) {
      const line = this.#lines[this.count];
      if (line === undefined) throw new Interrupted();
      this.count += 1;
      const answer = line === '' ? (fallback ?? '') : line;
      const isOffered = !choices || choices.some(({ value }) => value === answer);
      const wrong = fault(answer) ?? (isOffered ? null : 'is not offered');
      if (wrong === null) return answer;
      this.refused.push(`${message}: ${line}: ${wrong}`);
    }
  }
}
