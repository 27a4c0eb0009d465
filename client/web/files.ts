/** The files of the editor's own file system, for a server that has none. */
import { FileType, Uri, workspace } from "vscode";
import type { FileAnswer } from "../../server/lsp/file-protocol.ts";
import { ceiling, decode } from "../../server/text/decode.ts";

/** A schedule can come from a stranger: what it uses is read only in folders that are open, or beside an open schedule. */
export async function readSchedule(address: unknown): Promise<FileAnswer> {
  if (typeof address !== "string") return { failure: "it has no address." };
  const uri = Uri.parse(address);
  if (!uri.path.endsWith(".ways")) return { failure: "only schedules, named .ways, are read." };
  if (!isAdmitted(uri)) return { failure: "it is outside the folders that are open." };
  try {
    const { type, size } = await workspace.fs.stat(uri);
    if ((type & FileType.Directory) !== 0) return { failure: "it is a folder." };
    if (size > ceiling) return { failure: "it is larger than 8 MB." };
    return decode(await workspace.fs.readFile(uri));
  } catch {
    return { failure: "it cannot be read." };
  }
}

function isAdmitted(uri: Uri): boolean {
  const folders = [
    ...(workspace.workspaceFolders ?? []).map((folder) => folder.uri),
    ...workspace.textDocuments
      .filter(({ languageId }) => languageId === "wayfile")
      .map((document) => Uri.joinPath(document.uri, "..")),
  ];
  return folders.some(
    ({ scheme, authority, path }) =>
      scheme === uri.scheme &&
      authority === uri.authority &&
      uri.path.startsWith(path.endsWith("/") ? path : `${path}/`),
  );
}

const mostListed = 5_000;

export async function listSchedules(): Promise<string[]> {
  const found = await workspace.findFiles("**/*.ways", "**/node_modules/**", mostListed);
  return found.map(String);
}
