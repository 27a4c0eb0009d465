// What the extension must do in a browser: the main part of suite.cjs, without Node. One file, since a worker of the
// browser loads one.
const vscode = require("vscode");

function assert(value, what) {
  if (!value) throw new Error(what);
}

/** The value of a probe as soon as it is truthy. */
function until(event, what, probe, limit = 60_000) {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => finish(() => reject(new Error(`waited ${limit / 1000} s for ${what}`))), limit);
    const attempt = () => {
      const value = probe();
      if (value) finish(() => resolve(value));
    };
    const subscription = event(attempt);
    function finish(then) {
      subscription.dispose();
      clearTimeout(timer);
      then();
    }
    attempt();
  });
}

const found = (document, probe, what) =>
  until(vscode.languages.onDidChangeDiagnostics, what, () => {
    const all = vscode.languages.getDiagnostics(document.uri);
    return probe(all) && all;
  });
const codeOf = ({ code }) => (typeof code === "object" ? code.value : code);
const open = async (name) => {
  const [uri] = await vscode.workspace.findFiles(`**/${name}`);
  const document = await vscode.workspace.openTextDocument(uri);
  // An editor asks for the findings of what it shows.
  await vscode.window.showTextDocument(document);
  return document;
};
const placeOf = (document, text) => document.positionAt(document.getText().indexOf(text));

const tests = {
  "there is no Node here": async () => {
    assert(typeof process === "undefined" || process.versions?.node === undefined, "this is Node");
  },
  "a faulty schedule is faulted, by what it uses in another file too": async () => {
    const document = await open("hall-faulty.ways");
    const all = await found(document, (one) => one.length > 20, "the findings of the faulty example");
    assert(
      all.some((one) => codeOf(one) === "loop/zs-over-limit"),
      "the loop is not faulted",
    );
    assert(!all.some((one) => codeOf(one) === "language/use-missing"), "the used file was not read");
    assert(!all.some((one) => codeOf(one) === "language/unknown-name" && /M1/.test(one.message)), "M1 is not known");
  },
  "a sound schedule has no errors": async () => {
    const document = await open("cottage.ways");
    const last = document.lineCount;
    const change = new vscode.WorkspaceEdit();
    // A fault at its end tells when all of it is checked.
    change.insert(document.uri, new vscode.Position(last, 0), "\nthis is no word of the language\n");
    await vscode.workspace.applyEdit(change);
    const all = await found(
      document,
      (one) => one.some(({ range }) => range.start.line >= last - 1),
      "the added fault",
    );
    const errors = all.filter(({ severity, range }) => severity === 0 && range.start.line < last - 1);
    assert(errors.length === 0, `errors: ${errors.map(codeOf)}`);
    await vscode.commands.executeCommand("undo");
  },
  "a hover shows the limit": async () => {
    const document = await open("hall-faulty.ways");
    const at = placeOf(document, "0.89 Ω").translate(0, 1);
    const hovers = await vscode.commands.executeCommand("vscode.executeHoverProvider", document.uri, at);
    const text = hovers.flatMap(({ contents }) => contents.map((one) => one.value ?? one)).join("\n");
    assert(/limit/i.test(text), `the hover says: ${text}`);
  },
  "completion, outline, colours and hints are there": async () => {
    const document = await open("hall-faulty.ways");
    const { uri } = document;
    const end = document.lineAt(placeOf(document, "way 1 radial").line + 1).range.end;
    const list = await vscode.commands.executeCommand("vscode.executeCompletionItemProvider", uri, end);
    assert(list.items.length > 0, "nothing is offered");
    const symbols = await vscode.commands.executeCommand("vscode.executeDocumentSymbolProvider", uri);
    assert(symbols.length > 0, "no outline");
    const tokens = await vscode.commands.executeCommand("vscode.provideDocumentSemanticTokens", uri);
    assert(tokens.data.length > 100, "no colours");
    const all = new vscode.Range(0, 0, document.lineCount, 0);
    const hints = await vscode.commands.executeCommand("vscode.executeInlayHintProvider", uri, all);
    assert(hints.length > 5, "no hints");
  },
  "an edit is checked at once, in an untitled schedule too": async () => {
    const document = await vscode.workspace.openTextDocument({ language: "wayfile", content: "wayfile 1\n" });
    const change = new vscode.WorkspaceEdit();
    change.insert(document.uri, new vscode.Position(1, 0), "this is no word of the language\n");
    await vscode.workspace.applyEdit(change);
    await found(document, (all) => all.some(({ range }) => range.start.line === 1), "the fault of the added line");
  },
  "formatting keeps a schedule that is formatted": async () => {
    const document = await open("cottage.ways");
    const edits = await vscode.commands.executeCommand("vscode.executeFormatDocumentProvider", document.uri, {
      tabSize: 2,
      insertSpaces: true,
    });
    assert((edits ?? []).length === 0, "the example was changed");
  },
  "the live board opens beside the text": async () => {
    await open("hall-faulty.ways");
    await vscode.commands.executeCommand("wayfile.liveView");
    await until(vscode.window.tabGroups.onDidChangeTabs, "the tab of the live board", () =>
      vscode.window.tabGroups.all.some(({ tabs }) => tabs.some(({ label }) => label === "Live Board")),
    );
  },
  "the commands are there": async () => {
    const all = await vscode.commands.getCommands(true);
    for (const name of ["newSchedule", "showWorking", "worksheet", "addTests", "restartServer", "liveView"])
      assert(all.includes(`wayfile.${name}`), `wayfile.${name} is missing`);
  },
};

exports.run = async () => {
  let passed = 0;
  let failed = 0;
  for (const [name, test] of Object.entries(tests)) {
    try {
      await test();
      passed++;
      console.log(`  ✓ ${name}`);
    } catch (error) {
      failed++;
      console.log(`  ✗ ${name}: ${error?.stack ?? error}`);
    }
  }
  console.log(`${passed} passed${failed > 0 ? `, ${failed} failed` : ""}`);
  if (failed > 0) throw new Error(`${failed} tests in the browser failed.`);
};
