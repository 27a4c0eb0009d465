/** All that the extension does, on Node and in a browser alike; each has an entry of its own. */
import { commands, type ExtensionContext, l10n, window } from "vscode";
import { addTests } from "./addTests.ts";
import { CheckPages } from "./checks.ts";
import { followCursor } from "./cursor.ts";
import { LiveView, liveViewCommands } from "./liveView.ts";
import { newSchedule } from "./newSchedule.ts";
import { paperCommands } from "./papers.ts";
import { Past } from "./past.ts";
import { showRegister } from "./register.ts";
import { Reports } from "./reports.ts";
import { showReview } from "./review.ts";
import { openSample } from "./sample.ts";
import { type Connect, Server } from "./server.ts";
import { showStatus } from "./status.ts";
import { showTree } from "./tree.ts";
import { showWorksheet } from "./worksheet.ts";

let server: Server | undefined;

export async function start(context: ExtensionContext, connect: Connect): Promise<void> {
  const output = window.createOutputChannel("Wayfile", { log: true });
  const started = new Server(connect, output);
  server = started;
  const reports = new Reports(started);
  const checks = new CheckPages(context.extensionUri);

  // Before the server is up: its failing to start is when these two are needed.
  context.subscriptions.push(
    output,
    followCursor(started),
    started.overLimits.register(),
    commands.registerCommand("wayfile.restartServer", () => restart(started)),
    commands.registerCommand("wayfile.showOutput", () => output.show()),
    ...reports.register(),
    checks.register(),
    commands.registerCommand("wayfile.showWorking", (about) => reports.show("working", about)),
    commands.registerCommand("wayfile.summary", (about) => reports.show("summary", about)),
    commands.registerCommand("wayfile.size", (about) => reports.show("size", about)),
    commands.registerCommand("wayfile.editions", (about) => reports.show("editions", about)),
    commands.registerCommand("wayfile.register", () => showRegister(started)),
    commands.registerCommand("wayfile.explain", (check) => checks.explain(check)),
    commands.registerCommand("wayfile.worksheet", () => showWorksheet(started)),
    commands.registerCommand("wayfile.addTests", () => addTests()),
    ...paperCommands(started),
    new Past(started).register(),
    ...showReview(started),
    ...showTree(started),
    ...showStatus(started),
    ...liveViewCommands(new LiveView(started, context.extensionUri)),
    commands.registerCommand("wayfile.openSample", () => openSample(context.extensionUri)),
    commands.registerCommand("wayfile.newSchedule", (given?: unknown) => newSchedule(started, given)),
  );
  await started.start();
}

/** Says so once it is up; a failure to start has its own message. */
async function restart(started: Server): Promise<void> {
  await started.restart();
  if (started.isUp) window.showInformationMessage(l10n.t("Wayfile: the language server was restarted."));
}

/** The editor waits for this promise before it ends the extension, so the server is not left behind. */
export async function stop(): Promise<void> {
  await server?.stop();
}
