import { rcdsOfBoard } from "../../circuit/rcds.ts";
import type { Board } from "../../model/file.ts";
import type { Fact } from "../../model/values.ts";

/** The latest press of the button of a shared RCD; where only one is written, without its name too. */
export function buttonFact(name: string | undefined, { head }: Pick<Board, "head">): Fact | undefined {
  const pressed = head.facts
    .all("live")
    .flatMap(({ inner }) => (inner?.list ?? []).filter(({ word }) => word === "test-button"));
  const nameOf = ({ args }: Fact): string | undefined => (args.name as { value?: string } | undefined)?.value;
  const alone = rcdsOfBoard(head).length === 1;
  return pressed.findLast((fact) => nameOf(fact) === name || (alone && nameOf(fact) === undefined));
}
