import type { FindingId } from '../../../lib/model/findings/index.ts';
import type { CasesOfRule, RuleCases } from '../rule-case.ts';
import { bassSidesCases } from './audio/bass-sides.ts';
import { coilsJoinedCases } from './audio/coils-joined.ts';
import { factoryIntegrationCases } from './audio/factory-integration.ts';
import { factoryOutputsCases } from './audio/factory-outputs.ts';
import { filtersInPathCases } from './audio/filters-in-path.ts';
import { groupLevelsCases } from './audio/group-levels.ts';
import { inputLevelsCases } from './audio/input-levels.ts';
import {
  leftAndRightCases,
  playedOctaveCases,
  routeEndCases,
  speakerDelayCases,
} from './audio/left-and-right.ts';
import { protectionFiltersCases } from './audio/protection-filters.ts';
import { speakerLoadCases } from './audio/speaker-load.ts';
import { speakerPathsCases } from './audio/speaker-paths.ts';
import { speakerWireCases } from './audio/speaker-wire.ts';
import { subsonicFiltersCases } from './audio/subsonic-filters.ts';
import { subwooferBoxCases } from './audio/subwoofer-box.ts';
import { turnOnCases } from './audio/turn-on.ts';
import { alwaysLiveCases } from './conductors/always-live.ts';
import { colourCases } from './conductors/colours.ts';
import { copperCladCases } from './conductors/copper-clad.ts';
import { insulationAndZoneCases } from './conductors/insulation-and-zone.ts';
import { labelCases } from './conductors/labels.ts';
import { portsCases } from './conductors/ports.ts';
import { powerAndSignalSidesCases } from './conductors/power-and-signal-sides.ts';
import { runsCases } from './conductors/runs.ts';
import { terminalAccountingCases } from './conductors/terminal-accounting.ts';
import { writtenConductorCases } from './conductors/written-conductors.ts';
import { wrongEndCases } from './conductors/wrong-ends.ts';
import { asBuiltCases } from './data/as-built.ts';
import { jobDataCases } from './data/job-data.ts';
import { outputOrderCases } from './data/output-order.ts';
import { pairCrossedCases } from './data/pair-crossed.ts';
import { partDataCases } from './data/part-data.ts';
import { photoCases } from './data/photos.ts';
import { privateNameCases } from './data/private-names.ts';
import { proposalCases } from './data/proposals.ts';
import { stockCases } from './data/stock.ts';
import { vehicleDataCases } from './data/vehicle-data.ts';
import { behindHolesCases } from './mounting/behind-holes.ts';
import { controlsCases } from './mounting/controls.ts';
import { fixingsCases } from './mounting/fixings.ts';
import { inSpaceCases } from './mounting/in-space.ts';
import { madePointCases } from './mounting/made-points.ts';
import { mountingCases } from './mounting/mounting.ts';
import { placesCases } from './mounting/places.ts';
import { ribsCases } from './mounting/ribs.ts';
import { wetZoneCases } from './mounting/wet-zone.ts';
import { conductorWithoutFuseCases } from './protection/conductor-without-fuse.ts';
import { fuseAndConductorCases } from './protection/fuse-and-conductor.ts';
import { fuseAtSourceCases } from './protection/fuse-at-source.ts';
import { fuseInGroundCases } from './protection/fuse-in-ground.ts';
import { fuseOrderCases } from './protection/fuse-order.ts';
import { fuseRatingCases } from './protection/fuse-rating.ts';
import { fusesSideBySideCases } from './protection/fuses-side-by-side.ts';
import { interruptingCases } from './protection/interrupting.ts';
import { interruptingDownstreamCases } from './protection/interrupting-downstream.ts';
import { ownFusesCases } from './protection/own-fuses.ts';
import { relayContactCases } from './protection/relay-contact.ts';
import { vehicleConductorsCases } from './protection/vehicle-conductors.ts';
import { vehicleFusesCases } from './protection/vehicle-fuses.ts';
import { batteryPlacementCases } from './supply/battery-placement.ts';
import { betweenBatteryCases } from './supply/between-batteries.ts';
import { chargerSignalsCases } from './supply/charger-signals.ts';
import { chargingCases } from './supply/charging.ts';
import { chargingVariesCases } from './supply/charging-varies.ts';
import { fanCases } from './supply/fans.ts';
import { fittedSourceCases } from './supply/fitted-sources.ts';
import { groundCases } from './supply/ground.ts';
import { groundedTwiceCases } from './supply/grounded-twice.ts';
import { heatCases } from './supply/heat.ts';
import { keyOffCases } from './supply/key-off.ts';
import { supplyCollapseCases } from './supply/supply-collapse.ts';
import { supplyPolarityCases } from './supply/supply-polarity.ts';
import { systemVoltageCases } from './supply/system-voltage.ts';
import { vehicleSupplyCases } from './supply/vehicle-supply.ts';
import { voltageDropCases } from './supply/voltage-drop.ts';

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
  ...chargerSignalsCases,
  ...chargingCases,
  ...chargingVariesCases,
  ...conductorWithoutFuseCases,
  ...controlsCases,
  ...copperCladCases,
  ...bassSidesCases,
  ...factoryIntegrationCases,
  ...factoryOutputsCases,
  ...filtersInPathCases,
  ...fuseAndConductorCases,
  ...fuseAtSourceCases,
  ...fuseInGroundCases,
  ...fuseOrderCases,
  ...fuseRatingCases,
  ...ownFusesCases,
  ...fusesSideBySideCases,
  ...vehicleConductorsCases,
  ...vehicleFusesCases,
  ...groundCases,
  ...fanCases,
  ...madePointCases,
  ...heatCases,
  ...insulationAndZoneCases,
  ...interruptingCases,
  ...interruptingDownstreamCases,
  ...keyOffCases,
  ...leftAndRightCases,
  ...speakerDelayCases,
  ...routeEndCases,
  ...playedOctaveCases,
  ...outputOrderCases,
  ...pairCrossedCases,
  ...partDataCases,
  ...writtenConductorCases,
  ...vehicleDataCases,
  ...jobDataCases,
  ...photoCases,
  ...privateNameCases,
  ...fixingsCases,
  ...inSpaceCases,
  ...placesCases,
  ...mountingCases,
  ...portsCases,
  ...powerAndSignalSidesCases,
  ...groupLevelsCases,
  ...inputLevelsCases,
  ...protectionFiltersCases,
  ...subsonicFiltersCases,
  ...relayContactCases,
  ...ribsCases,
  ...runsCases,
  ...speakerLoadCases,
  ...coilsJoinedCases,
  ...speakerPathsCases,
  ...speakerWireCases,
  ...proposalCases,
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
