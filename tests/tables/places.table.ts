import { rcdTypes } from "../../server/tables/index.ts";
import { inspectionIntervals } from "../../server/tables/inspection.ts";
import { insulationMinima16 } from "../../server/tables/insulation-16th.ts";
import { leakageLimits } from "../../server/tables/leakage.ts";
import {
  placeBonding,
  placeDistances,
  placeEarths,
  placeEquipment,
  placeRcds,
  placeTouch,
  placeWater,
  placeZones,
} from "../../server/tables/places.ts";
import { rcdLimits, rcdLoads } from "../../server/tables/rcd-limits.ts";
import { rcdRequired } from "../../server/tables/rcd-selection.ts";
import { assumedRoutes, usualCurves } from "../../server/tables/sizing-practice.ts";
import { testPrecautions } from "../../server/tables/testing.ts";
import type { Printed } from "./printed.ts";

/** Places, RCDs, inspection and testing, by the letters of the other lists. */
export const places: readonly Printed[] = [
  // An engineer’s training page on types of RCD: 6 mA and 10 mA of smooth direct current.
  [
    rcdTypes,
    "type dc",
    `
      AC -
      A 6C
      F 10C
      B -`,
  ],
  // NICEIC, 18th Edition changes, part 4, and The Regs blog.
  [
    rcdRequired,
    "key limit clause",
    `
      sockets 30-mA 411.3.3
      outdoors 30-mA 411.3.3
      dwelling-lighting 30-mA 411.3.4
      concealed 30-mA 522.6.202
      bathroom 30-mA 701.411.3.3
      metal-frame 30-mA 522.6.203
      park-home 30-mA 708.415.1
      floor-heating 30-mA 753.411.3.2
      public-lighting 30-mA 714.411.3.4
      ev 30-mA,-and-d.c.-detection->6-mA-unless-type-B 722.531.3.101
      ev-dc 6-mA-d.c. 722.531.3.101
      tt RCD 411.5.2`,
  ],
  // IET Wiring Matters, July 2022, and a trade magazine of 2018: 30 mA, 50 mm, 32 A, 6 mA.
  [
    rcdLimits,
    "key value unit",
    `
      additional 0.03C A
      concealed 50C mm
      outdoors 32C A
      ev-dc 0.006C A`,
  ],
  [
    rcdLoads,
    "use type direct",
    `
      ev-charger A certain
      pv A likely
      storage A likely
      heat-pump A likely
      laundry A likely
      sockets A certain
      outdoor-sockets A certain
      cooker A likely
      lighting A likely
      emergency-lighting A likely
      data A likely
      lift A likely
      door A likely
      alarms A likely`,
  ],
  // 531.3.2: 30 %. IET EngX, high-integrity earthing, 543.7.1.203: 10 mA, 10 mm², and 4 mm² where protected.
  [
    leakageLimits,
    "key value",
    `
      share 0.3C
      high 0.01C
      single-cpc 10C
      protected-cpc 4M`,
  ],
  // Part 7 and 422.3.9. IET EngX on park homes, Wiring Matters of winter 2011 on marinas, a forum on Section 705.
  [
    placeRcds,
    "place circuits upTo residual own clause",
    `
      pool all - 0.03M shared 702.410.3.4
      agricultural sockets 32C 0.03C shared 705.411.1
      agricultural sockets - 0.1C shared 705.411.1
      agricultural other - 0.3C shared 705.411.1
      agricultural feeder - 0.3M shared 705.411.1
      caravan sockets - 0.03C each 708.415.1
      marina sockets 63C 0.03C each 709.531.2
      marina sockets - 0.3M each 709.531.2
      construction sockets 32M 0.03M shared 704.410.3.10
      sauna all - 0.03M shared 703.411.3.3
      exhibition sockets 32M 0.03M shared 711.411.3.3
      exhibition other - 0.03M shared 711.411.3.3
      exhibition origin - 0.3M shared 711.410.3.4
      fairground sockets 32M 0.03M shared 740.415.1
      fairground other - 0.03M shared 740.415.1
      fairground origin - 0.3M shared 740.410.3
      mobile-unit sockets - 0.03M shared 717.415
      mobile-unit other - 0.03C shared 717.411.1
      fire-risk all - 0.3M shared 422.3.9
      construction sockets - 0.5M shared 704.411.3.2.1`,
  ],
  [
    placeEarths,
    "place clause",
    `
      caravan BS-7671:2018+A2:2022,-708.411.4;-ESQCR-2002,-Regulation-9(4)
      marina BS-7671:2018+A2:2022,-709.411.4;-ESQCR-2002,-Regulation-9(4)
      construction BS-7671:2018+A2:2022,-704.411.3.1
      exhibition BS-7671:2018+A2:2022,-711.411.4
      fairground BS-7671:2018+A2:2022,-740.411.4
      mobile-unit BS-7671:2018+A2:2022,-717.411.4
      charger BS-7671:2018+A2:2022,-722.411.4.1`,
  ],
  // Maker's guide to bathroom zones: IPX7 in zone 0, IPX4 in zones 1 and 2.
  [
    placeWater,
    "place zone water clause",
    `
      bathroom 0 7C 701.512.2
      bathroom 1 4C 701.512.2
      bathroom 2 4C 701.512.2
      pool 0 8M 702.512.2
      pool 1 4M 702.512.2
      pool 2 2M 702.512.2
      agricultural  4M 705.512.2
      caravan  4M 708.512.2
      marina  4C 709.512.2
      outdoors  3P 512.2`,
  ],
  // HD 60364-7-702, 702.410.3.4.1, and a maker's guide to bathroom zones: 12 V a.c.
  [
    placeZones,
    "place zone volts clause",
    `
      bathroom 0 12C 701.55
      pool 0 12M 702.410.3.4.1
      pool 1 12M 702.410.3.4.1`,
  ],
  // A thread on 701.512.3 and a guide to saunas; 701.55 from memory.
  [
    placeEquipment,
    "place zone use clause",
    `
      bathroom 1 shaver 701.512.3
      bathroom 1 laundry 701.55
      bathroom 1 cooker 701.55
      sauna  sockets 703.537.5`,
  ],
  // 3 m from zone 1 since 2008, by 701.512.3; 2.5 m since 2022, from memory.
  [
    placeDistances,
    "from distance",
    `
      BS-7671:2008 3C
      BS-7671:2018+A2:2022 2.5M`,
  ],
  [
    placeBonding,
    "place omitted clause",
    `
      bathroom conditions 701.415.2
      pool never 702.415.2
      agricultural never 705.415.2.1`,
  ],
  // 604-05 and 605-06 of the 16th Edition, from memory: 25 V.
  [
    placeTouch,
    "place edition volts clause",
    `
      construction BS-7671:2001 25M 604-05
      agricultural BS-7671:2001 25M 605-06`,
  ],
  // Treadwell Electrical, recommended frequencies of inspection.
  [
    inspectionIntervals,
    "of years",
    `
      dwelling 10C
      let 5C
      outbuilding 10C
      shared-house 5C
      student 5C
      care-home 5C
      tall-residential 5C
      commercial 5C
      industrial 3C
      agricultural 3C
      caravan 1C
      marina 1C
      pool 1C
      construction 0.25C`,
  ],
  // BS 7671:2001, Table 71A.
  [
    insulationMinima16,
    "kind testVoltage minimum",
    `
      selv-pelv 250M 0.25M
      up-to-500 500C 0.5C
      above-500 1000M 1M`,
  ],
  // BS EN 61557-4: 200 mA. GS 38: 4 mm of bare tip; a fuse of 500 mA.
  [
    testPrecautions,
    "key value",
    `
      continuity-instrument 4-24-/-≥200
      continuity-current 200C
      insulation-instrument 500-V,-1-mA
      leads GS-38
      tips 4C
      fused-leads 500C
      isolation yes
      electronics yes
      dead-first yes
      live-loop option`,
  ],
  [
    usualCurves,
    "use curve",
    `
      motor C
      transformer D
      heat-pump C
      lift C
      door C
      ventilation C`,
  ],
  [
    assumedRoutes,
    "circuit route",
    `
      dwelling wall-method-A
      other conduit-method-B`,
  ],
];
