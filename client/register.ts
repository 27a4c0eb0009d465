/** The installations of the open folders as a list, the most urgent first: it filters as one types, and each opens. */
import { l10n, ProgressLocation, type QuickPickItem, ThemeIcon, Uri, window } from "vscode";
import { type RegisterAnswer, type RegisteredInstallation, registerRequest } from "../server/lsp/protocol.ts";
import type { Server } from "./server.ts";

interface Item extends QuickPickItem {
  readonly uri: string;
}

export async function showRegister(server: Server): Promise<void> {
  try {
    const answer = await answerOf(server);
    if (!answer) return;
    const { day, installations, left } = answer;
    if (installations.length === 0) {
      await window.showInformationMessage(l10n.t("Wayfile: there is no installation in these folders."));
      return;
    }
    const beyond = left === 0 ? "" : l10n.t(", and {0} more files, which `wayfile register` lists", left);
    const chosen = await window.showQuickPick(installations.map(itemOf), {
      title: l10n.t("Register of installations on {0}, the most urgent first{1}", day, beyond),
      placeHolder: l10n.t("Type to filter, Enter opens the schedule"),
      matchOnDescription: true,
      matchOnDetail: true,
    });
    if (chosen) await window.showTextDocument(Uri.parse(chosen.uri, true));
  } catch (error) {
    await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Nothing where it was called off: a first look at hundreds of schedules takes a while. */
async function answerOf(server: Server): Promise<RegisterAnswer | undefined> {
  const title = l10n.t("Reading the schedules for the register");
  const place = { location: ProgressLocation.Notification, title, cancellable: true };
  return await window.withProgress(place, async (_, token) => {
    try {
      return await server.request<RegisterAnswer>(registerRequest, {}, token);
    } catch (error) {
      if (token.isCancellationRequested) return undefined;
      throw error;
    }
  });
}

function itemOf({ uri, title, file, attention, particulars, isFaulty }: RegisteredInstallation): Item {
  const icon = isFaulty ? "error" : attention.length > 0 ? "warning" : "pass";
  return {
    uri,
    label: title === "" ? file : title,
    ...(title === "" ? {} : { description: file }),
    detail: [attention.join("; "), particulars.join(", ")].filter((part) => part !== "").join(" — "),
    iconPath: new ThemeIcon(icon),
  };
}
