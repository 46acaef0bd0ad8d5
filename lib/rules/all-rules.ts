import { bassSideRules } from './audio/bass-sides.ts';
import { coilsJoinedRules } from './audio/coils-joined.ts';
import { factoryIntegrationRules } from './audio/factory-integration.ts';
import { factoryOutputRules } from './audio/factory-outputs.ts';
import { filtersInPathRules } from './audio/filters/filters-in-path.ts';
import { filtersNotMadeRules } from './audio/filters/filters-not-made.ts';
import { protectionFilterRules } from './audio/filters/protection-filters.ts';
import { subsonicFilterRules } from './audio/filters/subsonic-filters.ts';
import { groupLevelRules } from './audio/group-levels.ts';
import { inputLevelRules } from './audio/input-levels.ts';
import { leftAndRightRules } from './audio/left-and-right.ts';
import { playedOctaveRules } from './audio/played-octaves.ts';
import { speakerDelayRules } from './audio/shared-delay.ts';
import { speakerLoadRules } from './audio/speaker-load.ts';
import { speakerPathRules } from './audio/speaker-paths.ts';
import { speakerWireRules } from './audio/speaker-wire.ts';
import { subwooferBoxRules } from './audio/subwoofer-box.ts';
import { turnOnRules } from './audio/turn-on.ts';
import { alwaysLiveRules } from './conductors/always-live.ts';
import { colourRules } from './conductors/colours.ts';
import { copperCladRules } from './conductors/copper-clad.ts';
import { grommetRules } from './conductors/grommets.ts';
import { insulationRules } from './conductors/insulation-and-zone.ts';
import { labelRules } from './conductors/labels.ts';
import { leadRules } from './conductors/leads-not-told.ts';
import { portRules } from './conductors/ports.ts';
import { powerAndSignalRules } from './conductors/power-and-signal-sides.ts';
import { routeEndRules } from './conductors/route-ends.ts';
import { runRules } from './conductors/runs.ts';
import { tabRules } from './conductors/tab-widths.ts';
import { terminalAccountingRules } from './conductors/terminal-accounting.ts';
import { unlikelyLengthRules } from './conductors/unlikely-lengths.ts';
import { writtenConductorRules } from './conductors/written-conductors.ts';
import { wrongEndRules } from './conductors/wrong-ends.ts';
import { asBuiltRules } from './data/as-built.ts';
import { jobDataRules } from './data/job-data.ts';
import { outputOrderRules } from './data/output-order.ts';
import { pairCrossedRules } from './data/pair-crossed.ts';
import { partDataRules } from './data/part-data.ts';
import { photoRules } from './data/photos.ts';
import { privateNameRules } from './data/private-names.ts';
import { promisedRules } from './data/promised.ts';
import { proposalRules } from './data/proposals.ts';
import { stockRules } from './data/stock.ts';
import { vehicleDataRules } from './data/vehicle-data.ts';
import { airOverRules } from './mounting/air-over.ts';
import { behindHoleRules } from './mounting/behind-holes.ts';
import { controlRules } from './mounting/controls.ts';
import { fixingRules } from './mounting/fixings.ts';
import { heldPartRules } from './mounting/held-parts.ts';
import { keepReachableRules } from './mounting/keep-reachable.ts';
import { madePointRules } from './mounting/made-points.ts';
import { mountingRules } from './mounting/mounting.ts';
import { partScrewRules } from './mounting/part-screws.ts';
import { placeRules } from './mounting/places.ts';
import { reachInSpaceRules } from './mounting/reach-in-space.ts';
import { ribRules } from './mounting/ribs.ts';
import { rubberBushRules } from './mounting/rubber-bushes.ts';
import { wetZoneRules } from './mounting/wet-zone.ts';
import { conductorWithoutFuseRules } from './protection/conductor-without-fuse.ts';
import { fuseAndConductorRules } from './protection/fuse-and-conductor.ts';
import { fuseAtSourceRules } from './protection/fuse-at-source.ts';
import { fuseInGroundRules } from './protection/fuse-in-ground.ts';
import { fuseOrderRules } from './protection/fuse-order.ts';
import { fuseOverNeedRules } from './protection/fuse-over-need.ts';
import { fuseRatingRules } from './protection/fuse-rating.ts';
import { fusesSideBySideRules } from './protection/fuses-side-by-side.ts';
import { interruptingRules } from './protection/interrupting.ts';
import { interruptingDownstreamRules } from './protection/interrupting-downstream.ts';
import { relayContactRules } from './protection/relay-contact.ts';
import { vehicleConductorRules } from './protection/vehicle-conductors.ts';
import { vehicleFuseRules } from './protection/vehicle-fuses.ts';
import type { Rule } from './rule.ts';
import { batteryRules } from './supply/battery-placement.ts';
import { betweenBatteryRules } from './supply/between-batteries.ts';
import { chargerSignalRules } from './supply/charger-signals.ts';
import { chargingRules } from './supply/charging.ts';
import { chargingVariesRules } from './supply/charging-varies.ts';
import { fanRules } from './supply/fans.ts';
import { fittedSourceRules } from './supply/fitted-sources.ts';
import { groundRules } from './supply/ground.ts';
import { groundedTwiceRules } from './supply/grounded-twice.ts';
import { heatRules } from './supply/heat.ts';
import { keyOffRules } from './supply/key-off.ts';
import { supplyCollapseRules } from './supply/supply-collapse.ts';
import { supplyPolarityRules } from './supply/supply-polarity.ts';
import { systemVoltageRules } from './supply/system-voltage.ts';
import { vehicleSupplyRules } from './supply/vehicle-supply.ts';
import { voltageDropRules } from './supply/voltage-drop.ts';

