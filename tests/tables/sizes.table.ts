import { armourEffects } from "../../server/tables/armour.ts";
import { capacity4E2A } from "../../server/tables/capacity-90.ts";
import { capacity4G1A, flexible60, flexible90, mineralAmbient } from "../../server/tables/capacity-other.ts";
import { faultTemperatures } from "../../server/tables/conductor-heat.ts";
import { harmonicNeutrals, selectivityRatios } from "../../server/tables/coordination.ts";
import { enclosureWalls, singleDiameters } from "../../server/tables/diameters.ts";
import { depthFactors, groundGroupingFactors, soilFactors } from "../../server/tables/ground.ts";
import { drop4E4B, otherReactances } from "../../server/tables/reactance.ts";
import { flatPairs, sizingValues, usualConstructions } from "../../server/tables/sizing-practice.ts";
import { standardResiduals, standardSizes } from "../../server/tables/standard-values.ts";
import type { Printed } from "./printed.ts";

/** Capacities, drops, factors and sizes that the other lists leave out; the letters are theirs, and P is common practice. */
export const sizes: readonly Printed[] = [
  // Table 4E2A, as a cable maker prints it by the methods of the 16th Edition.
  [
    capacity4E2A,
    "csa A2 A3 B2 B3 C2 C3 E2 E3",
    `
      1.5C 18.5C 16.5C 22C 19.5C 24C 22C 26C 23C
      2.5C 25C 22C 30C 26C 33C 30C 36C 32C
      4C 33C 30C 40C 35C 45C 40C 49C 42C
      6C 42C 38C 51C 44C 58C 52C 63C 54C
      10C 57C 51C 69C 60C 80C 71C 86C 75C
      16C 76C 68C 91C 80C 107C 96C 115C 100C
      25C 99C 89C 119C 105C 138C 119C 149C 127C
      35C 121C 109C 146C 128C 171C 147C 185C 158C
      50C 145C 130C 175C 154C 209C 179C 225C 192C
      70C 183C 164C 221C 194C 269C 229C 289C 246C
      95C 220C 197C 265C 233C 328C 278C 352C 298C
      120C 253C 227C 305C 268C 382C 322C 410C 346C
      150C 290C 259C 334C 300C 441C 371C 473C 399C
      185C 329C 295C 384C 340C 506C 424C 542C 456C
      240C 386C 346C 459C 398C 599C 500C 641C 538C
      300C 442C 396C 532C 455C 693C 576C 741C 621C`,
  ],
  // R&M Electrical catalogue, Table 4G1A: light duty to 4 mm², heavy duty from 6 mm².
  [
    capacity4G1A,
    "csa C2 C3 E2 E3",
    `
      1C 18.5C 15C 19.5C 16.5C
      1.5C 23C 19C 25C 21C
      2.5C 31C 26C 33C 28C
      4C 40C 35C 44C 37C
      6C 57C 48C 60C 51C
      10C 77C 65C 82C 69C
      16C 102C 86C 109C 92C
      25C 133C 112C 142C 120C
      35C 163C 137C 174C 147C
      50C 202C 169C 215C 182C
      70C 247C 207C 264C 223C
      95C 296C 249C 317C 267C
      120C 340C 286C 364C 308C
      150C 388C 327C 416C 352C
      185C 440C 371C 472C 399C
      240C 514C 434C 552C 466C`,
  ],
  // CSE Distributors: Tables 4F1A and 4F1B.
  [
    flexible60,
    "csa rating2 rating3 phase1 phase3",
    `
      4C 30C 26C 12C 10C
      6C 39C 34C 7.8C 6.7C
      10C 51C 47C 4.6C 4C
      16C 73C 63C 2.9C 2.5C
      25C 97C 83C 1.85C 1.55C
      35C - 102C - 1.15C
      50C - 124C - 0.84C
      70C - 158C - 0.58C
      95C - 192C - 0.44C`,
  ],
  // CSE Distributors, and a cable maker: Tables 4F2A and 4F2B.
  [
    flexible90,
    "csa rating2 rating3 phase1 phase3",
    `
      4C 42C 37C 13.2C 11.1C
      6C 55C 49C 8.5C 7.4C
      10C 76C 66C 5.1C 4.4C
      16C 103C 89C 3.2C 2.7C
      25C 136C 119C - 1.73C
      35C - 146C - 1.23C
      50C - 177C - 0.93C
      70C - 225C - 0.64C
      95C - 273C - 0.49C
      120C - 316C - 0.39C
      150C - 363C - 0.32C
      185C - 414C - 0.27C
      240C - 487C - 0.231C
      300C - 560C - 0.195C`,
  ],
  // IEE wiring regulation basic summary and tables: mineral cable with a sheath of 70 °C.
  [
    mineralAmbient,
    "temperature factor",
    `
      25C 1.03C
      30C 1C
      35C 0.93C
      40C 0.85C
      45C 0.77C
      50C 0.67C
      55C 0.57C`,
  ],
  // 17th Edition extract of Table 4E4B; its r1 of 35 mm² and its r3 of 95 mm² do not fit their own x and z, so are calculated.
  [
    drop4E4B,
    "csa r1 x1 phase1 r3 x3 phase3",
    `
      25C 1.85C 0.16C 1.9C 1.6C 0.14C 1.65C
      35= 1.35= 0.155C 1.359= 1.15C 0.135C 1.15C
      50C 0.99C 0.155C 1C 0.86C 0.135C 0.87C
      70C 0.67C 0.15C 0.69C 0.59C 0.13C 0.6C
      95= 0.5C 0.15C 0.52C 0.431= 0.13C 0.45C
      120M 0.4C 0.145C 0.42C 0.34C 0.13C 0.38M
      150C 0.32C 0.145C 0.35C 0.28C 0.125C 0.3C
      185C 0.26C 0.145C 0.29C 0.22C 0.125C 0.26C
      240C 0.2C 0.14C 0.24C 0.175C 0.125C 0.21C
      300C 0.16C 0.14C 0.21C 0.14C 0.12C 0.185C
      400C 0.13C 0.14C 0.19C 0.115C 0.12C 0.165C`,
  ],
  [
    otherReactances,
    "key value",
    `
      armour 0.0003M
      counts-above 35=`,
  ],
  // Tables 4C2 and 4C3, and from memory Tables B.52.18 and B.52.19 of IEC 60364-5-52. IET EngX has those marked C.
  [
    groundGroupingFactors,
    "key circuits touching d125 d250 d500 d1000",
    `
      buried 2M 0.75M 0.85M 0.9M 0.9M -
      buried 3M 0.65M 0.75M 0.8M 0.85M -
      buried 4M 0.6M 0.7M 0.75M 0.8C -
      buried 5M 0.55M 0.65M 0.7M 0.8C -
      buried 6M 0.5M 0.6M 0.7M 0.8C -
      duct 2M 0.85M - 0.9M 0.95M 0.95M
      duct 3M 0.75M - 0.85M 0.9M 0.95M
      duct 4M 0.7M - 0.8M 0.85M 0.9M
      duct 5M 0.65M - 0.8M 0.85M 0.9M
      duct 6M 0.6C - 0.8M 0.8M 0.9M`,
  ],
  // Table 4B3, and Table B.52.16 of IEC 60364-5-52, from memory.
  [
    soilFactors,
    "soil buried duct",
    `
      0.5M 1.88M 1.28M
      0.7M 1.62M 1.2M
      1M 1.5M 1.18M
      1.5M 1.28M 1.1M
      2M 1.12M 1.05M
      2.5= 1= 1=
      3M 0.9M 0.96M`,
  ],
  // Table 4B4, from memory.
  [
    depthFactors,
    "depth buried duct",
    `
      500M 1.03M 1.02M
      700= 1= 1=
      1000M 0.97M 0.98M
      1250M 0.95M 0.96M
      1500M 0.94M 0.95M
      1750M 0.93M 0.94M
      2000M 0.92M 0.93M
      2500M 0.91M 0.92M
      3000M 0.9M 0.91M`,
  ],
  // Cable rating reduction factor due to harmonic current, Table 4Aa to A1:2011.
  [
    harmonicNeutrals,
    "over upTo factor by",
    `
      0C 15C 1C line
      15C 33C 0.86C line
      33C 45C 0.86C neutral
      45C 1000C 1C neutral`,
  ],
  // Fuse maker's application guidance.
  [
    selectivityRatios,
    "key value",
    `
      fuse-fuse 1.6C`,
  ],
  // Tables 54.2 to 54.5: the temperatures their k is calculated from.
  [
    faultTemperatures,
    "case insulation initial final",
    `
      separate-insulated-or-bare-protective-conductor,-not-bunched pvc70 30= 160=
      separate-insulated-or-bare-protective-conductor,-not-bunched ts90 30= 250=
      incorporated-in-a-cable-or-bunched pvc70 70= 160=
      incorporated-in-a-cable-or-bunched pvc90 90= 160=
      incorporated-in-a-cable-or-bunched ts90 90= 250=
      sheath-or-armour-as-protective-conductor pvc70 60= 200=
      sheath-or-armour-as-protective-conductor ts90 80= 200=
      steel-conduit,-ducting,-trunking-as-protective-conductor pvc70 50= 160=
      steel-conduit,-ducting,-trunking-as-protective-conductor pvc90 60= 160=
      steel-conduit,-ducting,-trunking-as-protective-conductor ts90 60= 250=`,
  ],
  [
    armourEffects,
    "key value",
    `
      resistance 1.1C`,
  ],
  // A cable maker: greatest overall diameters to BS EN 50525-2-31.
  [
    singleDiameters,
    "csa wire overall",
    `
      1C solid 2.7C
      1.5C solid 3.2C
      2.5C solid 3.9C
      1.5C stranded 3.3C
      2.5C stranded 4C
      4C stranded 4.6C
      6C stranded 5.2C
      10C stranded 6.7C
      16C stranded 7.8C
      25C stranded 9.7C
      35C stranded 10.9C
      50C stranded 12.8C`,
  ],
  [
    enclosureWalls,
    "kind wall",
    `
      conduit 1.6M
      trunking 1.2M`,
  ],
  // BS EN 60228, Table 1.
  [
    standardSizes,
    "csa",
    `
      0.5C
      0.75C
      1C
      1.5C
      2.5C
      4C
      6C
      10C
      16C
      25C
      35C
      50C
      70C
      95C
      120C
      150C
      185C
      240C
      300C
      400C`,
  ],
  // Table 41.5, and 6 mA and 1 A as they are made.
  [
    standardResiduals,
    "residual",
    `
      0.006P
      0.01=
      0.03C
      0.1C
      0.3=
      0.5=
      1P`,
  ],
  // BS 6004: what flat twin and earth cable is made with.
  [
    flatPairs,
    "line cpc",
    `
      1P 1P
      1.5P 1P
      2.5P 1.5P
      4P 1.5P
      6P 2.5P
      10P 4P
      16P 6P`,
  ],
  [
    usualConstructions,
    "route single three insulation",
    `
      conduit singles singles 70P
      trunking singles singles 70P
      clipped flat-twin multicore 70P
      wall flat-twin multicore 70P
      ceiling flat-twin multicore 70P
      floor flat-twin multicore 70P
      free-air multicore multicore 70P
      overhead multicore multicore 90P
      tray armoured armoured 90P
      ladder armoured armoured 90P
      duct armoured armoured 90P
      buried armoured armoured 90P`,
  ],
  [
    sizingValues,
    "key value",
    `
      least-breaker 6P
      least-breaking 6000P
      cooker 32P
      ring-drop 26P`,
  ],
];
