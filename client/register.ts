/** The installations of the open folders as a list, the most urgent first: it filters as one types, and each opens. */
import { CancellationTokenSource, l10n, type QuickPick, type QuickPickItem, ThemeIcon, Uri, window } from "vscode";
import { type RegisterAnswer, type RegisteredInstallation, registerRequest } from "../server/lsp/protocol.ts";
import type { Server } from "./server.ts";

interface Item extends QuickPickItem {
  readonly uri: string;
}

export async function showRegister(server: Server): Promise<void> {
  const list = window.createQuickPick<Item>();
  const calledOff = new CancellationTokenSource();
  list.title = l10n.t("Register of installations");
  // A first look at hundreds of schedules takes a while: the list is there, and closing it calls that off.
  list.placeholder = l10n.t("Reading the schedules for the register");
  list.busy = true;
  list.matchOnDescription = true;
  list.matchOnDetail = true;
  const chosen = new Promise<Item | undefined>((resolve) => {
    list.onDidAccept(() => {
      if (list.busy) return;
      resolve(list.selectedItems[0]);
      list.hide();
    });
    list.onDidHide(() => {
      resolve(undefined);
      calledOff.cancel();
    });
  });
  list.show();
  try {
    fill(list, await server.request<RegisterAnswer>(registerRequest, {}, calledOff.token));
    const item = await chosen;
    if (item) await window.showTextDocument(Uri.parse(item.uri, true));
  } catch (error) {
    if (calledOff.token.isCancellationRequested) return;
    await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
  } finally {
    list.dispose();
    calledOff.dispose();
  }
}

function fill(list: QuickPick<Item>, { day, installations, left }: RegisterAnswer): void {
  const beyond = left === 0 ? "" : l10n.t(", and {0} more files, which `wayfile register` lists", left);
  list.busy = false;
  list.items = installations.map(itemOf);
  list.title = l10n.t("Register of installations on {0}, the most urgent first{1}", day, beyond);
  list.placeholder =
    installations.length === 0
      ? l10n.t("Wayfile: there is no installation in these folders.")
      : l10n.t("Type to filter, Enter opens the schedule");
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
