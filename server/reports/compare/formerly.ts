/** What took another name between two versions, by what the later one says of it. */
import type { Board, BoardHead, Way } from "../../model/file.ts";

/** The way it was before: named by a `formerly` that the version before does not have yet. */
export function formerWay(way: Way, before: readonly Way[]): Way | undefined {
  const namesake = before.find(({ id }) => id === way.id);
  const known = new Set(namesake?.facts.all("formerly").map(({ args }) => args.number.value));
  const fresh = way.facts.all("formerly").filter(({ args }) => !known.has(args.number.value));
  for (const { args } of fresh) {
    const former = before.find(
      ({ id, title }) => id === args.number.value && (!args.title || args.title.value === title),
    );
    if (former) return former;
  }
  return undefined;
}

/** The same of a board; `before` are the boards by name. */
export function formerBoard(head: BoardHead, before: ReadonlyMap<string, Board>): Board | undefined {
  const namesake = before.get(head.name);
  const known = new Set(namesake?.head.facts.all("formerly").map(({ args }) => args.name.value));
  const former = head.facts.all("formerly").find(({ args }) => !known.has(args.name.value));
  return former && before.get(former.args.name.value);
}
