import colours from "picocolors";
import type { Severity } from "../rules/frame/rule.ts";

export type Colours = ReturnType<typeof colours.createColors>;
export type Tint = (text: string) => string;

export const coloursFor = (wanted: boolean): Colours => colours.createColors(wanted);

export function tintOf(severity: Severity, colours: Colours): Tint {
  const tint = { error: colours.red, warning: colours.yellow, information: colours.blue }[severity];
  return (text) => colours.bold(tint(text));
}
