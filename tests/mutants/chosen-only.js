import { appendFileSync, readFileSync } from 'node:fs';
import { CheckStatus } from '@stryker-mutator/api/check';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { changeOf, keyOf, outcomesVariable, toTryVariable } from './change-key.js';

/** @typedef {import('@stryker-mutator/api/core').Mutant} Mutant */

/** Lets through the changes that were chosen, and refuses all others before a test is run for them. */
class ChosenOnly {
  /** @type {Set<string>} */
  #chosen = new Set();

  async init() {
    const file = process.env[toTryVariable];
    if (file !== undefined) this.#chosen = new Set(JSON.parse(readFileSync(file, 'utf8')));
  }

  /** @param {Mutant[]} mutants */
  async check(mutants) {
    return Object.fromEntries(mutants.map((mutant) => [mutant.id, this.#judged(mutant)]));
  }

  /** @param {Mutant[]} mutants */
  async group(mutants) {
    return [mutants.map(({ id }) => id)];
  }

  /**
   * @param {Mutant} mutant
   * @returns {import('@stryker-mutator/api/check').CheckResult}
   */
  #judged(mutant) {
    return this.#chosen.has(keyOf(mutant))
      ? { status: CheckStatus.Passed }
      : { status: CheckStatus.CompileError, reason: 'not chosen' };
  }
}

/** Writes down what became of each change as soon as it is known: a run of hours may be broken off. */
class Outcomes {
  /** @param {import('@stryker-mutator/api/core').MutantResult} result */
  onMutantTested(result) {
    const file = process.env[outcomesVariable];
    const change = changeOf(result);
    if (file !== undefined && change.status !== 'CompileError' && change.status !== 'Ignored')
      appendFileSync(file, `${JSON.stringify([keyOf(change), change.status])}\n`);
  }
}

export const strykerPlugins = [
  declareClassPlugin(PluginKind.Checker, 'chosen-only', ChosenOnly),
  declareClassPlugin(PluginKind.Reporter, 'outcomes', Outcomes),
];
