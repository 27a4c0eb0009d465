import { join } from "node:path";
import { commands, type ExtensionContext, window } from "vscode";
import { addTests } from "./addTests.ts";
import { CheckPages } from "./checks.ts";
import { followCursor } from "./cursor.ts";
import { LiveView, liveViewCommands } from "./liveView.ts";
import { newSchedule } from "./newSchedule.ts";
import { Reports } from "./reports.ts";
import { openSample } from "./sample.ts";
import { Server } from "./server.ts";
import { showWorksheet } from "./worksheet.ts";

let server: Server | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const output = window.createOutputChannel("Wayfile", { log: true });
  const started = new Server(join(context.extensionPath, "dist/server.cjs"), output);
  server = started;
  const reports = new Reports(started);
  const checks = new CheckPages(context.extensionUri);

  // Before the server is up: its failing to start is when these two are needed.
  context.subscriptions.push(
    output,
    followCursor(started),
    started.overLimits.register(),
    commands.registerCommand("wayfile.restartServer", () => started.restart()),
    commands.registerCommand("wayfile.showOutput", () => output.show()),
    ...reports.register(),
    checks.register(),
    commands.registerCommand("wayfile.showWorking", (about) => reports.show("working", about)),
    commands.registerCommand("wayfile.summary", (about) => reports.show("summary", about)),
    commands.registerCommand("wayfile.size", (about) => reports.show("size", about)),
    commands.registerCommand("wayfile.editions", (about) => reports.show("editions", about)),
    commands.registerCommand("wayfile.explain", (check) => checks.explain(check)),
    commands.registerCommand("wayfile.worksheet", () => showWorksheet(started)),
    commands.registerCommand("wayfile.addTests", () => addTests()),
    ...liveViewCommands(new LiveView(started, context.extensionUri)),
    commands.registerCommand("wayfile.openSample", () => openSample(context.extensionUri)),
    commands.registerCommand("wayfile.newSchedule", (given?: unknown) => newSchedule(started, given)),
  );
  await started.start();
}

/** The editor waits for this promise before it ends the extension, so the server is not left behind. */
export async function deactivate(): Promise<void> {
  await server?.stop();
}
