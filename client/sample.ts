import { Uri, window, workspace } from "vscode";

/** Opens the sample as a text of its own: whatever is tried on it, the next time it is as it was. */
export async function openSample(extension: Uri): Promise<void> {
  const bytes = await workspace.fs.readFile(Uri.joinPath(extension, "client/media/sample.ways"));
  const content = new TextDecoder().decode(bytes);
  await window.showTextDocument(await workspace.openTextDocument({ language: "wayfile", content }));
}
