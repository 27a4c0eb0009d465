import { adiabaticFactors, adiabaticForms } from "./adiabatic.ts";
import { amendments } from "./amendments.ts";
import { armourAreas, armourEffects, armourResistance } from "./armour.ts";
import { capacity4D1A, capacity4D2A, capacity4D4A, capacity4D5 } from "./capacity-70.ts";
import { capacity4E1A, capacity4E2A, capacity4E4A } from "./capacity-90.ts";
import { capacity4G1A, flexible60, flexible90, mineralAmbient } from "./capacity-other.ts";
import { citations } from "./citations.ts";
import { faultTemperatures, metalConstants } from "./conductor-heat.ts";
import { conductorResistance, pairResistance } from "./conductors.ts";
import { conduitRuns } from "./conduit-runs.ts";
import { conduitCables, conduitStraight, containmentRules, trunkingCables, trunkingSizes } from "./containment.ts";
import { harmonicNeutrals, selectivityRatios } from "./coordination.ts";
import { breakingCapacities, energyClasses, legacyTripBands, tripBands } from "./devices.ts";
import { enclosureWalls, singleDiameters } from "./diameters.ts";
import { disconnectionScope, disconnectionTimes } from "./disconnection.ts";
import { diversityAllowances } from "./diversity.ts";
import { diversityShares } from "./diversity-shares.ts";
import { drop4D1B, drop4D2B, drop4E1B, dropLimits, flexibleCords } from "./drop.ts";
import { ambientFactors, groundFactors, groupingFactors, overloadRules, thermalInsulationFactors } from "./factors.ts";
import { depthFactors, groundGroupingFactors, soilFactors } from "./ground.ts";
import { inspectionIntervals, inspectionItems } from "./inspection.ts";
import { insulationMinima, insulationRules } from "./insulation.ts";
import { insulationMinima16 } from "./insulation-16th.ts";
import { leakageLimits } from "./leakage.ts";
import { breakerLoop, breakerLoopD5s, loopTerms } from "./loop-breakers.ts";
import { bs1361Loop, fuseLoop5, fuseLoop04, fuseLoop2008 } from "./loop-fuses.ts";
import { rcdLoop } from "./loop-rcd.ts";
import {
  placeBonding,
  placeDistances,
  placeEarths,
  placeEquipment,
  placeRcds,
  placeTouch,
  placeWater,
  placeZones,
} from "./places.ts";
import { practiceValues } from "./practice.ts";
import {
  bondingPme,
  bondingRules,
  buriedEarthing,
  minimumSizes,
  protectiveSizes,
  supplementaryRules,
} from "./protective.ts";
import { rcdBands, rcdTestRules, rcdTimes } from "./rcd.ts";
import { rcdLimits, rcdLoads } from "./rcd-limits.ts";
import { rcdRequired, rcdTypes } from "./rcd-selection.ts";
import { drop4E4B, otherReactances } from "./reactance.ts";
import { conventionalCircuits, ringContinuity, ringRules } from "./ring.ts";
import { assumedRoutes, flatPairs, sizingValues, usualConstructions, usualCurves } from "./sizing-practice.ts";
import { standardRatings, standardResiduals, standardSizes, switchRatings } from "./standard-values.ts";
import { supplyValues } from "./supply.ts";
import type { Table } from "./table.ts";
import { operatingFactors, temperatureCoefficients, testTemperatureFactors } from "./temperature.ts";
import { testPrecautions } from "./testing.ts";

export * from "./adiabatic.ts";
export * from "./amendments.ts";
export * from "./armour.ts";
export * from "./capacity-70.ts";
export * from "./capacity-90.ts";
export * from "./conductor-heat.ts";
export * from "./conductors.ts";
export * from "./conduit-runs.ts";
export * from "./containment.ts";
export * from "./coordination.ts";
export * from "./devices.ts";
export * from "./diameters.ts";
export * from "./disconnection.ts";
export * from "./diversity.ts";
export * from "./diversity-shares.ts";
export * from "./drop.ts";
export * from "./editions.ts";
export * from "./factors.ts";
export * from "./inspection.ts";
export * from "./insulation.ts";
export * from "./insulation-16th.ts";
export * from "./leakage.ts";
export * from "./loop-breakers.ts";
export * from "./loop-fuses.ts";
export * from "./loop-rcd.ts";
export * from "./places.ts";
export * from "./practice.ts";
export * from "./protective.ts";
export * from "./rcd.ts";
export * from "./rcd-limits.ts";
export * from "./rcd-selection.ts";
export * from "./ring.ts";
export * from "./sizing-practice.ts";
export * from "./source.ts";
export * from "./standard-values.ts";
export * from "./supply.ts";
export * from "./table.ts";
export * from "./temperature.ts";
export * from "./testing.ts";

/** Every table, for a page or a test that walks over all of them. */
export const tables: readonly Table<object>[] = [
  loopTerms,
  breakerLoop,
  breakerLoopD5s,
  fuseLoop04,
  fuseLoop5,
  fuseLoop2008,
  bs1361Loop,
  rcdLoop,
  disconnectionTimes,
  disconnectionScope,
  conductorResistance,
  pairResistance,
  armourResistance,
  armourAreas,
  armourEffects,
  testTemperatureFactors,
  operatingFactors,
  temperatureCoefficients,
  ringContinuity,
  ringRules,
  conventionalCircuits,
  insulationMinima,
  insulationRules,
  rcdTimes,
  rcdBands,
  rcdTestRules,
  rcdTypes,
  rcdRequired,
  rcdLimits,
  rcdLoads,
  leakageLimits,
  capacity4D1A,
  capacity4D2A,
  capacity4D5,
  capacity4D4A,
  capacity4E2A,
  capacity4E4A,
  capacity4E1A,
  citations,
  capacity4G1A,
  flexible60,
  flexible90,
  mineralAmbient,
  drop4D1B,
  drop4D2B,
  drop4E1B,
  drop4E4B,
  otherReactances,
  flexibleCords,
  dropLimits,
  ambientFactors,
  groundFactors,
  groundGroupingFactors,
  soilFactors,
  depthFactors,
  groupingFactors,
  thermalInsulationFactors,
  overloadRules,
  adiabaticFactors,
  adiabaticForms,
  metalConstants,
  faultTemperatures,
  protectiveSizes,
  bondingPme,
  bondingRules,
  supplementaryRules,
  buriedEarthing,
  minimumSizes,
  breakingCapacities,
  tripBands,
  legacyTripBands,
  energyClasses,
  conduitStraight,
  conduitCables,
  trunkingCables,
  trunkingSizes,
  singleDiameters,
  enclosureWalls,
  containmentRules,
  conduitRuns,
  supplyValues,
  diversityAllowances,
  testPrecautions,
  amendments,
  diversityShares,
  insulationMinima16,
  standardRatings,
  switchRatings,
  standardSizes,
  standardResiduals,
  practiceValues,
  harmonicNeutrals,
  selectivityRatios,
  usualCurves,
  usualConstructions,
  assumedRoutes,
  flatPairs,
  sizingValues,
  placeRcds,
  placeEarths,
  placeWater,
  placeZones,
  placeEquipment,
  placeDistances,
  placeBonding,
  placeTouch,
  inspectionIntervals,
  inspectionItems,
];
