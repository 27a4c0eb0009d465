import { comparison } from "../../server/tables/comparison.ts";
import { deadTestPractice } from "../../server/tables/dead-test-practice.ts";
import { diagnosisPractice } from "../../server/tables/diagnosis-practice.ts";
import { practiceValues } from "../../server/tables/practice.ts";
import { switchRatings } from "../../server/tables/standard-values.ts";
import type { Printed } from "./printed.ts";

/**
 * Where common practice begins to ask. No standard states these, so this second list is what holds them: to change one is
 * to decide anew what is asked about, and needs both.
 */
export const practice: readonly Printed[] = [
  [switchRatings, "rating", "25P\n32P\n40P\n63P\n80P\n100P\n125P\n160P\n200P\n250P\n400P\n630P\n800P"],
  [
    practiceValues,
    "key value",
    `
      loop-floor 0.1P
      loop-share 0.2P
      loop-no-trip 0.3P
      loop-electrode 2P
      loop-below 0.02P
      loop-exact 0.0051P
      loop-copies 6P
      plug-socket 13P
      loop-close 0.95P
      loop-close-count 3P
      ze-least 0.05P
      fault-low 0.8P
      fault-high 2.5P
      fault-high-three 5P
      fault-three 1.6P
      fault-feeder 0.6P
      fault-feeder-gap 0.05P
      fault-rise 1.1P
      fault-rise-far 1.5P
      load-share 0.15P
      load-excess 2P
      oversize 2P
      oversize-from 6P
      start-direct 6P
      start-star-delta 2.5P
      start-soft-start 3P
      inrush-least 10P
      inrush-most 15P
      start-drop 15P
      start-drive 1.5P
      motor-overload 370P
      drivers 12P
      lampholders 16P
      ring-load 2000P
      bond-share 1.5P
      bond-floor 0.05P
      bond-length 100P
      cable-reactance 0.00008P
      resistive-size 16P
      rcd-ratio 3P
      rcd-quick 0.005P
      rcd-shortest 0.001P
      relay-above 1.25P
      relay-holds 1.05P
      demand-allowance 1.1P
      buried-depth 450P
      buried-usual 600P
      unbalance-share 0.4P
      unbalance-floor 15P`,
  ],
];

type Threshold = { readonly value: number; readonly unit?: string };

/** Each by its name, with its unit where it has one. */
export const thresholds: readonly (readonly [name: string, of: Readonly<Record<string, Threshold>>, list: string])[] = [
  [
    "deadTestPractice",
    deadTestPractice,
    `
      meterUncertainty 0.03 Ω
      meterStep 0.01 Ω
      meterDecimals 2
      highShare 1.5
      highLeast 0.1 Ω
      lowShare 0.7
      lowLeast 0.05 Ω
      slipShare 0.12
      openLeast 20 Ω
      impliedLength 1 m
      ringRatio 0.15
      radialRatio 0.25
      partLeast 0.045 Ω
      spurShare 0.1
      undivided 0.6
      sameShare 0.05
      alikeSpread 0.05 Ω
      alikePoints 4
      alikeRings 3
      warmest 30 °C
      newInsulation 2000000 Ω
      insulationOutlier 0.1
      insulationWays 4
      lowInsulation 20000000 Ω
      alikeInsulation 2
      loadLeft 50000 Ω
      insulationTotal 2
      insulationTolerance 0.1`,
  ],
  [
    "diagnosisPractice",
    diagnosisPractice,
    `
      accuracyShare 0.02
      accuracyDigits 0.02 Ω
      oneReading 1.5
      allReadings 3.09
      lengthShare 0.15
      cpcShare 0.1
      openDeviations 20
      fittedNumber 2
      unlikelySize 6
      contradicted 12
      besides 3
      rarer 2.5
      loopShare 0.2
      loopLeast 0.1 Ω
      alikeScore 4
      pattern 6
      patternLeast 12
      unnoticed 6
      readTwice 5
      leastWeight 0.02
      telling 2
      jointLeast 0.02 Ω
      jointMost 30 Ω
      cableLeast 1 m
      cableMost 60 m
      metalLeast 0.005 Ω
      metalMost 2 Ω
      leadsMost 0.5 Ω`,
  ],
  [
    "comparison",
    comparison,
    `
      equalReadings 4
      differingLength 1.25
      differingReading 0.1
      copiedReadings 6
      exactSums 9
      exactDecimals 2
      nearLimitCircuits 3
      nearLimitShare 0.95
      leadsLeast 0.08
      leadsSpread 0.05
      spreadCircuits 5
      spreadOutlier 0.3
      spreadOthers 0.15
      roundReadings 8
      roundStep 0.05
      resistanceRise 0.2
      resistanceRiseLeast 0.1
      resistanceLeft 0.5
      electrodeRise 0.5
      faultChange 0.25
      tripTimeRise 0.5
      tripTimeRiseLeast 0.01
      visit 31
      insulationLeft 0.1
      editionChange 6`,
  ],
];
