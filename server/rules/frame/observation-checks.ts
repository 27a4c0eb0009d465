import type { Declaration } from "./departure-checks.ts";

export const settled: Declaration = {
  id: "inspection/observation-settled",
  severity: "information",
  since: "0.1",
  title: "An observation names a check that finds nothing there.",
  why: "What was observed has been put right, or the observation names the wrong circuit or check. A report stays as it was issued: write “remedied”, the day and by whom behind it, so that the next inspector sees both.",
  clauses: ["653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  inspection periodic 2026-03-05 {
    observation  1 C2 "Loop too high for its device"  board A  way 1  rule loop/zs-over-limit
                                                                           ^^^^^^^^^^^^^^^^^^
  }
  board A {
    way 1 radial "Oven" {
      device       BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs           0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  inspection periodic 2026-03-05 {
    observation  1 C2 "Loop too high for its device"  board A  way 1  rule loop/zs-over-limit  remedied 2026-03-20  by "J.M."
  }
  board A {
    way 1 radial "Oven" {
      device       BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs           0.62 Ω
      }
    }
  }
}`,
    },
  ],
};

export const notObserved: Declaration = {
  id: "inspection/finding-not-observed",
  severity: "information",
  since: "0.1",
  title: "A periodic inspection has findings that no observation names.",
  why: "What the readings and the record show is found whether or not somebody writes it down. Whether it is an observation, and of which code, the inspector alone decides: a code beside it here is what is usually given, and none is ever set.",
  clauses: ["653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.20 Ω
  }
  inspection periodic 2026-03-05 {
  ^^^^^^^^^^
    outcome      satisfactory
  }
  board A {
    fed-from     supply
    way 1 radial "Oven" {
      device       BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs           1.92 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.20 Ω
  }
  inspection periodic 2026-03-05 {
    observation  1 C2 "Loop too high for its device"  board A  way 1  rule loop/zs-over-limit
    outcome      unsatisfactory
  }
  board A {
    fed-from     supply
    way 1 radial "Oven" {
      device       BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs           1.92 Ω
      }
    }
  }
}`,
    },
  ],
};

export const adequacyContradicted: Declaration = {
  id: "inspection/existing-contradicted",
  severity: "warning",
  since: "0.1",
  title: "The existing installation is stated to be adequate, and it is not.",
  why: "The statement that the existing installation carries the work is signed for. Where the readings or the sizes in this schedule show otherwise, the statement is wrong or the figure is, and new work must not wait for an accident to tell which.",
  clauses: ["132.16", "641.5"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         addition
  premises     commercial
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    cutout       BS 88-3 32 A
  }
  inspection initial 2026-03-05 {
    existing     load adequate "By the list of loads"
                 ^^^^^^^^^^^^^
  }
  board A {
    fed-from     supply
    way 1 radial "Kiln" {
      Ib           48 A
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         addition
  premises     commercial
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    cutout       BS 88-3 80 A
  }
  inspection initial 2026-03-05 {
    existing     load adequate "By the list of loads"
  }
  board A {
    fed-from     supply
    way 1 radial "Kiln" {
      Ib           48 A
    }
  }
}`,
    },
  ],
};

const coded = (code: string) => `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  inspection periodic 2026-03-05 {
    observation  1 ${code} "No earth at the far sockets"  board A  way 1
    outcome      ${code === "C3" ? "satisfactory" : "unsatisfactory"}
  }
  board A {
    fed-from     supply
    way 1 radial "Bench" {
      device       BS EN 60898 B20 6 kA
      dead 2026-03-05 {
        R2           >99 Ω
      }
    }
  }
}`;

export const codeLighter: Declaration = {
  id: "inspection/code-lighter",
  severity: "warning",
  since: "0.1",
  title: "An observation is coded C3, and such a defect is usually coded C2.",
  why: "A C3 alone leaves the outcome satisfactory, and the circuit in service. What is found at the place of this one breaks a requirement and is usually a C2. The code is the inspector's, who has seen it: where it stands, the reason belongs beside it, with the check it is of.",
  clauses: ["653.2"],
  examples: [
    {
      bad: coded("C3").replace("way 1\n    outcome", "way 1\n                   ^^\n    outcome"),
      good: coded("C2"),
    },
  ],
};

/** How what stands in no observation is spoken of, with the code that is usually given; and whether that is a danger. */
export const usually = (code: string, message: string): string => `Usually ${code}: ${message}`;
export const isUsuallyGrave = (said: string): boolean => /^Usually C[12]: /.test(said);

/** The checks that read observations against what was found, and so run after the others. */
export const observationChecks: readonly Declaration[] = [settled, notObserved, adequacyContradicted, codeLighter];
