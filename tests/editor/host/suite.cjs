// What the extension must do in the real editor. Few tests and broad ones: each
// feature's details are tested beneath, without an editor. These prove that the
// feature arrives: that it is registered, converted and shown.
const assert = require("node:assert/strict");
const { readdirSync, readFileSync } = require("node:fs");
const vscode = require("vscode");

// ---- What is expected, in one place ----

const extensionId = "wayfile.wayfile";
const source = "wayfile";

/** Rule names: a family, then what is wrong. */
const ruleName = /^[a-z][a-z-]*\/[a-z0-9][a-z0-9-]*$/;

/** The example whose every fault some check finds; all other examples are without errors. */
const isFaulty = (uri) => /faulty/.test(uri.path);

/** A way that nobody has finished writing, and what the trade would write next in it. */
const unfinished = ['  way 99 radial "Unfinished" {', "", "  }"];
const offered = ["device", "cable"];

/** A line that no schedule may have. Its error tells that the check of a text is over. */
const nonsense = "this is no word of the language";

/** A reading that is judged. A hover on the word names its meaning; one on its value, what it is compared with. */
const judged = /^\s*Zs\s+(\d[\d.]*\s*Ω)/;
const saysLimit = /limit|maximum|at most|≤/i;

/** A way that names its RCD, which is defined elsewhere. */
const behind = /^(\s*behind\s+)(\S+)/m;

/** A reading whose unit was forgotten, and the fix for it. */
const withUnit = /^(\s*(?:Ze|Zs)\s+\d[\d.]*)\s*Ω/m;

/** Points, a place, a conduit and tests at the origin: what the largest examples need not have. */
const mill = `wayfile 1

installation "Mill" {
  standard     BS 7671:2018+A2:2022
  stage        installed

  supply {
    earthing     TN-S
    cutout       BS 88-3 100 A
    tails        25 mm²
    earthing-conductor 16 mm²
    live 2026-03-05 {
      Ze           0.18 Ω
      PSCC         1.38 kA
    }
  }

  board A "Mill board" {
    fed-from     supply
    Zdb          0.19 Ω
    containment C1 conduit 25 mm length 8 m bends 2 "To the loft"

    way 1 ring "Bench sockets" {
      device       BS EN 61009 B32 6 kA 30 mA type A
      cable        singles 70 °C  line 2.5 mm²  cpc 2.5 mm²
      route        conduit 25 mm  method B  in C1
      run          A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
      serves       sockets
      place        bathroom  zone outside
      Ib           21 A
      dead 2026-03-04 {
        ends         r1 0.31 Ω  rn 0.31 Ω  r2 0.31 Ω
        at S1        L-N 0.16 Ω  L-E 0.16 Ω
      }
    }
  }
}
`;

// ---- Waiting: for an event, never for a length of time ----

/** The value of `probe` as soon as it is truthy; it is asked now and at each event. */
function until(event, what, probe, limit = 45_000) {
  return new Promise((resolve, reject) => {
    const attempt = () => {
      const value = probe();
      if (!value) return;
      finish();
      resolve(value);
    };
    const subscription = event(attempt);
    const timer = setTimeout(() => {
      finish();
      reject(new Error(`waited ${limit / 1000} s for ${what}`));
    }, limit);
    const finish = () => {
      subscription.dispose();
      clearTimeout(timer);
    };
    attempt();
  });
}

const diagnosticsOf = (document) => vscode.languages.getDiagnostics(document.uri);
const errorsOf = (document) =>
  diagnosticsOf(document).filter(({ severity }) => severity === vscode.DiagnosticSeverity.Error);
const ruleOf = ({ code }) => (typeof code === "object" ? code.value : code);

const diagnosed = (document, what, probe) =>
  until(vscode.languages.onDidChangeDiagnostics, `${what} in ${document.uri.path}`, () =>
    probe(diagnosticsOf(document)),
  );

const onLine = (line) => (diagnostic) => diagnostic.range.start.line <= line && line <= diagnostic.range.end.line;

