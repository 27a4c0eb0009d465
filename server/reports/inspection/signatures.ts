/** Who signs an inspection, each for their part; what is not stated is a line to write on. */
import type { Inspection } from "../../model/inspections.ts";
import type { Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import type { Signatures } from "../setting/document.ts";

const roles: Readonly<Record<"initial" | "periodic" | "minor", readonly (readonly [word: string, role: string])[]>> = {
  initial: [
    ["designed", "Design"],
    ["also-designed", "Design, second part"],
    ["installed", "Construction"],
    ["tested", "Inspection and testing"],
  ],
  periodic: [
    ["tested", "Inspected and tested by"],
    ["authorised", "Authorised for issue by"],
  ],
  minor: [["tested", "Work, inspection and testing"]],
};

export function signatureRows({ head }: Installation, inspection: Inspection | undefined): Signatures["rows"] {
  const kind = inspection?.kind ?? "initial";
  return roles[kind].flatMap(([word, role]) => {
    const own = inspection?.facts.list.filter((fact) => fact.word === word) ?? [];
    const facts = own.length > 0 ? own : head.facts.list.filter((fact) => fact.word === word);
    if (facts.length === 0) return word === "also-designed" ? [] : [{ role, name: "", on: "" }];
    return facts.map((fact) => ({ role, name: personText(fact), on: argumentOf(fact, "on") }));
  });
}

function argumentOf({ args }: Fact, name: string): string {
  const value = args[name];
  return value && !Array.isArray(value) && "value" in value ? String(value.value) : "";
}

const personText = (fact: Fact): string =>
  ["by", "position", "firm", "address", "phone", "registration"]
    .map((name) => argumentOf(fact, name))
    .filter((part) => part !== "")
    .join(", ");
