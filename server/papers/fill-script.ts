/**
 * What the sheet to fill in does, as a classic script: modules do not load from a file. It reads the sheet's data, keeps
 * what is typed on the device until it is taken out, and asks nobody else for anything.
 */
export const fillScript = String.raw`"use strict";
(() => {
  const sheet = JSON.parse(document.getElementById("sheet").textContent);
  const main = document.querySelector("main");
  const key = "wayfile " + sheet.file + " " + sheet.base;
  const make = (tag, props = {}, ...kids) => {
    const node = Object.assign(document.createElement(tag), props);
    node.append(...kids);
    return node;
  };

  // Kept on the device. Where a browser keeps nothing for a file, the sheet works all the same and says so.
  let keeps = true;
  const read = () => {
    try { return JSON.parse(localStorage.getItem(key)) || {}; } catch { keeps = false; return {}; }
  };
  const kept = read();
  const state = { values: kept.values || {}, by: kept.by || "", on: kept.on || today(), used: kept.used || first(), beyond: kept.beyond || {} };
  const keep = () => {
    taken = false;
    try { localStorage.setItem(key, JSON.stringify(state)); } catch { keeps = false; }
    status();
  };
  function today() {
    const now = new Date();
    return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
  }
  function first() { return sheet.instruments[0] ? sheet.instruments[0].name : ""; }
  let taken = true;

  // The highest the instrument shows: as the schedule states it, or as it was typed once on this sheet.
  const rangeOf = (field) => {
    if (state.beyond && state.beyond[field.unit]) return state.beyond[field.unit];
    const one = sheet.instruments.find(({ name }) => name === state.used);
    return field.unit === "MΩ" && one && one.range !== undefined ? ">" + one.range : ">";
  };
  const idOf = (field) => field.at + " " + field.test;
  const all = sheet.groups.flatMap((group) => group.fields);

  // What a reading is worth: nothing, a figure with a bound, or a way out.
  const parse = (text) => {
    const match = /^([<>]?)\s*(\d+(?:\.\d+)?)$/.exec(text.trim());
    return match && { bound: match[1], value: Number(match[2]) };
  };
  const isOut = (text) => /^(N\/A|LIM\b|later$)/.test(text);

  function judge(field, text) {
    if (text === "" || isOut(text) || field.words.length > 0)
      return { text: field.words.length > 1 && text === field.words[1] ? "This fails: find out why before going on." : "" };
    if (/^\d+,\d+$/.test(text)) return { text: "Write the decimal sign as a full stop." };
    const reading = parse(text);
    if (!reading) return { text: "This is no figure: a number, or > before one." };
    const value = reading.value * field.factor;
    const most = field.most, least = field.least;
    const limit = most !== undefined ? most : least;
    const share = limit === undefined || limit <= 0 ? undefined : value / limit;
    if (most !== undefined && (value > most || (reading.bound === ">" && value >= most)))
      return { share, over: true, text: "Above the limit, " + field.limit + ". Check the reading before going on." };
    if (least !== undefined && reading.bound !== ">" && value < least)
      return { share, over: true, text: "Below the limit, " + field.limit + ". Check the reading before going on." };
    return { share, text: reading.value === 0 ? "Zero: are the leads on the conductors?" : "" };
  }

  function fieldNode(field, group) {
    const id = idOf(field);
    const box = make("div", { className: "field" });
    const hints = [field.expected && "should read " + field.expected, field.limit, field.last && "last time " + field.last];
    const hint = make("div", { className: "hint", textContent: hints.filter(Boolean).join(" · ") });
    const bar = make("div", { className: "bar", hidden: true }, make("i"));
    const warn = make("p", { className: "warn", hidden: true });
    warn.setAttribute("role", "status");
    const name = make("label", { textContent: field.name });
    const row = make("div", { className: "row" });
    const show = () => {
      const text = state.values[id] || "";
      const { share, over, text: said } = judge(field, text);
      bar.hidden = share === undefined;
      bar.classList.toggle("over", over === true);
      bar.firstChild.style.width = Math.min((share || 0) * 100, 100) + "%";
      warn.hidden = !said;
      warn.textContent = said;
      if (field.words.length === 0) input.value = text;
      else for (const one of row.querySelectorAll("button[data-word]")) one.setAttribute("aria-pressed", String(one.dataset.word === text));
      for (const one of row.querySelectorAll("button[data-out]")) one.setAttribute("aria-pressed", String(text.startsWith(one.dataset.out)));
    };
    const set = (text) => {
      if (text === "") delete state.values[id]; else state.values[id] = text;
      show();
      keep();
      group.count();
    };
    let input;
    if (field.words.length > 0) {
      for (const word of field.words) {
        const button = make("button", { type: "button", textContent: word });
        button.dataset.word = word;
        button.onclick = () => { set(word); if (word === field.words[0]) next(button); };
        row.append(button);
      }
      input = row.firstChild;
    } else {
      input = make("input", { type: "text", inputMode: "decimal", autocomplete: "off", placeholder: field.expected.replace(/ .*/, ""), enterKeyHint: "next" });
      input.id = id;
      name.htmlFor = id;
      input.oninput = () => {
        const text = input.value;
        if (text === "") delete state.values[id]; else state.values[id] = text;
        const at = input.selectionStart;
        show();
        if (document.activeElement === input && at !== null) input.setSelectionRange(at, at);
        keep();
        group.count();
      };
      input.onkeydown = (event) => {
        if (event.key !== "Enter") return;
        event.preventDefault();
        if (input.value.trim() === ">") set(rangeOf(field));
        else if (/^>\s*\d/.test(input.value)) {
          state.beyond = { ...state.beyond, [field.unit]: input.value.trim() };
          keep();
        }
        next(input);
      };
      const beyond = make("button", { type: "button", className: "way-out", textContent: ">", title: "beyond the instrument's range" });
      beyond.onclick = () => { set(rangeOf(field)); input.focus(); };
      row.append(input, make("span", { className: "unit", textContent: field.unit }), beyond);
    }
    for (const out of ["LIM", "N/A", "later"]) {
      const button = make("button", { type: "button", className: "way-out", textContent: out });
      button.dataset.out = out;
      button.onclick = () => {
        if ((state.values[id] || "").startsWith(out)) return set("");
        const why = out === "LIM" ? prompt("What prevented the test?") : "";
        if (why !== null && (out !== "LIM" || why.trim() !== "")) set(out === "LIM" ? "LIM " + why.trim() : out);
      };
      row.append(button);
    }
    if (!field.optional) input.dataset.path = "";
    box.append(name, hint, row, bar, warn);
    show();
    return box;
  }

  // From field to field by the one key that ends a reading; the next circuit opens by itself.
  function next(from) {
    const path = [...main.querySelectorAll("[data-path]")];
    const to = path.slice(path.indexOf(from) + 1).find((one) => !filled(one));
    if (!to) return out.focus();
    const group = to.closest("details.group");
    if (!group.open) {
      for (const other of main.querySelectorAll("details.group[open]")) other.open = false;
      group.open = true;
    }
    to.focus();
    if (to.select) to.select();
    to.scrollIntoView({ block: "center" });
  }
  const filled = (node) => node.closest(".field").querySelector("[aria-pressed=true]") !== null || (node.value || "") !== "";

  function groupNode(group, opened) {
    const count = make("small");
    const handle = { count: () => {
      const left = group.fields.filter((field) => !field.optional && !state.values[idOf(field)]).length;
      count.textContent = left === 0 ? "filled in" : left + " to read";
    } };
    const needed = group.fields.filter(({ optional }) => !optional);
    const more = group.fields.filter(({ optional }) => optional);
    const body = make("div", { className: "fields" }, ...needed.map((field) => fieldNode(field, handle)));
    const node = make("details", { className: "group", open: opened },
      make("summary", {}, make("span", {}, group.title + " ", make("small", { textContent: group.about })), count),
      ...group.notes.map((text) => make("p", { className: "hint", textContent: text })), body);
    if (more.length > 0)
      node.append(make("details", {}, make("summary", { textContent: "More, where somebody chooses to" }),
        make("div", { className: "fields" }, ...more.map((field) => fieldNode(field, handle)))));
    handle.count();
    return node;
  }

  const entry = (label, node) => make("label", { textContent: label }, node);
  const by = make("input", { value: state.by, autocomplete: "name" });
  by.oninput = () => { state.by = by.value; keep(); };
  const on = make("input", { type: "date", value: state.on });
  on.oninput = () => { state.on = on.value; keep(); };
  const used = make("select", {}, ...sheet.instruments.map(({ name, title }) => new Option(title ? name + ", " + title : name, name)));
  used.value = state.used;
  used.oninput = () => { state.used = used.value; keep(); };
  main.append(make("h1", { textContent: sheet.title }),
    make("div", { className: "head" }, entry("Tested by", by), entry("Day", on), entry("Instrument", used)),
    make("p", { className: "hint", textContent: "What is typed is kept on this device until it is taken out. Enter goes on to the next reading." }));

  let opened = true;
  for (const stage of ["dead", "live"]) {
    const groups = sheet.groups.filter((group) => group.stage === stage);
    if (groups.length === 0) continue;
    main.append(make("h2", { textContent: stage === "dead" ? "Dead tests" : "Live tests" }), make("p", { className: "caution", textContent: sheet.caution[stage] }));
    for (const group of groups) { main.append(groupNode(group, opened)); opened = false; }
  }

  const result = () => {
    const readings = all.flatMap((field) => {
      const value = (state.values[idOf(field)] || "").trim();
      if (value === "" || value === "later") return [];
      return [{ at: field.at, test: field.test, value, on: state.on, with: state.used ? [state.used] : [] }];
    });
    return { wayfile: "readings", version: sheet.version, file: sheet.file, base: sheet.base, by: state.by, readings };
  };
  const said = make("span", { className: "hint" });
  const shelf = make("textarea", { readOnly: true, hidden: true });
  const out = make("button", { type: "button", textContent: "Take the readings out" });
  out.id = "take-out";
  out.onclick = async () => {
    const text = JSON.stringify(result(), null, 1) + "\n";
    const name = sheet.file.replace(/^.*[\\/]/, "").replace(/\.ways$/, "") + "-readings.json";
    const file = new File([text], name, { type: "application/json" });
    shelf.hidden = false;
    shelf.value = text;
    const link = make("a", { href: URL.createObjectURL(file), download: name });
    link.click();
    taken = true;
    status();
    if (navigator.canShare && navigator.canShare({ files: [file] }) && matchMedia("(pointer: coarse)").matches)
      await navigator.share({ files: [file] }).catch(() => {});
  };
  const clear = make("button", { type: "button", textContent: "Empty the sheet" });
  clear.onclick = () => {
    if (!confirm("Empty the sheet? What was not taken out is lost.")) return;
    try { localStorage.removeItem(key); } catch { keeps = false; }
    state.values = {};
    taken = true;
    location.reload();
  };
  function status() {
    const left = all.filter((field) => !field.optional && !state.values[idOf(field)]).length;
    const later = Object.values(state.values).filter((value) => value === "later").length;
    said.textContent = (left === 0 ? "All filled in" : left + " still blank") + (later > 0 ? ", " + later + " for later" : "") +
      (taken ? "" : ". Not taken out yet") + (keeps ? "" : ". This browser keeps nothing: take the readings out before it is closed") + ".";
  }
  main.append(make("div", { className: "foot" }, out, clear, said), shelf);
  status();
  addEventListener("beforeunload", (event) => { if (!taken && !keeps) event.preventDefault(); });
})();
`;
