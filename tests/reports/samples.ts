/** Installations whose working is worth reading, and the way each is read for. */
import { type Installation, installationsOf } from "../../server/model/installation.ts";
import { targetIn } from "../../server/reports/common/target.ts";
import type { Report } from "../../server/reports/setting/document.ts";
import { workingOf } from "../../server/reports/working/working.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { loft } from "../helpers/cursor.ts";

export const installations = (text: string): Installation[] => installationsOf([fileOfText("sample.ways", text)]);

export function workingIn(text: string, named: { way?: string; board?: string } = {}): Report {
  const target = targetIn(installations(text), named);
  if ("failure" in target) throw new Error(target.failure);
  return workingOf(target.installation, target);
}

/** A board fed from another, with a radial at its end. */
export const feeder = `wayfile 1
installation "Alder Reach Nursery" {
  standard  BS 7671:2018+A2:2022
  stage     design
  work      new
  premises  commercial
  supply {
    earthing  TN-C-S
    U0        230 V
    Ze        0.21 Ω
    Ipf       1.6 kA
  }
  board A "Main board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    way 1 feeder "Potting shed" {
      device  BS EN 60898 C50 10 kA
      feeds   B
      cable   singles 70 °C line 16 mm² cpc 16 mm²
      route   conduit 32 mm method B
      length  30 m
      Ib      38 A
    }
  }
  board B "Potting shed" {
    fed-from     A
    main-switch  BS EN 60947-3 63 A
    way 2 radial "Propagator" {
      device  BS EN 60898 B20 6 kA
      cable   singles 70 °C line 4 mm² cpc 4 mm²
      route   conduit 25 mm method B grouped 2
      length  14 m
      serves  heating
      load    3 kW "Heating mats"
    }
  }
}
`;

/** An electrode, so that an RCD disconnects. */
export const electrode = `wayfile 1
installation "Fold End Byre" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      new
  premises  agricultural
  supply {
    earthing   TT
    U0         230 V
    Ze         84 Ω
    Ipf        0.9 kA
    electrode  rod 84 Ω
  }
  board A "Byre board" {
    fed-from     supply
    main-switch  BS EN 61008 100 A 100 mA type A delayed
    way 1 radial "Milking parlour" {
      device  BS EN 61009 B20 6 kA 30 mA type A
      cable   singles 70 °C line 4 mm² cpc 4 mm²
      route   conduit 25 mm method B
      length  22 m
      serves  sockets
      Ib      14 A
      departure record/limitation-on-new "The pump runs until May; to be tested then"
      dead 2026-03-04 {
        R1+R2       0.21 Ω
        insulation  500 V  L-N >999 MΩ  L-E 210 MΩ  N-E LIM "The pump controller could not be isolated"
        polarity    ok
      }
      live 2026-03-05 {
        Zs           84.3 Ω
        rcd          30 mA 1x 26 ms
        test-button  ok
      }
    }
  }
}
`;

export const threePhase = `wayfile 1
installation "Brack Lane Joinery" {
  standard  BS 7671:2018+A2:2022
  stage     design
  work      new
  premises  commercial
  supply {
    earthing  TN-S
    phases    three
    U0        230 V
    Ze        0.18 Ω
    Ipf       4.1 kA
  }
  board A "Joinery board" {
    fed-from     supply
    phases       three
    main-switch  BS EN 60947-3 125 A
    way 3 radial "Planer" {
      device  BS EN 60898 D32 10 kA
      phase   three
      cable   multicore 70 °C line 6 mm² cpc 6 mm² cores 5
      route   tray method E grouped 3 tray-layer
      length  26 m
      serves  motor
      Ib      18.5 A
    }
  }
}
`;

/** Little is said, and all that follows from it is missing. */
export const missing = `wayfile 1
installation "Stub" {
  standard  BS 7671:2018+A2:2022
  stage     design
  supply {
    earthing  TN-S
  }
  board A {
    fed-from  supply
    way 1 radial "Unknown" {
      device  BS EN 60898 B16
      cable   flat-twin line 2.5 mm²
      route   clipped
      route   ceiling ambient 35 °C
    }
    way 2 radial
    way 3 spare
  }
}
`;

export const samples = {
  "a ring": { text: loft, way: "A/3" },
  "a radial behind a feeder": { text: feeder, way: "B/2" },
  "a way with an electrode": { text: electrode, way: "A/1" },
  "a three-phase way": { text: threePhase, way: "A/3" },
  "a way with missing facts": { text: missing, way: "A/1" },
} as const;
