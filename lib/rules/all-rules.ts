import { alwaysLiveRules } from './always-live.ts';
import { asBuiltRules } from './as-built.ts';
import { batteryRules } from './battery-placement.ts';
import { behindHoleRules } from './behind-holes.ts';
import { betweenBatteryRules } from './between-batteries.ts';
import { chargingRules } from './charging.ts';
import { chargingVariesRules } from './charging-varies.ts';
import { colourRules } from './colours.ts';
import { conductorWithoutFuseRules } from './conductor-without-fuse.ts';
import { controlRules } from './controls.ts';
import { copperCladRules } from './copper-clad.ts';
import { factoryIntegrationRules } from './factory-integration.ts';
import { factoryOutputRules } from './factory-outputs.ts';
import { filtersInPathRules } from './filters-in-path.ts';
import { fittedSourceRules } from './fitted-sources.ts';
import { fixingRules } from './fixings.ts';
import { fuseAndConductorRules } from './fuse-and-conductor.ts';
import { fuseAtSourceRules } from './fuse-at-source.ts';
import { fuseInGroundRules } from './fuse-in-ground.ts';
import { fuseOrderRules } from './fuse-order.ts';
import { fuseRatingRules } from './fuse-rating.ts';
import { fusesSideBySideRules } from './fuses-side-by-side.ts';
import { groundRules } from './ground.ts';
import { groundedTwiceRules } from './grounded-twice.ts';
import { heatRules } from './heat.ts';
import { heldPartRules } from './held-parts.ts';
import { insulationRules } from './insulation-and-zone.ts';
import { interruptingRules } from './interrupting.ts';
import { interruptingDownstreamRules } from './interrupting-downstream.ts';
import { jobDataRules } from './job-data.ts';
import { keepReachableRules } from './keep-reachable.ts';
import { keyOffRules } from './key-off.ts';
import { labelRules } from './labels.ts';
import { leftAndRightRules } from './left-and-right.ts';
import { mountingRules } from './mounting.ts';
import { partDataRules } from './part-data.ts';
import { placeRules } from './places.ts';
import { playedOctaveRules } from './played-octaves.ts';
import { portRules } from './ports.ts';
import { powerAndSignalRules } from './power-and-signal-sides.ts';
import { protectionFilterRules } from './protection-filters.ts';
import { reachInSpaceRules } from './reach-in-space.ts';
import { relayContactRules } from './relay-contact.ts';
import { ribRules } from './ribs.ts';
import { routeEndRules } from './route-ends.ts';
import type { Rule } from './rule.ts';
import { runRules } from './runs.ts';
import { speakerDelayRules } from './speaker-delays.ts';
import { speakerLoadRules } from './speaker-load.ts';
import { speakerPathRules } from './speaker-paths.ts';
import { speakerWireRules } from './speaker-wire.ts';
import { stockRules } from './stock.ts';
import { subwooferBoxRules } from './subwoofer-box.ts';
import { supplyCollapseRules } from './supply-collapse.ts';
import { supplyPolarityRules } from './supply-polarity.ts';
import { systemVoltageRules } from './system-voltage.ts';
import { terminalAccountingRules } from './terminal-accounting.ts';
import { turnOnRules } from './turn-on.ts';
import { vehicleConductorRules } from './vehicle-conductors.ts';
import { vehicleDataRules } from './vehicle-data.ts';
import { vehicleFuseRules } from './vehicle-fuses.ts';
import { vehicleSupplyRules } from './vehicle-supply.ts';
import { voltageDropRules } from './voltage-drop.ts';
import { wetZoneRules } from './wet-zone.ts';
import { writtenConductorRules } from './written-conductors.ts';
import { wrongEndRules } from './wrong-ends.ts';

/** Every rule, in the order in which the guide tells them: what can burn first, what is good to know last. */
export const rules: readonly Rule[] = [
  ...conductorWithoutFuseRules,
  ...fuseAtSourceRules,
  ...fuseInGroundRules,
  ...fuseAndConductorRules,
  ...fuseRatingRules,
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
  ...chargingRules,
  ...chargingVariesRules,
  ...keyOffRules,
  ...vehicleSupplyRules,
  ...portRules,
  ...copperCladRules,
  ...colourRules,
  ...labelRules,
  ...runRules,
  ...writtenConductorRules,
  ...routeEndRules,
  ...powerAndSignalRules,
  ...turnOnRules,
  ...alwaysLiveRules,
  ...relayContactRules,
  ...terminalAccountingRules,
  ...controlRules,
  ...speakerLoadRules,
  ...speakerWireRules,
  ...protectionFilterRules,
  ...filtersInPathRules,
  ...subwooferBoxRules,
  ...speakerPathRules,
  ...playedOctaveRules,
  ...leftAndRightRules,
  ...speakerDelayRules,
  ...factoryIntegrationRules,
  ...factoryOutputRules,
  ...mountingRules,
  ...ribRules,
  ...behindHoleRules,
  ...fixingRules,
  ...heldPartRules,
  ...reachInSpaceRules,
  ...keepReachableRules,
  ...placeRules,
  ...wetZoneRules,
  ...heatRules,
  ...partDataRules,
  ...vehicleDataRules,
  ...jobDataRules,
  ...stockRules,
  ...asBuiltRules,
];
