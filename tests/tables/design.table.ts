import { adiabaticFactors } from "../../server/tables/adiabatic.ts";
import { armourAreas, armourResistance } from "../../server/tables/armour.ts";
import { metalConstants } from "../../server/tables/conductor-heat.ts";
import { conduitStraight, containmentRules, trunkingCables } from "../../server/tables/containment.ts";
import { breakingCapacities, energyClasses, legacyTripBands, tripBands } from "../../server/tables/devices.ts";
import { disconnectionScope } from "../../server/tables/disconnection.ts";
import { diversityShares } from "../../server/tables/diversity-shares.ts";
import { dropLimits, flexibleCords } from "../../server/tables/drop.ts";
import { groundFactors, overloadRules } from "../../server/tables/factors.ts";
import { insulationRules } from "../../server/tables/insulation.ts";
import { loopTerms } from "../../server/tables/loop-breakers.ts";
import {
  bondingPme,
  bondingRules,
  buriedEarthing,
  protectiveSizes,
  supplementaryRules,
} from "../../server/tables/protective.ts";
import { rcdTestRules } from "../../server/tables/rcd.ts";
import { conventionalCircuits, ringRules } from "../../server/tables/ring.ts";
import { supplyValues } from "../../server/tables/supply.ts";
import { operatingFactors, temperatureCoefficients, testTemperatureFactors } from "../../server/tables/temperature.ts";
import type { Printed } from "./printed.ts";

/**
 * The tables of factors, least sizes, devices, containment and supplies once more, from the pages they were seen on. The
 * same letters as in the lists of limits and ratings: C a page states it, = by formula, M from memory.
 */