/** Every rule, in the order in which the guide tells them: what can burn first, what is good to know last. */
export const rules: readonly Rule[] = [
  ...conductorWithoutFuseRules,
  ...fuseAtSourceRules,
  ...fuseInGroundRules,
  ...fuseAndConductorRules,
  ...fuseRatingRules,
  ...fuseOverNeedRules,
  ...fusesSideBySideRules,
  ...vehicleConductorRules,
  ...vehicleFuseRules,
  ...fuseOrderRules,
  ...interruptingRules,
  ...interruptingDownstreamRules,
  ...betweenBatteryRules,
  ...insulationRules,
  ...systemVoltageRules,
  ...fittedSourceRules,
  ...wrongEndRules,
  ...supplyPolarityRules,
  ...supplyCollapseRules,
  ...voltageDropRules,
  ...groundRules,
  ...groundedTwiceRules,
  ...batteryRules,
  ...chargerSignalRules,
  ...chargingRules,
  ...chargingVariesRules,
  ...keyOffRules,
  ...vehicleSupplyRules,
  ...portRules,
  ...tabRules,
  ...leadRules,
  ...copperCladRules,
  ...colourRules,
  ...labelRules,
  ...runRules,
  ...grommetRules,
  ...writtenConductorRules,
  ...unlikelyLengthRules,
  ...routeEndRules,
  ...powerAndSignalRules,
  ...turnOnRules,
  ...alwaysLiveRules,
  ...relayContactRules,
  ...terminalAccountingRules,
  ...controlRules,
  ...speakerLoadRules,
  ...coilsJoinedRules,
  ...speakerWireRules,
  ...protectionFilterRules,
  ...subsonicFilterRules,
  ...bassSideRules,
  ...filtersInPathRules,
  ...filtersNotMadeRules,
  ...groupLevelRules,
  ...inputLevelRules,
  ...subwooferBoxRules,
  ...speakerPathRules,
  ...playedOctaveRules,
  ...leftAndRightRules,
  ...outputOrderRules,
  ...pairCrossedRules,
  ...speakerDelayRules,
  ...factoryIntegrationRules,
  ...factoryOutputRules,
  ...mountingRules,
  ...ribRules,
  ...rubberBushRules,
  ...behindHoleRules,
  ...madePointRules,
  ...fixingRules,
  ...partScrewRules,
  ...heldPartRules,
  ...reachInSpaceRules,
  ...airOverRules,
  ...keepReachableRules,
  ...placeRules,
  ...wetZoneRules,
  ...heatRules,
  ...fanRules,
  ...partDataRules,
  ...vehicleDataRules,
  ...jobDataRules,
  ...photoRules,
  ...privateNameRules,
  ...proposalRules,
  ...stockRules,
  ...promisedRules,
  ...asBuiltRules,
];
