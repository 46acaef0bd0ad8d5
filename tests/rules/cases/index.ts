import type { FindingId } from '../../../lib/model/findings/index.ts';
import type { CasesOfRule, RuleCases } from '../rule-case.ts';
import { alwaysLiveCases } from './always-live.ts';
import { asBuiltCases } from './as-built.ts';
import { batteryPlacementCases } from './battery-placement.ts';
import { behindHolesCases } from './behind-holes.ts';
import { betweenBatteryCases } from './between-batteries.ts';
import { chargingCases } from './charging.ts';
import { chargingVariesCases } from './charging-varies.ts';
import { colourCases } from './colours.ts';
import { conductorWithoutFuseCases } from './conductor-without-fuse.ts';
import { controlsCases } from './controls.ts';
import { copperCladCases } from './copper-clad.ts';
import { factoryIntegrationCases } from './factory-integration.ts';
import { factoryOutputsCases } from './factory-outputs.ts';
import { filtersInPathCases } from './filters-in-path.ts';
import { fittedSourceCases } from './fitted-sources.ts';
import { fixingsCases } from './fixings.ts';
import { fuseAndConductorCases } from './fuse-and-conductor.ts';
import { fuseAtSourceCases } from './fuse-at-source.ts';
import { fuseInGroundCases } from './fuse-in-ground.ts';
import { fuseOrderCases } from './fuse-order.ts';
import { fuseRatingCases } from './fuse-rating.ts';
import { fusesSideBySideCases } from './fuses-side-by-side.ts';
import { groundCases } from './ground.ts';
import { groundedTwiceCases } from './grounded-twice.ts';
import { heatCases } from './heat.ts';
import { inSpaceCases } from './in-space.ts';
import { insulationAndZoneCases } from './insulation-and-zone.ts';
import { interruptingCases } from './interrupting.ts';
import { interruptingDownstreamCases } from './interrupting-downstream.ts';
import { jobDataCases } from './job-data.ts';
import { keyOffCases } from './key-off.ts';
import { labelCases } from './labels.ts';
import { leftAndRightCases, playedOctaveCases, routeEndCases, speakerDelayCases } from './left-and-right.ts';
import { mountingCases } from './mounting.ts';
import { partDataCases } from './part-data.ts';
import { placesCases } from './places.ts';
import { portsCases } from './ports.ts';
import { powerAndSignalSidesCases } from './power-and-signal-sides.ts';
import { protectionFiltersCases } from './protection-filters.ts';
import { relayContactCases } from './relay-contact.ts';
import { ribsCases } from './ribs.ts';
import { runsCases } from './runs.ts';
import { speakerLoadCases } from './speaker-load.ts';
import { speakerPathsCases } from './speaker-paths.ts';
import { speakerWireCases } from './speaker-wire.ts';
import { stockCases } from './stock.ts';
import { subwooferBoxCases } from './subwoofer-box.ts';
import { supplyCollapseCases } from './supply-collapse.ts';
import { supplyPolarityCases } from './supply-polarity.ts';
import { systemVoltageCases } from './system-voltage.ts';
import { terminalAccountingCases } from './terminal-accounting.ts';
import { turnOnCases } from './turn-on.ts';
import { vehicleConductorsCases } from './vehicle-conductors.ts';
import { vehicleDataCases } from './vehicle-data.ts';
import { vehicleFusesCases } from './vehicle-fuses.ts';
import { vehicleSupplyCases } from './vehicle-supply.ts';
import { voltageDropCases } from './voltage-drop.ts';
import { wetZoneCases } from './wet-zone.ts';
import { writtenConductorCases } from './written-conductors.ts';
import { wrongEndCases } from './wrong-ends.ts';

const every = {
  ...alwaysLiveCases,
  ...colourCases,
  ...labelCases,
  ...wrongEndCases,
  ...groundedTwiceCases,
  ...asBuiltCases,
  ...batteryPlacementCases,
  ...betweenBatteryCases,
  ...fittedSourceCases,
  ...systemVoltageCases,
  ...behindHolesCases,
  ...chargingCases,
  ...chargingVariesCases,
  ...conductorWithoutFuseCases,
  ...controlsCases,
  ...copperCladCases,
  ...factoryIntegrationCases,
  ...factoryOutputsCases,
  ...filtersInPathCases,
  ...fuseAndConductorCases,
  ...fuseAtSourceCases,
  ...fuseInGroundCases,
  ...fuseOrderCases,
  ...fuseRatingCases,
  ...fusesSideBySideCases,
  ...vehicleConductorsCases,
  ...vehicleFusesCases,
  ...groundCases,
  ...heatCases,
  ...insulationAndZoneCases,
  ...interruptingCases,
  ...interruptingDownstreamCases,
  ...keyOffCases,
  ...leftAndRightCases,
  ...speakerDelayCases,
  ...routeEndCases,
  ...playedOctaveCases,
  ...partDataCases,
  ...writtenConductorCases,
  ...vehicleDataCases,
  ...jobDataCases,
  ...fixingsCases,
  ...inSpaceCases,
  ...placesCases,
  ...mountingCases,
  ...portsCases,
  ...powerAndSignalSidesCases,
  ...protectionFiltersCases,
  ...relayContactCases,
  ...ribsCases,
  ...runsCases,
  ...speakerLoadCases,
  ...speakerPathsCases,
  ...speakerWireCases,
  ...stockCases,
  ...subwooferBoxCases,
  ...supplyCollapseCases,
  ...supplyPolarityCases,
  ...terminalAccountingCases,
  ...turnOnCases,
  ...vehicleSupplyCases,
  ...voltageDropCases,
  ...wetZoneCases,
} satisfies RuleCases;

/** The cases of every family, each under its id. */
export const cases: Readonly<Record<keyof typeof every, CasesOfRule>> = every;

/** The cases of one rule, if it has any. */
export function casesOf(id: FindingId): CasesOfRule | undefined {
  const some: RuleCases = cases;
  return some[id];
}
