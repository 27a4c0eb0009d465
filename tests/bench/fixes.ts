/**
 * What the fixes do: every fix offered for what one danger raises is applied to the schedule. The finding must be gone and
 * nothing graver may have come. Run: node tests/bench/fixes.ts [installations]
 */
import type { Finding } from "../../server/rules/frame/rule.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { dangers } from "../helpers/dangers.ts";
import { generate } from "../helpers/generate.ts";
import { random } from "../helpers/random.ts";
import { sheetOf } from "../helpers/sheet.ts";

const count = Number(process.argv[2] ?? 30);
const alone: Sources = { file: () => ({ failure: "there is no such file." }), resolve: (_, use) => use };
const grave = { information: 0, warning: 1, error: 2 } as const;

function checked(text: string) {
  const file = fileOfText("sample.ways", text);
  const own = checkProject(file, alone).files.find((entry) => entry.file === file);
  return { file, findings: own?.findings ?? [] };
}

const counts = (findings: readonly Finding[]): Map<string, number> => {
  const found = new Map<string, number>();
  for (const { check, severity } of findings) {
    const key = `${check} ${severity}`;
    found.set(key, (found.get(key) ?? 0) + 1);
  }
  return found;
};

const of = (findings: readonly Finding[], check: string): number =>
  findings.filter((one) => one.check === check).length;

interface Tally {
  times: number;
  stays: number;
  graver: Map<string, number>;
  example?: string;
}

const tallies = new Map<string, Tally>();
for (let seed = 1; seed <= count; seed++) {
  const text = generate({ ways: 3 + (seed % 10), waysPerBoard: 12, seed: seed * 6101, mix: seed % 2 === 0 });
  const sheet = sheetOf(text);
  const next = random(seed);
  for (const { spoil } of dangers) {
    const spoilt = spoil(sheet, next);
    if (!spoilt || spoilt.text === text) continue;
    const { file, findings } = checked(spoilt.text);
    const before = counts(findings);
    for (const finding of findings) {
      for (const fix of finding.fixes) {
        const key = `${finding.check}: ${fix.title.replace(/[\d.]+/g, "n").slice(0, 70)}`;
        const tally = tallies.get(key) ?? { times: 0, stays: 0, graver: new Map<string, number>() };
        tallies.set(key, tally);
        if (tally.times >= 25) continue;
        tally.times++;
        const edits = fix.edits.toSorted((a, b) => b.start - a.start);
        const mended = file.document.segments
          .map((segment) =>
            segment === finding.spot.segment
              ? edits.reduce((own, edit) => own.slice(0, edit.start) + edit.text + own.slice(edit.end), segment.text)
              : segment.text,
          )
          .join("");
        const after = checked(mended).findings;
        if (of(after, finding.check) >= of(findings, finding.check)) {
          tally.stays++;
          tally.example ??= after.find((one) => one.check === finding.check)?.message ?? "";
        }
        for (const [what, times] of counts(after)) {
          const [check, severity] = what.split(" ") as [string, keyof typeof grave];
          if (times <= (before.get(what) ?? 0) || check === finding.check) continue;
          if (grave[severity] < grave[finding.severity]) continue;
          tally.graver.set(what, (tally.graver.get(what) ?? 0) + 1);
        }
      }
    }
  }
}
console.log("times  stays  fix; what came that is as grave or graver");
for (const [key, { times, stays, graver, example }] of [...tallies].sort()) {
  const came = [...graver].map(([what, of]) => `${what} ${of}`).join(", ");
  console.log(`${String(times).padStart(5)} ${String(stays).padStart(6)}  ${key}${came ? `  CAME: ${came}` : ""}`);
  if (example) console.log(`               ${example}`);
}
