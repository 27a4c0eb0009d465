/** What may stand in the settings: from this follow their reading, their messages and their JSON schema. */
import { severities } from "../rules/frame/rule.ts";

export type Kind =
  | { readonly is: "text" }
  | { readonly is: "day" }
  | { readonly is: "count" }
  | { readonly is: "level"; readonly levels: readonly string[] }
  | { readonly is: "check"; readonly skippable: boolean }
  | { readonly is: "list"; readonly of: Kind }
  | { readonly is: "object"; readonly keys: Keys }
  /** Names of checks, each with a value. */
  | { readonly is: "byCheck"; readonly of: Kind };

interface Key {
  readonly kind: Kind;
  readonly means: string;
  readonly required?: boolean;
}

export type Keys = Readonly<Record<string, Key>>;

const checks: Kind = { is: "list", of: { is: "check", skippable: false } };
const skippable: Kind = { is: "list", of: { is: "check", skippable: true } };
const patterns: Kind = { is: "list", of: { is: "text" } };

const suppression: Keys = {
  check: {
    kind: { is: "check", skippable: true },
    means: "The check, or the family of checks, whose findings are known and left.",
    required: true,
  },
  reason: { kind: { is: "text" }, means: "Why they are left. It stands in every report.", required: true },
  files: { kind: patterns, means: "Where they are left, as in a .gitignore; every file if this is missing." },
  until: { kind: { is: "day" }, means: "The last day they are left. After it they count again." },
};

export const keys: Keys = {
  $schema: { kind: { is: "text" }, means: "Where the schema of this file is, for editors." },
  failLevel: {
    kind: { is: "level", levels: severities },
    means: "What ends a check with 1: this, and all that is graver.",
  },
  maxWarnings: { kind: { is: "count" }, means: "A check ends with 1 where there are more warnings." },
  only: { kind: checks, means: "The checks or families that are reported; all if this is missing." },
  skip: {
    kind: skippable,
    means: "Checks or families that are not reported. How many findings that leaves out is counted.",
  },
  leaveOut: { kind: patterns, means: "Folders and files that a search passes over, as in a .gitignore." },
  columns: {
    kind: { is: "list", of: { is: "text" } },
    means:
      "What headings of a meter's table are of ours, as “Loop L-E=Zs”; “Remarks=-” is left out. `enter` and the editor go by them.",
  },
  suppress: {
    kind: { is: "list", of: { is: "object", keys: suppression } },
    means: "Findings that are known and left, each with the reason. They are counted and listed, and fail nothing.",
  },
  raise: {
    kind: { is: "byCheck", of: { is: "level", levels: severities.slice(0, 2) } },
    means: "House rules: checks or families that weigh more here. Nothing can be made to weigh less.",
  },
};
