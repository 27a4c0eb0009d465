/** What the settings of a repository make of a finding: shown as it is or weighing more, suppressed, or left out. */
import ignore from "ignore";
import { type Severity, severities } from "../rules/frame/rule.ts";
import { covers, familyOf, isAlwaysShown, type Settings, type Suppression } from "./settings.ts";

export type Fate =
  | { readonly is: "shown"; readonly severity: Severity }
  | { readonly is: "suppressed"; readonly by: Suppression }
  | { readonly is: "left out" };

interface About {
  readonly check: string;
  readonly severity: Severity;
}

/** The settings for one file. */
export type FatesOf = (finding: About) => Fate;

/**
 * `path`: the file, from the folder of the settings, with `/`. `today`: ISO 8601, by which a suppression has run out.
 */
export function fatesIn(settings: Settings, path: string, today: string): FatesOf {
  const here = settings.suppress.filter((one) => holdsOn(one, today) && holdsFor(one, path));
  return ({ check, severity }) => {
    if (isAlwaysShown(check)) return { is: "shown", severity };
    if ((settings.only && !covers(settings.only, check)) || covers(settings.skip, check)) return { is: "left out" };
    const by = here.find((one) => covers([one.check], check));
    return by ? { is: "suppressed", by } : { is: "shown", severity: raised(settings, check, severity) };
  };
}

/** Whether a suppression still holds. */
export const holdsOn = ({ until }: Suppression, today: string): boolean => until === undefined || today <= until;

function holdsFor({ files }: Suppression, path: string): boolean {
  if (files === undefined) return true;
  // What lies beyond the folder of the settings is none of theirs.
  return (
    ignore.isPathValid(path) &&
    ignore()
      .add([...files])
      .ignores(path)
  );
}

/** The graver of its own weight and that of the house. */
function raised({ raise }: Settings, check: string, severity: Severity): Severity {
  const house = raise.get(check) ?? raise.get(familyOf(check));
  return house && severities.indexOf(house) < severities.indexOf(severity) ? house : severity;
}

/** Whether a search passes a path over. `path`: from the folder of the settings, with `/`, a folder's with one at its end. */
export function leavesOut({ leaveOut }: Settings): (path: string) => boolean {
  const rules = ignore().add([...leaveOut]);
  return (path) => leaveOut.length > 0 && ignore.isPathValid(path) && rules.ignores(path);
}
