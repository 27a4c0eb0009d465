/** The files of a project, by the lines that use them. */
import type { Engine } from "../model/engine.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { findingOf, valueSpot } from "../rules/frame/rule.ts";
import type { LoadedFile } from "./loaded-file.ts";
import { nameOfUri } from "./uri.ts";

/** Where each file of a project comes from: open documents first, then the host. */
export interface Sources {
  file(path: string): LoadedFile | { readonly failure: string };
  resolve(from: string, use: string): string;
  /** What all schedules from here are checked with; without one, each stands for itself. */
  readonly engine?: Engine;
}

export interface Gathering {
  readonly files: LoadedFile[];
  readonly findings: Finding[];
  /** Whether a file that is used could not be read. */
  readonly unread: boolean;
}

/** The file and all it uses, each once; what could not be read or closes a circle is a finding on its `use` line. */
export function gather(root: LoadedFile, sources: Sources): Gathering {
  const files: LoadedFile[] = [];
  let unread = false;
  const findings: Finding[] = [];
  const onTheWay: string[] = [];
  const visit = (file: LoadedFile): void => {
    files.push(file);
    onTheWay.push(file.path);
    // A line that could not be understood may name a file that defines what seems to be missing.
    if (file.model.facts.isUnread("use") || file.unreadSize !== undefined) unread = true;
    for (const use of file.model.facts.all("use")) {
      const path = sources.resolve(file.path, use.args.path.value);
      const say = (check: "use-cycle" | "use-missing", message: string) =>
        findings.push(languageFinding(check, valueSpot(use, use.args.path), message));
      if (onTheWay.includes(path)) {
        say(
          "use-cycle",
          `This file is already being read: ${[...onTheWay.slice(onTheWay.indexOf(path)), path].map(nameOfUri).join(" uses ")}.`,
        );
      } else if (!files.some((other) => other.path === path)) {
        const used = sources.file(path);
        if ("failure" in used) {
          unread = true;
          say(
            "use-missing",
            `“${use.args.path.value}” cannot be used: ${used.failure} What it defines is not known here.`,
          );
        } else visit(used);
      }
    }
    onTheWay.pop();
  };
  visit(root);
  return { files, findings, unread };
}

function languageFinding(check: "use-cycle" | "use-missing", spot: Finding["spot"], message: string): Finding {
  return findingOf(
    { id: `language/${check}`, severity: "error", since: "0.1", title: "", why: "", clauses: [], examples: [] },
    spot,
    { message },
  );
}
