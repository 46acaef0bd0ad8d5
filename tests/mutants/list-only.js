import { CheckStatus } from '@stryker-mutator/api/check';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';

/** @typedef {import('@stryker-mutator/api/core').Mutant} Mutant */

/** Refuses every change before a test is run for it: the changes are listed, and put into a copy of the code. */
class ListOnly {
  async init() {}

  /** @param {Mutant[]} mutants */
  async check(mutants) {
    const refused = { status: CheckStatus.CompileError, reason: 'listed only' };
    return Object.fromEntries(mutants.map(({ id }) => [id, refused]));
  }

  /** @param {Mutant[]} mutants */
  async group(mutants) {
    return [mutants.map(({ id }) => id)];
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.Checker, 'list-only', ListOnly)];
