import { Simulation } from 'eecircuit-engine';

/** Runs a netlist in ngspice (WebAssembly) and gives its analysis; the reference for every network here. */
export async function startSpice() {
  const simulation = new Simulation();
  await simulation.start();
  return async (lines: readonly string[]) => {
    simulation.setNetList(['check', ...lines, '.end'].join('\n'));
    return simulation.runSim();
  };
}

export type Spice = Awaited<ReturnType<typeof startSpice>>;
type Analysis = Awaited<ReturnType<Spice>>;

/** A voltage or current of an operating point, by ngspice's name for it. */
export function real(analysis: Analysis, name: string): number {
  const found = analysis.dataType === 'real' ? analysis.data.find((entry) => entry.name === name) : undefined;
  const value = found?.values[0];
  if (value === undefined) throw new Error(`ngspice gave no ${name}`);
  return value;
}

/** A voltage over the frequencies of an AC analysis. */
export function complex(analysis: Analysis, name: string): readonly { real: number; img: number }[] {
  const found =
    analysis.dataType === 'complex' ? analysis.data.find((entry) => entry.name === name) : undefined;
  if (!found) throw new Error(`ngspice gave no ${name}`);
  return found.values;
}
