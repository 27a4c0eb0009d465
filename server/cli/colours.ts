import picocolors from "picocolors";
import type { Severity } from "../rules/frame/rule.ts";
import { type TerminalText, term } from "../text/terminal.ts";

export type Tint = (text: string | TerminalText) => TerminalText;

const tints = ["bold", "dim", "red", "yellow", "green", "blue", "cyan"] as const;
export type Colours = Readonly<Record<(typeof tints)[number], Tint>>;

/** The signs that colour a text are put round it once it can hold none of its own. */
export function coloursFor(wanted: boolean): Colours {
  const made = picocolors.createColors(wanted);
  const tint = (name: (typeof tints)[number]): Tint => {
    return (text) => term.asItStands(made[name](term`${text}`.text));
  };
  return Object.fromEntries(tints.map((name) => [name, tint(name)])) as unknown as Colours;
}

export function tintOf(severity: Severity, colours: Colours): Tint {
  const tint = { error: colours.red, warning: colours.yellow, information: colours.blue }[severity];
  return (text) => colours.bold(tint(text));
}