/**
 * Waits until the check of a document as it now stands is over. A clean text
 * sends no event to wait for, so an error is put at its end and taken away again.
 */
async function checked(document) {
  const line = document.lineCount;
  await edit((change) => change.insert(document.uri, endOf(document), `\n${nonsense}`));
  await diagnosed(document, "the added error", (found) => found.some(onLine(line)));
  await edit((change) =>
    change.delete(document.uri, new vscode.Range(document.lineAt(line - 1).range.end, endOf(document))),
  );
  await diagnosed(document, "no added error", (found) => !found.some(onLine(line)));
}

// ---- Documents ----

const endOf = (document) => document.lineAt(document.lineCount - 1).range.end;

async function edit(prepare) {
  const change = new vscode.WorkspaceEdit();
  prepare(change);
  assert.ok(await vscode.workspace.applyEdit(change), "the edit was applied");
}

async function replaceAll(document, text) {
  const whole = new vscode.Range(new vscode.Position(0, 0), endOf(document));
  await edit((change) => change.replace(document.uri, whole, text));
}

async function openText(content) {
  const document = await vscode.workspace.openTextDocument({ language: "wayfile", content });
  await vscode.window.showTextDocument(document);
  return document;
}

/** The first line that matches, with the match. */
function findLine(document, pattern) {
  for (let line = 0; line < document.lineCount; line++) {
    const match = pattern.exec(document.lineAt(line).text);
    if (match) return { line, match };
  }
  throw new assert.AssertionError({ message: `${document.uri.path} has no line like ${pattern}` });
}

const run = (command, ...args) => vscode.commands.executeCommand(command, ...args);

async function hoverText(document, line, character) {
  const hovers = await run("vscode.executeHoverProvider", document.uri, new vscode.Position(line, character));
  return hovers.flatMap(({ contents }) => contents.map((part) => part.value ?? part)).join("\n");
}

