import { type BoardNode, networkOf } from "../../server/boards/network.ts";
import type { WayStudy } from "../../server/circuit/way.ts";
import { type Installation, installationsOf } from "../../server/model/installation.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

/** The one installation of a text. Throws where the text is not sound. */
export function installationOf(text: string): Installation {
  const file = fileOfText("sample.ways", text);
  const problems = [...file.model.problems.values()].flat();
  const [installation] = installationsOf([file]);
  if (problems.length > 0 || !installation) throw new Error(problems.map(({ message }) => message).join(" "));
  return installation;
}

/** A board of an installation by its name. */
export function nodeOf(installation: Installation, name: string): BoardNode {
  const node = networkOf(installation).nodes.find(({ board }) => board.head.name === name);
  if (!node) throw new Error(`no board ${name}`);
  return node;
}

/** A way of a board by its number. */
export function wayOf(node: BoardNode, id: string): WayStudy {
  const study = node.studies.find(({ way }) => way.id === id);
  if (!study) throw new Error(`no way ${id}`);
  return study;
}
