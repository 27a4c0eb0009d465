import { join } from "node:path";
import { commands, type ExtensionContext, window, workspace } from "vscode";
import { addTests } from "./addTests.ts";
import { followCursor } from "./cursor.ts";
import { LiveView, liveViewCommands } from "./liveView.ts";
import { newSchedule } from "./newSchedule.ts";
import { Server } from "./server.ts";
import { showWorking, Workings, workingScheme } from "./showWorking.ts";
import { showWorksheet } from "./worksheet.ts";

let server: Server | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const output = window.createOutputChannel("Wayfile", { log: true });
  const started = new Server(join(context.extensionPath, "dist/server.cjs"), output);
  server = started;
  const workings = new Workings();

  // Before the server is up: its failing to start is when these two are needed.
  context.subscriptions.push(
    output,
    followCursor(started),
    commands.registerCommand("wayfile.restartServer", () => started.restart()),
    commands.registerCommand("wayfile.showOutput", () => output.show()),
    workspace.registerTextDocumentContentProvider(workingScheme, workings),
    commands.registerCommand("wayfile.showWorking", () => showWorking(started, workings)),
    commands.registerCommand("wayfile.worksheet", () => showWorksheet(started)),
    commands.registerCommand("wayfile.addTests", () => addTests()),
    ...liveViewCommands(new LiveView(started, context.extensionUri)),
    commands.registerCommand("wayfile.newSchedule", (given?: unknown) => newSchedule(started, given)),
  );
  await started.start();
}

/** The editor waits for this promise before it ends the extension, so the server is not left behind. */
export async function deactivate(): Promise<void> {
  await server?.stop();
}