/** Process ids of the language servers that this extension host runs; empty where there is no /proc. */
function serverProcesses() {
  try {
    return readdirSync("/proc").filter((pid) => {
      if (!/^\d+$/.test(pid)) return false;
      try {
        const parent = Number(readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").at(-1).split(" ")[1]);
        return parent === process.pid && readFileSync(`/proc/${pid}/cmdline`, "utf8").includes("server.cjs");
      } catch {
        return false; // it ended meanwhile
      }
    });
  } catch {
    return [];
  }
}

suite("In the editor", () => {
  /** The largest faulty example, and the largest other one with a way behind an RCD. */
  let faulty;
  let clean;
  let cleanText;
  let examples;

  suiteSetup(async () => {
    const found = await vscode.workspace.findFiles("**/*.ways");
    const documents = await Promise.all(found.map((uri) => vscode.workspace.openTextDocument(uri)));
    const largest = (some) => some.sort((a, b) => b.getText().length - a.getText().length)[0];
    faulty = largest(documents.filter(({ uri }) => isFaulty(uri)));
    examples = documents.filter(({ uri }) => !isFaulty(uri));
    clean = largest(examples.filter((document) => behind.test(document.getText())));
    assert.ok(faulty && clean, `a faulty and a clean example among ${found.map(({ path }) => path).join(" ")}`);
    cleanText = clean.getText();
  });

  /** Findings are there for documents that are shown, and gone when they are closed. */
  const showFaulty = async () => {
    await vscode.window.showTextDocument(faulty);
    return await diagnosed(faulty, "any finding", (found) => found.length > 0 && found);
  };

  teardown(async () => {
    // Files first go back to what is on the disk, so that nothing asks whether to save.
    while (vscode.window.activeTextEditor) await run("workbench.action.revertAndCloseActiveEditor");
  });

  suite("what is wrong", () => {
    test("every fault bears our name and its rule's", async () => {
      for (const diagnostic of await showFaulty()) {
        assert.equal(diagnostic.source, source, diagnostic.message);
        assert.match(String(ruleOf(diagnostic)), ruleName, diagnostic.message);
        assert.ok(diagnostic.message.length > 10, `a message that says something: ${diagnostic.message}`);
      }
    });

    test("some fault points to the lines it was worked out from", async () => {
      const related = (await showFaulty()).flatMap(({ relatedInformation }) => relatedInformation ?? []);
      assert.ok(related.length > 0);
      for (const { location, message } of related) assert.ok(location.uri && message);
    });

    test("examples without faults have no errors", async () => {
      for (const document of examples) {
        await vscode.window.showTextDocument(document);
        await checked(document);
        const errors = errorsOf(document).map(({ message, range }) => `${range.start.line + 1}: ${message}`);
        assert.deepEqual(errors, [], document.uri.path);
      }
    });

    test("a fix removes what it is offered for", async () => {
      assert.match(cleanText, withUnit);
      const document = await openText(cleanText.replace(withUnit, "$1"));
      const { line } = findLine(document, /^\s*(?:Ze|Zs)\s+\d[\d.]*\s*$/);
      const found = await diagnosed(document, "the missing unit", (all) => all.find(onLine(line)));
      const actions = await run(
        "vscode.executeCodeActionProvider",
        document.uri,
        found.range,
        vscode.CodeActionKind.QuickFix.value,
        5, // so many are resolved, that is, have their edit
      );
      const fix = actions.find((action) => action.edit);
      assert.ok(fix, `a fix for: ${found.message}`);
      assert.ok(await vscode.workspace.applyEdit(fix.edit));
      await diagnosed(document, "the fix to help", (all) => !all.some((other) => ruleOf(other) === ruleOf(found)));
      assert.match(document.lineAt(line).text, /Ω/);
    });

    test("with checking as one types off, a fault shows on saving", async () => {
      const settings = vscode.workspace.getConfiguration("wayfile");
      const original = clean.getText();
      await vscode.window.showTextDocument(clean);
      await settings.update("check.onType", false, vscode.ConfigurationTarget.Global);
      try {
        await edit((change) => change.insert(clean.uri, endOf(clean), `\n${nonsense}`));
        const line = clean.lineCount - 1;
        await run("vscode.executeDocumentSymbolProvider", clean.uri); // an answer for the text as it stands
        assert.deepEqual(diagnosticsOf(clean).filter(onLine(line)), []);
        await clean.save();
        await diagnosed(clean, "the error after saving", (found) => found.some(onLine(line)));
      } finally {
        await settings.update("check.onType", undefined, vscode.ConfigurationTarget.Global);
        await replaceAll(clean, original);
        await clean.save();
      }
    });
  });

  suite("what a text means", () => {
    test("a word tells its meaning, a value what it is compared with", async () => {
      const { line, match } = findLine(faulty, judged);
      const start = faulty.lineAt(line).firstNonWhitespaceCharacterIndex;
      assert.ok((await hoverText(faulty, line, start)).length > 20, "a hover on the word");
      const onValue = await hoverText(faulty, line, match[0].length - match[1].length);
      assert.match(onValue, saysLimit);
      assert.match(onValue, /\d/);
    });

    test("a point tells what it should read, a place what it asks, an origin's test what it may be", async () => {
      const document = await openText(mill);
      const on = async (pattern, word) => {
        const { line } = findLine(document, pattern);
        return await hoverText(document, line, document.lineAt(line).text.indexOf(word) + 1);
      };
      assert.match(await on(/^ +run /, "S3"), /cross-connected: L-N 0\.\d+ Ω, L-E 0\.\d+ Ω/);
      assert.match(await on(/^ +at S1/, "S1"), /L-E expected.*: 0\.\d+ Ω/);
      assert.match(await on(/^ +place /, "bathroom"), /RCD: 30 mA or less/);
      assert.match(await on(/^ +Ze /, "0.18"), /declared at most: 0\.80 Ω/);
      assert.match(await on(/^ +earthing-conductor /, "16"), /at least: [\d.]+ mm²/);
    });

    test("a conduit shows what is in it, cut across, and its own line alone", async () => {
      const document = await openText(mill);
      const { line } = findLine(document, /containment C1/);
      const text = await hoverText(document, line, document.lineAt(line).text.indexOf("C1") + 1);
      assert.match(text, /way 1 Bench sockets: 6 × 2\.5 mm²/);
      const [, data] = /!\[C1[^\]]*\]\(data:image\/svg\+xml,([^)]+)\)/.exec(text) ?? [];
      assert.match(decodeURIComponent(data ?? ""), /^<svg[\s\S]*A\/1 Bench sockets, 6 cables[\s\S]*<\/svg>$/);
      assert.doesNotMatch(text.replace(data, ""), /way 1 ring/);
    });

    test("the outline has the boards and their ways", async () => {
      const symbols = await run("vscode.executeDocumentSymbolProvider", faulty.uri);
      const names = [];
      const collect = (some) => {
        for (const { name, detail, children } of some) {
          names.push(`${name} ${detail}`);
          collect(children);
        }
      };
      collect(symbols);
      for (const [, kind, id, title] of faulty.getText().matchAll(/^\s*(board|way) (\S+)[^\n"]*(?:"([^"\n]+)")?/gm)) {
        const wanted = title ?? id;
        assert.ok(
          names.some((name) => name.includes(wanted)),
          `${kind} ${wanted} among: ${names.join(", ")}`,
        );
      }
    });

    test("colours follow the meaning", async () => {
      const tokens = await run("vscode.provideDocumentSemanticTokens", faulty.uri);
      assert.ok(tokens.data.length > 100, `${tokens.data.length / 5} tokens`);
    });

    test("every block folds", async () => {
      const ranges = await run("vscode.executeFoldingRangeProvider", clean.uri);
      const starts = new Set(ranges.map(({ start }) => start));
      for (let line = 0; line < clean.lineCount; line++) {
        if (/\{\s*(?:#.*)?$/.test(clean.lineAt(line).text)) assert.ok(starts.has(line), `line ${line + 1} folds`);
      }
    });

    test("a name leads to its definition, and that back to its uses", async () => {
      const { line, match } = findLine(clean, behind);
      const at = new vscode.Position(line, match[1].length + 1);
      const [target] = await run("vscode.executeDefinitionProvider", clean.uri, at);
      const range = target.targetSelectionRange ?? target.targetRange ?? target.range;
      assert.match(clean.lineAt(range.start.line).text, new RegExp(`^\\s*rcd ${match[2]}\\b`));
      const uses = await run("vscode.executeReferenceProvider", clean.uri, range.start);
      assert.ok(
        uses.some((use) => use.range.start.line === line),
        "the line that began it is among the uses",
      );
    });
  });

  suite("writing", () => {
    test("in a way, what a way has is offered", async () => {
      const lines = cleanText.split(/\r?\n/);
      const first = lines.findIndex((line) => /^\s*way /.test(line));
      lines.splice(first, 0, ...unfinished);
      const document = await openText(lines.join("\n"));
      const at = new vscode.Position(first + 1, 0);
      const { items } = await run("vscode.executeCompletionItemProvider", document.uri, at);
      const labels = items.map(({ label }) => label.label ?? label);
      for (const word of offered) assert.ok(labels.includes(word), `${word} among ${labels.join(", ")}`);
    });

    test("a device is found by its name on site, and its standard says what it is", async () => {
      const document = await openText(mill.replace(/^ +device .*$/m, "      device mcb"));
      const { line } = findLine(document, /device mcb/);
      const at = document.lineAt(line).range.end;
      const { items } = await run("vscode.executeCompletionItemProvider", document.uri, at);
      const breaker = items.find(({ label }) => (label.label ?? label) === "BS EN 60898");
      assert.match(breaker?.filterText ?? "", /mcb/);
      assert.match(breaker?.detail ?? "", /circuit-breaker/);
    });

    test("the tests at the origin are laid out below what the supply is", async () => {
      const document = await openText(mill);
      const edits = await run("vscode.executeFormatDocumentProvider", document.uri, {
        tabSize: 2,
        insertSpaces: true,
      });
      assert.deepEqual(edits ?? [], []);
    });

    test("formatting tidies, keeps every comment, and has then nothing left to do", async () => {
      const untidy = cleanText.replace(/^ +/gm, "").replace(/^(way .*)$/gm, "# a remark\n\t$1");
      const document = await openText(untidy);
      const format = () =>
        run("vscode.executeFormatDocumentProvider", document.uri, { tabSize: 2, insertSpaces: true });
      const edits = await format();
      assert.ok(edits?.length > 0, "an untidy text is changed");
      await edit((change) => change.set(document.uri, edits));
      assert.deepEqual((await format()) ?? [], []);
      assert.equal(document.getText().replace(/^ *# a remark\n/gm, ""), cleanText);
      assert.equal(document.getText().match(/# a remark/g).length, untidy.match(/# a remark/g).length);
    });

    test("a new schedule begins without errors", async () => {
      const before = vscode.window.activeTextEditor?.document;
      let done = false;
      const asked = run("wayfile.newSchedule", { name: "Heron Wharf" }).then(() => {
        done = true;
      });
      // The first choice of each list. There is no event for a list being shown.
      while (!done) await Promise.race([asked, run("workbench.action.acceptSelectedQuickOpenItem")]);
      // What the window calls active follows what it shows with a delay.
      const document = await until(vscode.window.onDidChangeActiveTextEditor, "the new schedule to be shown", () => {
        const shown = vscode.window.activeTextEditor?.document;
        return shown !== before && /installation "Heron Wharf"/.test(shown?.getText()) && shown;
      });
      assert.equal(document.languageId, "wayfile");
      assert.ok(document.isUntitled);
      await checked(document);
      assert.deepEqual(
        errorsOf(document).map(({ message }) => message),
        [],
      );
    });
  });

  suite("on paper", () => {
    /** Puts the cursor of the faulty example on its judged reading. */
    const stand = async () => {
      await showFaulty();
      const { line } = findLine(faulty, judged);
      const here = new vscode.Position(line, 0);
      vscode.window.activeTextEditor.selection = new vscode.Selection(here, here);
      return line;
    };
    const tabOf = (label) =>
      until(vscode.window.tabGroups.onDidChangeTabs, `a tab with ${label}`, () =>
        vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).find((tab) => label.test(tab.label)),
      );

    test("the working of the way at the cursor opens beside the schedule", async () => {
      await stand();
      await run("wayfile.showWorking");
      await vscode.window.tabGroups.close(await tabOf(/Working/));
    });

    test("so does its worksheet", async () => {
      await stand();
      await run("wayfile.worksheet");
      await vscode.window.tabGroups.close(await tabOf(/worksheet/i));
    });

    test("a schedule leaves the house as each kind of file, and so does the sheet to fill in", async () => {
      await showFaulty();
      const folder = vscode.Uri.joinPath(faulty.uri, "..");
      const begins = { pdf: "%PDF-", xlsx: "PK", csv: "\ufeffboard,", html: "<!DOCTYPE html>", markdown: "# " };
      for (const [format, first] of Object.entries(begins)) {
        const file = vscode.Uri.joinPath(folder, `paper-${format}`).fsPath;
        for (const fill of ["filled", "blank", "last"]) {
          await run("wayfile.schedulePaper", { format, fill, file });
          assert.ok(readFileSync(file, "utf8").startsWith(first), `${format}, ${fill}`);
        }
      }
      const sheet = vscode.Uri.joinPath(folder, "sheet").fsPath;
      await run("wayfile.fillSheet", { file: sheet });
      assert.match(readFileSync(sheet, "utf8"), /<!DOCTYPE html>[\s\S]*<script>/);
    });

    test("readings come back from a file as an edit, with a list of what did not fit", async () => {
      await showFaulty();
      const before = faulty.getText();
      const file = vscode.Uri.joinPath(faulty.uri, "..", "meter.csv");
      const board = /^\s*board\s+(\S+)/m.exec(before)[1];
      const way = /^\s*way\s+(\d+)\s+radial/m.exec(before)[1];
      const rows = ["board,way,live-on,Zs", `${board},${way},2027-03-05,0.71`, `${board},99,2027-03-05,0.4`];
      await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(rows.join("\n")));
      await run("wayfile.enterReadings", { file: file.fsPath });
      assert.match(faulty.getText(), /live 2027-03-05 \{\s+Zs\s+0\.71 Ω/);
      const list = vscode.workspace.textDocuments.find(
        ({ isUntitled, languageId }) => isUntitled && languageId === "plaintext",
      );
      assert.match(list.getText(), /1 reading in 1 new block[\s\S]*Not entered \(1\):[\s\S]*no way .*99/);
      await showFaulty();
      await run("undo");
      assert.equal(faulty.getText(), before);
    });

    test("a table with foreign headings comes in by what was said of them, and that is kept in the settings", async () => {
      await showFaulty();
      const before = faulty.getText();
      const folder = vscode.workspace.getWorkspaceFolder(faulty.uri)?.uri ?? vscode.Uri.joinPath(faulty.uri, "..");
      const settings = vscode.Uri.joinPath(folder, ".wayfile.json");
      const file = vscode.Uri.joinPath(faulty.uri, "..", "meter.csv");
      const board = /^\s*board\s+(\S+)/m.exec(before)[1];
      const way = /^\s*way\s+(\d+)\s+radial/m.exec(before)[1];
      const rows = ["DB,Circuit no,Loop L-E", `${board},${way},0.71`];
      await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(rows.join("\n")));
      const columns = ["DB=board", "Circuit no=way", "Loop L-E=Zs"];
      await run("wayfile.enterReadings", { file: file.fsPath, columns, on: "2027-03-06" });
      assert.match(faulty.getText(), /live 2027-03-06 \{\s+Zs\s+0\.71 Ω/);
      assert.deepEqual(JSON.parse(readFileSync(settings.fsPath, "utf8")).columns, columns);
      await vscode.workspace.fs.delete(settings);
      await showFaulty();
      await run("undo");
      assert.equal(faulty.getText(), before);
    });

    test("the working is shown as a preview, not as its Markdown", async () => {
      await stand();
      await run("wayfile.showWorking");
      const tab = await tabOf(/Working/);
      assert.ok(tab.input instanceof vscode.TabInputWebview, "a preview");
      await vscode.window.tabGroups.close(tab);
    });

    test("what is still to be read is said for the points, and the tests that are added have them", async () => {
      const document = await openText(mill);
      await checked(document);
      const { line } = findLine(document, /dead 2026/);
      const hints = await run("vscode.executeInlayHintProvider", document.uri, new vscode.Range(line, 0, line + 1, 0));
      const said = hints.map(({ label }) => (typeof label === "string" ? label : label[0].value)).join();
      assert.match(said, /to be read: L-N at S2 0\.\d+ Ω/);
      const here = new vscode.Position(findLine(document, /way 1 ring/).line, 4);
      vscode.window.activeTextEditor.selection = new vscode.Selection(here, here);
      await run("wayfile.addTests");
      await until(vscode.workspace.onDidChangeTextDocument, "the points", () => /^ *at S3/m.test(document.getText()));
      assert.doesNotMatch(document.getText(), /# *at S1 +L-N/);
    });

    test("hints beside the readings give limit and margin", async () => {
      await stand();
      // What is over a limit is set as a decoration in the colour of errors: the list has what is within.
      const range = new vscode.Range(0, 0, faulty.lineCount, 0);
      const hints = await run("vscode.executeInlayHintProvider", faulty.uri, range);
      assert.match(hints.map(({ label }) => (typeof label === "string" ? label : label[0].value)).join(), / left of /);
    });

    test("tests still to be made are written with stops: the day once for all of them, no reading", async () => {
      const text = faulty.getText().replace(/^( +)(?:dead|live) .*?^\1\}\n/gms, "");
      const document = await openText(text);
      await checked(document);
      const line = text.split("\n").findIndex((one) => /^\s*way /.test(one));
      const here = new vscode.Position(line, 4);
      vscode.window.activeTextEditor.selection = new vscode.Selection(here, here);
      await run("wayfile.addTests");
      const written = () => /^ +dead \d{4}-\d\d-\d\d/m.test(document.getText());
      await until(vscode.workspace.onDidChangeTextDocument, "the tests to be written", written);
      await vscode.window.showTextDocument(document);
      await run("type", { text: "2026-02-03" });
      const days = document.getText().match(/^ +(?:dead|live) 2026-02-03/gm);
      assert.equal(days?.length, 2, "the day of the dead tests is that of the live ones");
      assert.doesNotMatch(document.getText(), /…|R1\+R2 +\d/);
    });
  });

  suite("staying up", () => {
    test("half a text, a large one and rubbish are all survived", async function () {
      this.timeout(60_000);
      const servers = serverProcesses();
      if (process.platform === "linux") assert.equal(servers.length, 1);
      const document = await openText("");
      const half = cleanText.slice(0, cleanText.length / 2);
      const body = cleanText.slice(cleanText.indexOf("installation"));
      for (const text of [
        half,
        `${half}"`,
        half.replaceAll("}", ""),
        `${cleanText}${body.repeat(Math.ceil(500_000 / body.length))}`,
        "{".repeat(20_000),
        '"\u0000\ud800 ½ MΩ \u{1f50c} <<<<<<< ours\n=======\n>>>>>>> theirs\n'.repeat(200),
        cleanText.replaceAll("\n", "\r\n"),
      ]) {
        await replaceAll(document, text);
      }
      // Typed as fast as the editor takes it.
      const typed = body.slice(0, 300);
      await replaceAll(document, "");
      for (const character of typed) {
        await edit((change) => change.insert(document.uri, endOf(document), character));
      }
      await replaceAll(document, cleanText);
      // The line with the cursor is calm while it is written: what is added at the end is to be seen.
      vscode.window.activeTextEditor.selection = new vscode.Selection(0, 0, 0, 0);
      await checked(document);
      assert.deepEqual(serverProcesses(), servers, "the same server as before");
    });

    test("the server can be restarted", async () => {
      const before = serverProcesses();
      await showFaulty();
      await run("wayfile.restartServer");
      await showFaulty();
      const { line, match } = findLine(faulty, judged);
      assert.match(await hoverText(faulty, line, match[0].length - match[1].length), saysLimit);
      if (process.platform === "linux") assert.notDeepEqual(serverProcesses(), before);
    });

    test("a server that is killed is started again by itself, and answers", async function () {
      const [before] = serverProcesses();
      if (before === undefined) return this.skip();
      await showFaulty();
      process.kill(Number(before), "SIGKILL");
      const { line, match } = findLine(faulty, judged);
      const answers = async () => {
        const [now] = serverProcesses();
        if (now === undefined || now === before) return false;
        return saysLimit.test(await hoverText(faulty, line, match[0].length - match[1].length));
      };
      for (let round = 0; round < 100 && !(await answers()); round++)
        await new Promise((resolve) => setTimeout(resolve, 200));
      assert.ok(await answers(), "another server answers");
    });

    test("the output can be shown, and ours are all commands that exist", async () => {
      await run("wayfile.showOutput");
      const known = new Set(await vscode.commands.getCommands(true));
      const { contributes } = vscode.extensions.getExtension(extensionId).packageJSON;
      for (const { command } of contributes.commands) assert.ok(known.has(command), command);
    });
  });
});