export const design: readonly Printed[] = [
  // Schneider Electric FAQ FA175048 and The Regs blog: U0, Cmin, and 5, 10 and 20 times In.
  [
    loopTerms,
    "key value",
    `
      U0 230C
      cmin 0.95C
      cmin-before-2015 1C
      limit U0*Cmin/Ia
      B 5C
      C 10C
      D 20C
      cold-factor 0.8C
      cold-divisor 1.24C
      cold-divisor-ratio 1.25C
      loop Ze+(R1+R2)`,
  ],
  // NICEIC, 18th Edition changes, part 4, and Electricians Blog on TT: 411.3.2.2 to 411.3.2.4.
  [
    disconnectionScope,
    "key tn tt",
    `
      final-sockets 0.4C 0.2C
      final-fixed 0.4C 0.2C
      distribution-tn 5C -
      distribution-tt - 1C
      reduced-low 5M 5M
      tt-overcurrent - 0.4C`,
  ],
  // Guide to the Wiring Regulations, 17th Edition, appendix 4.
  [
    armourResistance,
    "csa cores2 cores3 cores4 cores5",
    `
      1.5C 10.2C 9.5C 8.8C 8.2C
      2.5C 8.8C 8.2C 7.7C 6.8C
      4C 7.9C 7.5C 6.8C 6.2C
      6C 7C 6.7C 4.3C 3.9C
      10M 6M 4M 3.7M -
      16M 3.7M 3.6M 3.1C -
      25M 3.7M 2.5M 2.3M -
      35M 2.6M 2.3M 2M -
      50M 2.3M 2M 1.8M -
      70M 2M 1.8M 1.2M -
      95M 1.4M 1.3M 1.1M -
      120M 1.3M 1.2M 0.76M -
      150M 1.2M 0.78M 0.68M -
      185M 0.82M 0.71M 0.61M -
      240M 0.73M 0.63M 0.54M -
      300M 0.67M 0.58M 0.49M -
      400M 0.59M 0.52M 0.35M -`,
  ],
  // A cable seller's data sheet of two-core cable; 70 mm² and 2.5 mm² four-core by forum posts.
  [
    armourAreas,
    "csa cores2 cores3 cores4",
    `
      1.5M 15C 16M 17M
      2.5M 17C 19M 20C
      4M 19C 20M 22M
      6M 22C 23M 36M
      10M 26C 39M 42M
      16M 42C 44M 49M
      25M 42C 62M 70M
      35M 60C 68M 78M
      50M 68C 78M 90M
      70M 80C 90M 131C
      95M 113C 128M 147M
      120M 125C 141M 206M
      150M 138C 196M 230M
      185M 191C 220M 255M
      240M 215C 250M 289M
      300M 235C 269M 319M
      400M 265C 304M 452M`,
  ],
  // IEC 60949, and the temperatures of Tables 54.2 to 54.5: recalled, and every printed k follows from them.
  [
    metalConstants,
    "material beta factor",
    `
      copper 234.5= 226=
      aluminium 228= 148=
      steel 202= 78=
      lead 230= 41=`,
  ],
  // On-Site Guide, Tables I2 and I3, by 1 + 0.004 (t − 20); IEC 60028 for copper.
  [
    testTemperatureFactors,
    "temperature factor",
    `
      5= 0.94=
      10= 0.96=
      15= 0.98=
      20= 1=
      25= 1.02=
      30= 1.04=
      40= 1.08=`,
  ],
  [
    operatingFactors,
    "celsius separate incorporated",
    `
      70= 1.04= 1.2=
      85= 1.04= 1.26=
      90= 1.04= 1.28=`,
  ],
  [
    temperatureCoefficients,
    "key alpha20",
    `
      simple 0.004C
      copper 0.00393=
      aluminium 0.00403M`,
  ],
  // DIYWiki on 433.1.5 (now 433.1.204) and Electrical Installation Work, p. 272.
  [
    ringRules,
    "key value",
    `
      device 30-or-32
      csa 2.5C
      csa-mineral 1.5C
      capacity 20C
      spurs-per-point 1C
      points-per-spur 1C
      fused-spur 13C
      fused-spurs unlimited
      area 100C
      load condition-of-433.1.204`,
  ],
  // On-Site Guide, Table H2.1: conventional circuits.
  [
    conventionalCircuits,
    "circuit rating csa cpc area csaMineral",
    `
      A1-ring 30-or-32 2.5C 1.5M 100C 1.5C
      A2-radial 30-or-32 4C 1.5M 75M 2.5C
      A3-radial 20M 2.5C 1.5M 50M 1.5C`,
  ],
  // Electrical Wholesaler, May 2023, and a forum thread on 643.3.2.
  [
    insulationRules,
    "key value",
    `
      reduced-voltage 250C
      reduced-minimum 1C
      connected-equipment 643.3.3
      parallel formula
      new-installation >2`,
  ],
  // NICEIC on RCD tests since Amendment 2.
  [
    rcdTestRules,
    "key value",
    `
      test-current IΔn
      general 300C
      delayed 500C
      button-first yes`,
  ],
  // BS 7671, Tables 4F3A and 4F3B, as a wholesaler's page has them.
  [
    flexibleCords,
    "csa rating phase1 phase3",
    `
      0.5C 3C 93C 80C
      0.75C 6C 62C 54C
      1C 10C 46C 40C
      1.25C 13C 37C -
      1.5C 16C 32C 27C
      2.5C 25C 19C 16C
      4C 32C 12C 10C`,
  ],
  // BS 7671, Appendix 4, section 6.4.
  [
    dropLimits,
    "key percent volts",
    `
      lighting 3C 6.9C
      other 5C 11.5C
      lighting-private 6C 13.8C
      other-private 8C 18.4C
      lighting-three-phase 3= 12=
      other-three-phase 5= 20=`,
  ],
  // IEC 60364-5-52, whose law BS 7671, Table 4B2, follows.
  [
    groundFactors,
    "temperature at70 at90",
    `
      10= 1.1= 1.07=
      15= 1.05= 1.04=
      20= 1= 1=
      25= 0.95= 0.96=
      30= 0.89= 0.93=
      35= 0.84= 0.89=
      40= 0.77= 0.85=
      45= 0.71= 0.8=
      50= 0.63= 0.76=
      55= 0.55= 0.71=
      60= 0.45= 0.65=`,
  ],
  // O'Reilly and a summary of the regulations: 433.1 and 0.725 for BS 3036.
  [
    overloadRules,
    "key value",
    `
      semi-enclosed 0.725C
      relation rule
      semi-enclosed-reason 0.725=
      breaker 1.45C
      ground 0.9C`,
  ],
  // Trade-body pocket guide: Tables 43.1 and 54.2 to 54.5. Large thermoplastic conductors after the stroke.
  [
    adiabaticFactors,
    "table material pvc70 pvc70Large pvc90 pvc90Large ts60 ts90",
    `
      43.1 copper 115C 103C 100C 86C 141C 143C
      43.1 copper 115C - - - - -
      43.1 copper 135C - - - - -
      43.1 copper 115C - - - - -
      54.2 copper 143C 133C 143C 133C - 176C
      54.2 aluminium 95C 88C 95C 88C - 116C
      54.2 steel 52C - 52C - - 64C
      54.3 copper 115C 103C 100C 86C - 143C
      54.3 aluminium 76C 68M 66M 57M - 94C
      54.4 aluminium 93C - 85C - - 85C
      54.4 steel 51C - 46C - - 46C
      54.4 lead 26C - 23C - - 23C
      54.5 steel 47C - 44C - - 58C`,
  ],
  // The Regs: Tables 54.7 and 54.8, 544.1.1 and 544.2.
  [
    protectiveSizes,
    "over upTo share fixed",
    `
      0C 16C 1C -
      16C 35C - 16C
      35C - 0.5C -`,
  ],
  [
    bondingPme,
    "over upTo size",
    `
      0C 35C 10C
      35C 50C 16C
      50C 95C 25C
      95C 150C 35C
      150C - 50C`,
  ],
  [
    bondingRules,
    "key value",
    `
      main-share 0.5C
      main-least 6C
      main-greatest 25C
      supplementary-protected 2.5C
      supplementary-unprotected 4C
      supplementary-share 0.5C
      pme-earthing 16C`,
  ],
  // DIYnot, on bonding logic: 50 V / Ia; the 5 s are recalled.
  [
    supplementaryRules,
    "key value",
    `
      touch 50C
      time 5M`,
  ],
  // BS 7671, Table 54.1, by training notes on Chapter 54 and a wholesaler's book, 5.4.1.
  [
    buriedEarthing,
    "key copper steel",
    `
      both - -
      corrosion 16C 16C
      mechanical 25C 50C
      neither 25C 50C`,
  ],
  // Guide to the Wiring Regulations, 17th Edition, p. 48; conditional ratings by a forum post on BS EN 61439-3.
  [
    breakingCapacities,
    "standard category icn ics volts",
    `
      BS-EN-60898 - 1.5C 1.5C -
      BS-EN-60898 - 3C 3C -
      BS-EN-60898 - 4.5C 4.5C -
      BS-EN-60898 - 6C 6C -
      BS-EN-60898 - 10C 7.5C -
      BS-EN-60898 - 15M 7.5M -
      BS-EN-60898 - 20M 10M -
      BS-EN-60898 - 25M 12.5M -
      BS-1361 I 16.5C - -
      BS-1361 II 33C - -
      BS-88 2.1 50C - 400C
      BS-88 6 16.5C - 230C
      BS-88 6 80C - 400C
      BS-3036 S1A 1C - -
      BS-3036 S2A 2C - -
      BS-3036 S4A 4C - -
      BS-3871 M1 1C - -
      BS-3871 M1.5 1.5C - -
      BS-3871 M3 3C - -
      BS-3871 M4.5 4.5C - -
      BS-3871 M6 6C - -
      BS-3871 M9 9C - -
      BS-EN-61439-3 conditional 16C - -`,
  ],
  // Data of an RCBO's maker; IET forum thread 54092 for the withdrawn standard.
  [
    tripBands,
    "key from to",
    `
      B 3C 5C
      C 5C 10C
      D 10C 20C
      no-trip - 1.13C
      trip 1.45C -
      at-2.55-to-32A 1C 60C
      at-2.55-to-63A 1C 120C`,
  ],
  [
    legacyTripBands,
    "curve from to",
    `
      1 2.7C 4C
      2 4C 7C
      3 7C 10C
      4 10C 50C
      B 3C 5C
      C 5C 10C
      D 10C 20C`,
  ],
  // Adiabatic equation (forum): the 10 kA figures to 16 A; the others from memory.
  [
    energyClasses,
    "icn class b16 c16 b32 c32",
    `
      10C 2C 240000C 290000C 310000M 370000M
      10C 3C 70000C 84000C 90000M 110000M
      3M 2M 31000M 37000M 40000M 50000M
      3M 3M 15000M 18000M 18000M 22000M
      6M 2M 100000M 120000M 130000M 160000M
      6M 3M 35000M 42000M 45000M 55000M`,
  ],
  // Conduit and trunking capacity chart (wholesaler); Calculate cable trunking size (notes).
  [
    conduitStraight,
    "item size wire factor",
    `
      conduit 16C - 290C
      conduit 20C - 460C
      conduit 25C - 800C
      conduit 32C - 1400C
      cable 1C solid 22C
      cable 1.5C solid 27C
      cable 2.5C solid 39C
      cable 1.5C stranded 31C
      cable 2.5C stranded 43C
      cable 4C stranded 58C
      cable 6C stranded 88C
      cable 10C stranded 146C`,
  ],
  [
    trunkingCables,
    "wire csa pvc thermosetting",
    `
      solid 1C 3.6C 3.8C
      solid 1.5C 8C 8.6C
      stranded 1.5C 8.6C 9.1C
      solid 2.5C 11.9C 11.9C
      stranded 2.5C 12.6C 13.9C
      stranded 4C 16.6C 18.1C
      stranded 6C 21.2C 22.9C
      stranded 10C 35.3C 36.3C
      stranded 16C 47.8C 50.3C
      stranded 25C 73.9C 75.4C`,
  ],
  [
    containmentRules,
    "key value",
    `
      space-factor 45C
      straight-run 3C
      conduit-sizes 16,-20,-25,-32
      bends 2M`,
  ],
  // Distribution network operator: supply characteristics for contractors.
  [
    supplyValues,
    "key value",
    `
      voltage 230-/-400
      former-voltage 240-/-415
      tolerance +10-%-/--6-%-(216.2-V-to-253-V)
      tolerance-high 10C
      tolerance-low 6C
      frequency 50-Hz,-+/--1-%
      ze-tn-c-s 0.35C
      ze-tn-s 0.8C
      ra-tt 21C
      reduced-low-voltage 63.5M
      touch-voltage 50C
      fault-single-phase 16C
      fault-three-phase 25C
      service-fuse 100C`,
  ],
  // Wholesaler's book, Table 6.2: allowances for diversity. Full amperes, then shares of the largest, the next, the rest.
  [
    diversityShares,
    "key column full largest second rest socket",
    `
      lighting household 0C 0.66C 0.66C 0.66C 0C
      lighting shop 0C 0.9C 0.9C 0.9C 0C
      lighting hotel 0C 0.75C 0.75C 0.75C 0C
      heating-power household 10C 0.5C 0.5C 0.5C 0C
      heating-power shop 0C 1C 0.75C 0.75C 0C
      heating-power hotel 0C 1C 0.8C 0.6C 0C
      cookers household 10C 0.3C 0.3C 0.3C 5C
      cookers shop 0C 1C 0.8C 0.6C 0C
      cookers hotel 0C 1C 0.8C 0.6C 0C
      motors household 0= 1= 1= 1= 0=
      motors shop 0C 1C 0.8C 0.6C 0C
      motors hotel 0C 1C 0.5C 0.5C 0C
      instantaneous-heaters household 0C 1C 1C 0.25C 0C
      instantaneous-heaters shop 0C 1C 1C 0.25C 0C
      instantaneous-heaters hotel 0C 1C 1C 0.25C 0C
      thermostatic-heaters household 0C 1C 1C 1C 0C
      thermostatic-heaters shop 0C 1C 1C 1C 0C
      thermostatic-heaters hotel 0C 1C 1C 1C 0C
      standard-circuits household 0C 1C 0.4C 0.4C 0C
      standard-circuits shop 0C 1C 0.5C 0.5C 0C
      standard-circuits hotel 0C 1C 0.5C 0.5C 0C
      sockets household 0C 1C 0.4C 0.4C 0C
      sockets shop 0C 1C 0.75C 0.75C 0C
      sockets hotel 0C 1C 0.75C 0.4C 0C`,
  ],
];
