import { type Effects, realEffects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { type Given, readLine, type Taken } from './line/read-line.ts';
import { commandHelp, generalHelp } from './told/help.ts';

interface Command extends Taken {
  run(effects: Effects, given: Given): Promise<ExitStatus> | ExitStatus;
}

/** Every command. The modules are loaded when asked for, so that `--help` is quick. */
const commands: Readonly<Record<string, Command>> = {
  build: {
    options: { audience: 'string', 'keep-going': 'boolean', job: 'string' },
    words: [],
    run: async (effects, { flags }) => {
      const { audiences } = await import('../model/audience.ts');
      const audience = audiences.find((one) => one === (flags.audience ?? 'bench'));
      if (!audience) return refuse(effects, `--audience takes ${audiences.join(', ')}`);
      const { build } = await import('./build.ts');
      return build(effects, { audience, keepGoing: flags['keep-going'] === true, job: textOf(flags.job) });
    },
  },
  serve: {
    options: { port: 'string' },
    words: [],
    run: async (effects, { flags }) => {
      const port = Number(flags.port ?? 8080);
      if (!Number.isInteger(port) || port < 0 || port > 65535)
        return refuse(effects, '--port takes a whole number up to 65535');
      const { serve } = await import('./serve.ts');
      return serve(effects, port, interrupted());
    },
  },
  check: {
    options: { json: 'boolean', plain: 'boolean', fix: 'boolean', yes: 'boolean' },
    words: ['JOB?'],
    run: async (effects, { words, flags }) => {
      if (flags.fix === true) {
        if (flags.json === true || flags.plain === true)
          return refuse(effects, 'check: --fix shows lines, and takes no --json or --plain');
        const { fix } = await import('./fix.ts');
        return fix(effects, words[0] ?? null, flags.yes === true);
      }
      if (flags.yes === true) return refuse(effects, 'check: --yes goes with --fix');
      if (flags.json === true && flags.plain === true)
        return refuse(effects, 'check: one of --json and --plain');
      const { check } = await import('./check.ts');
      const form = flags.json === true ? 'json' : flags.plain === true ? 'plain' : 'told';
      return check(effects, words[0] ?? null, form);
    },
  },
  schemas: {
    options: { yes: 'boolean' },
    words: [],
    run: async (effects, { flags }) => {
      const { schemas } = await import('./schemas/schemas.ts');
      return schemas(effects, flags.yes === true);
    },
  },
  plan: {
    options: { json: 'boolean', schema: 'boolean' },
    words: ['JOB?'],
    run: async (effects, { words: [job], flags }) => {
      const { plan, planSchema } = await import('./plan.ts');
      if (flags.schema === true) return planSchema(effects);
      return job === undefined
        ? refuse(effects, 'plan needs a job: rackleaf plan JOB')
        : plan(effects, job, flags.json === true);
    },
  },
  compare: {
    options: { to: 'string', json: 'boolean' },
    words: ['A', 'B?'],
    run: async (effects, { words: [before = '', after = null], flags }) => {
      const { compare } = await import('./compare/compare.ts');
      return compare(effects, { before, after, to: textOf(flags.to), json: flags.json === true });
    },
  },
  like: {
    options: { vehicle: 'string', space: 'string', most: 'string', json: 'boolean' },
    repeated: ['part'],
    words: ['JOB?'],
    run: async (effects, { words: [job = null], flags, lists }) => {
      const { readLikeWish } = await import('./like/like-wish.ts');
      const wish = readLikeWish(job, flags, lists.part ?? []);
      if (typeof wish === 'string') return refuse(effects, wish);
      return (await import('./like/like.ts')).like(effects, wish);
    },
  },
  new: {
    options: { shop: 'boolean', flags: 'boolean' },
    repeated: async () => (await import('./new/new-flags.ts')).newFlags(),
    words: ['WHAT?', 'NAME?'],
    run: async (effects, { words, flags, lists }) => {
      const { newCommand } = await import('./new/new-command.ts');
      return newCommand(effects, {
        words: flags.shop === true ? ['shop', ...words] : words,
        lists,
        tellsFlags: flags.flags === true,
      });
    },
  },
  bench: {
    options: { json: 'boolean', longest: 'boolean', against: 'string', rounds: 'string', job: 'string' },
    repeated: ['part'],
    words: [],
    run: async (effects, { flags, lists }) => {
      const reference = textOf(flags.against);
      if (reference !== null) {
        const { readAgainst, benchAgainst } = await import('./bench-against.ts');
        const choices = readAgainst(reference, lists.part ?? [], textOf(flags.rounds), textOf(flags.job));
        if (typeof choices === 'string') return refuse(effects, choices);
        return benchAgainst(effects, choices, flags.json === true);
      }
      const { bench, readBenchParts } = await import('./bench.ts');
      const parts = readBenchParts(lists.part ?? []);
      if (typeof parts === 'string') return refuse(effects, parts);
      return bench(effects, flags.json === true, parts, { longest: flags.longest === true });
    },
  },
  estimate: {
    options: { to: 'string', json: 'boolean' },
    words: ['JOB'],
    run: async (effects, { words: [job = ''], flags }) => {
      const { estimate } = await import('./estimate/estimate.ts');
      return estimate(effects, { job, to: textOf(flags.to), json: flags.json === true });
    },
  },
  import: {
    options: { write: 'boolean' },
    words: ['TABLE'],
    run: async (effects, { words: [table = ''], flags }) => {
      const { importStock } = await import('./import.ts');
      return importStock(effects, table, flags.write === true);
    },
  },
  keep: {
    options: { yes: 'boolean' },
    words: ['JOB', 'KIND...?'],
    run: async (effects, { words: [job = '', ...named], flags }) => {
      const { keptKinds } = await import('../plan/keeping/kept-values.ts');
      const { keptName } = await import('../plan/keeping/kept-names.ts');
      const names = named.flatMap((name) => keptName(name) ?? []);
      const unknown = named.find((name) => !keptKinds.some((kind) => kind === name) && !keptName(name));
      if (unknown !== undefined)
        return refuse(
          effects,
          `keep: "${unknown}" is none of ${keptKinds.join(', ')}; one thing alone is kept by links.NAME`,
        );
      const { keep } = await import('./keep.ts');
      const kinds = keptKinds.filter((kind) => named.length === 0 || named.includes(kind));
      return keep(effects, { job, kinds, names, yes: flags.yes === true });
    },
  },
  release: {
    options: {},
    words: ['JOB'],
    run: async (effects, { words: [job = ''] }) => {
      const { release } = await import('./release.ts');
      return release(effects, job);
    },
  },
  packet: {
    options: { to: 'string', json: 'boolean' },
    words: ['JOB'],
    run: async (effects, { words: [job = ''], flags }) => {
      const { packet } = await import('./packet.ts');
      return packet(effects, job, textOf(flags.to), flags.json === true);
    },
  },
  export: {
    options: {
      to: 'string',
      units: 'string',
      paper: 'string',
      'label-stock': 'string',
      sheets: 'string',
      stock: 'boolean',
      orders: 'boolean',
      json: 'boolean',
    },
    repeated: ['format'],
    words: ['JOB?', 'JOB...?'],
    run: async (effects, { words: jobs, flags, lists }) => {
      if (flags.stock === true) {
        if (jobs.length > 0) return refuse(effects, 'export: --stock is of the shop, and takes no job');
        const { exportStock } = await import('./export-stock.ts');
        return exportStock(effects, textOf(flags.to));
      }
      if (flags.orders === true) {
        if (jobs.length > 0) return refuse(effects, 'export: --orders is of the shop, and takes no job');
        const { exportOrders } = await import('./export-orders.ts');
        return exportOrders(effects, textOf(flags.to));
      }
      if (jobs.length === 0) return refuse(effects, 'export: needs JOB, --stock or --orders');
      const { exportJobs } = await import('./export.ts');
      return exportJobs(effects, {
        jobs,
        to: textOf(flags.to),
        formats: lists.format ?? [],
        units: textOf(flags.units),
        paper: textOf(flags.paper),
        labelStock: textOf(flags['label-stock']),
        sheets: textOf(flags.sheets),
        json: flags.json === true,
      });
    },
  },
};

function textOf(flag: string | boolean | undefined): string | null {
  return typeof flag === 'string' ? flag : null;
}

function interrupted(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}

function refuse(effects: Effects, message: string): ExitStatus {
  effects.tell(`${message}\nrackleaf --help tells more`);
  return exitStatus.inputErrors;
}

/** Commands that begin files of a shop. */
const begins: ReadonlySet<string> = new Set(['new']);

/** Runs one command line. Bad words and flags are told, never a stack trace; a bug asks for a report. */
export async function runCommand(
  line: readonly string[],
  root: string,
  effects: Effects = realEffects(root),
): Promise<ExitStatus> {
  const [name, ...rest] = line;
  if (name === undefined || name === '--help' || name === 'help') {
    effects.out(generalHelp());
    return exitStatus.done;
  }
  const command = commands[name];
  if (!command) {
    const { nearestName } = await import('../read/names/nearest-name.ts');
    const near = nearestName(name, Object.keys(commands));
    return refuse(effects, `there is no command "${name}"${near ? `; did you mean "${near}"?` : ''}`);
  }
  const given = await readLine(command, rest);
  if (typeof given === 'string') return refuse(effects, `${name}: ${given}`);
  if (given.flags.help === true) {
    effects.out(commandHelp(name));
    return exitStatus.done;
  }
  try {
    if (!begins.has(name)) return await command.run(effects, given);
    const { withSchemasNamed } = await import('./schemas/naming-effects.ts');
    return await withSchemasNamed(effects, (own) => command.run(own, given));
  } catch (error) {
    const { failureText } = await import('./told/failure-text.ts');
    effects.tell(failureText(error));
    return exitStatus.missing;
  }
}
