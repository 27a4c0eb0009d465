/** Which checks are errors, warnings or information, and why, in a table that is read in a few minutes. */
import { pages } from "./catalogue.ts";
import type { Severity } from "./rule.ts";

/** What a severity means, and the checks that have it, by family. */
interface Grade {
  readonly severity: Severity;
  readonly means: string;
  readonly families: readonly GradedFamily[];
}

interface GradedFamily {
  readonly family: string;
  /** Names without their family. */
  readonly checks: readonly string[];
  /** The regulations they rest on, without repeats. */
  readonly clauses: readonly string[];
}

const meanings: readonly (readonly [Severity, string])[] = [
  [
    "error",
    "The standard says shall, and the schedule shows that it is not met; or a reading shows a danger; or a test that certifies new work is missing. Put it right before anything is signed.",
  ],
  [
    "warning",
    "The standard says should; or two figures contradict each other and one of them is wrong; or something that has to be stated is not. Put it right, or depart from it with a reason.",
  ],
  [
    "information",
    "Good practice, or what a person should know: an estimate that is close, a figure to be looked up, what was not judged. It stops nothing.",
  ],
];

/** What makes a check lighter than it stands in the table, each with its reason. */
export const lighter: readonly (readonly [string, string])[] = [
  [
    "A figure from memory decides",
    "An error becomes a warning, called unproven, where the value passes with that figure at its favourable end. Passing only as remembered is information.",
  ],
  ["A rule came after the work", "What the edition of the work did not require is information on existing work."],
  ["A test is missing on existing work", "A warning: nothing is certified by it. On new work it is an error."],
  [
    "An RCD covers what an overcurrent device does not",
    "A loop that is too high for the device is a warning where an RCD disconnects it in time (411.4.5).",
  ],
  [
    "A table asks more than a calculation",
    "Below Table 54.7 a protective conductor is asked about; where the heat of the fault condemns it, it is an error.",
  ],
  ["A drop holds at its real conditions", "Information: 525.202 advises, and what cooler conductors take off counts."],
  ["The work leaves a part as it was", "Only what a reading shows to be dangerous is said of it."],
];

/** The table: every check once, the gravest first. */
export const grades: readonly Grade[] = meanings.map(([severity, means]) => {
  const own = pages.filter((page) => page.severity === severity);
  const families = [...Map.groupBy(own, ({ id }) => id.slice(0, id.indexOf("/")))].map(([family, members]) => ({
    family,
    checks: members.map(({ id }) => id.slice(family.length + 1)),
    clauses: [...new Set(members.flatMap(({ clauses }) => clauses))],
  }));
  return { severity, means, families };
});
