"use strict";

/* Makes the paper form one to fill in: squares take ticks, boxes take values, and both are kept on this device. */
(() => {
  const source = document.getElementById("bench-data");
  const plan = JSON.parse(source.textContent);
  const KEY = "leadwright-bench-sheet/" + plan.fingerprint;
  const SHORT = plan.fingerprint.slice(0, 8);
  const form = document.querySelector(".form");

  /** Every control by its name; a name that begins with box/ or tick/ holds on this very form alone. */
  const controls = new Map();
  /** What belongs to a reading, by its id: {planned, input, notTaken, remark, unit, ...}. */
  const rows = new Map();
  let unsaved = false;

  // ---- making elements

  function make(tag, className, text, attributes = {}) {
    const made = document.createElement(tag);
    made.className = className;
    made.textContent = text;
    Object.entries(attributes).forEach(([key, value]) => made.setAttribute(key, value));
    return made;
  }

  function control(name, input, shows) {
    input.dataset.name = name;
    input.shows = shows;
    controls.set(name, input);
    return input;
  }

  const squeezed = text => text.replace(/[\s\u00a0]+/g, " ").trim();

  function textInput(name, label, type = "text") {
    const typed = make("span", "typed", "");
    const input = make("input", "entry", "", {
      type, "aria-label": label, autocomplete: "off", autocapitalize: "off", spellcheck: "false"
    });
    control(name, input, () => {
      typed.textContent = input.value;
      typed.classList.toggle("long", input.value.length > 12);
    });
    return [input, typed];
  }

  // ---- boxes and squares of the form

  /** A box: what it holds is its unit, or the day that the plan is for. */
  function box(place, name, label, type) {
    const held = squeezed(place.textContent);
    const isDay = /^\d{4}-\d{2}-\d{2}$/.test(held);
    const [input, typed] = textInput(name, label + (held && !isDay ? ", in " + held : ""), type);
    const unit = make("span", "unit", isDay ? "\u00a0" : place.textContent);
    if (isDay) {
      input.defaultValue = held;
    }
    place.replaceChildren(input, typed, unit);
    return {input, unit: isDay ? "" : held, place};
  }

  function boxes() {
    form.querySelectorAll(".box").forEach((place, index) => {
      const field = place.closest(".field");
      const before = place.previousElementSibling;
      const label = squeezed(field ? field.firstChild.textContent
        : before && before.matches(".field") ? before.textContent + " of the second person" : "Box");
      const name = place.dataset.field;
      box(place, name || "box/" + index, label, name === "date" ? "date" : "text");
    });
  }

  /** What a square ticks: the words beside it, as far as the next square, and of which row or wire it is. */
  function tickLabel(square) {
    const wire = square.closest(".wire");
    if (wire) {
      const number = square.previousElementSibling.matches(".num") ? squeezed(square.previousElementSibling.textContent) : "";
      const jack = squeezed(square.closest("tr").querySelector(".jack").textContent);
      return jack + ", " + wire.querySelector("b").textContent + (number ? ", no. " + number : "");
    }
    const row = square.closest("tr[data-reading], tr[data-free]");
    if (square.closest(".okno")) {
      const first = square === square.parentNode.querySelector(".tick");
      return (row.dataset.reading || squeezed(row.querySelector("b").textContent)) + (first ? " ok" : " no");
    }
    let words = "";
    for (let next = square.nextSibling; next; next = next.nextSibling) {
      if (next.nodeType === Node.ELEMENT_NODE && next.matches(".tick, .ticked, .field")) {
        break;
      }
      words += next.textContent;
    }
    words = squeezed(words) || squeezed(square.parentNode.textContent);
    return (row ? row.dataset.reading + " " : "") + words;
  }

  /** The printed square stays for paper; on the screen a larger one stands in its place. */
  function squares() {
    form.querySelectorAll(".tick").forEach((square, index) => {
      const reading = square.closest(".okno") && square.closest("tr[data-reading]");
      if (reading && rows.get(reading.dataset.reading).planned.limit !== null) {
        return;
      }
      const input = make("input", "square", "", {type: "checkbox", "aria-label": tickLabel(square)});
      control("tick/" + index, input, () => square.classList.toggle("on", input.checked));
      square.before(input);
      if (square.closest(".okno")) {
        input.after(make("span", "screen", input.getAttribute("aria-label").endsWith(" ok") ? "ok" : "no"));
      }
    });
  }

  // ---- rows of readings

  function noteOf(id, cell) {
    const button = make("button", "plain-button", "Note", {type: "button", "aria-expanded": "false", "aria-label": id + " note"});
    const panel = make("div", "notes", "");
    panel.hidden = true;
    const made = [["not-taken", "Not taken, because"], ["remark", "Remark"]].map(([key, words]) => {
      const [input, typed] = textInput(key + "/" + id, id + " " + words);
      const label = make("label", "note", words + " ");
      label.append(input);
      panel.append(label);
      return {input, typed, words};
    });
    const printed = make("span", "manner printed", "");
    made.forEach(each => each.input.shows = () => {
      printed.textContent = made.filter(one => one.input.value).map(one => " " + one.words + ": " + one.input.value).join(". ");
      if (each.input.value) {
        open(true);
      }
    });
    function open(yes) {
      panel.hidden = !yes;
      button.setAttribute("aria-expanded", String(yes));
    }
    button.addEventListener("click", () => open(panel.hidden));
    cell.prepend(button);
    cell.append(printed, panel);
    return {notTaken: made[0].input, remark: made[1].input};
  }

  function readingRow(row) {
    const id = row.dataset.reading;
    const planned = plan.readings.find(each => each.id === id);
    const [, what, limit, value, corrected, okno, then] = row.children;
    corrected.classList.add("corrected");
    const label = id + " " + squeezed(what.querySelector("b").textContent)
      + (planned.limit === null ? "" : ", limit " + squeezed(limit.textContent));
    const {input, unit} = box(value, "value/" + id, label);
    const shows = input.shows;
    input.shows = () => {
      shows();
      const shown = Judging.read(plan.units, input.value, unit);
      const own = shown && (shown.problem || shown.kind === "open" || /[^\d.,\s+<>-]/.test(input.value));
      value.classList.toggle("own", Boolean(own));
    };
    input.setAttribute("enterkeyhint", "next");
    input.setAttribute("aria-describedby", "verdict-" + id);
    const verdict = make("span", "verdict", "", {id: "verdict-" + id});
    const counted = make("span", "counted", "");
    corrected.replaceChildren(counted, make("span", "was", corrected.textContent));
    if (planned.limit !== null) {
      const paper = make("span", "paper", "");
      paper.append(...okno.childNodes);
      okno.prepend(paper);
    }
    okno.append(verdict);
    rows.set(id, {planned, row, input, unit, verdict, counted, squares: okno.querySelectorAll(".tick"),
      then: squeezed(then.textContent), ...noteOf(id, what)});
  }

  /** Values written down without a limit; of several nulls at the start the first is the one that counts. */
  function freeRow(row, index) {
    const first = row.dataset.free.startsWith("null-") && !controls.has(row.dataset.free);
    const cells = row.children;
    box(cells[3], first ? row.dataset.free : "box/free-" + index, squeezed(row.querySelector("b").textContent));
    cells[4].classList.add("corrected");
  }

  // ---- what is there, and what is said of it

  const valueOf = name => (controls.has(name) ? controls.get(name).value.trim() : "");

  function amountOf(name, unit, dimension) {
    const shown = Judging.read(plan.units, valueOf(name), unit);
    const good = shown && shown.kind === "value" && shown.dimension === dimension && shown.amount >= 0n;
    return {shown: good ? shown : null, bad: shown !== null && !good};
  }

  function collect() {
    const taken = {shown: {}, date: valueOf("date"), mains: null, nulls: null};
    const bad = new Map();
    for (const [id, {planned, input, notTaken, unit}] of rows) {
      const shown = Judging.read(plan.units, input.value, unit);
      const problem = shown && (shown.problem || Judging.mismatch(planned, shown)
        || (notTaken.value.trim() ? "a reading with a value was taken: keep the value or the reason" : ""));
      if (problem) {
        bad.set("value/" + id, problem);
      } else if (shown) {
        taken.shown[id] = shown;
      }
    }
    const mains = amountOf("mains-voltage", "V", "VOLTAGE");
    taken.mains = mains.shown && mains.shown.amount > 0n ? mains.shown : null;
    if (mains.bad || (mains.shown && mains.shown.amount === 0n)) {
      bad.set("mains-voltage", "this is no mains voltage");
    }
    const start = amountOf("null-start", "mohm", "RESISTANCE");
    const end = amountOf("null-end", "mohm", "RESISTANCE");
    [["null-start", start], ["null-end", end]].filter(([, each]) => each.bad)
      .forEach(([name]) => bad.set(name, "this is no resistance"));
    if (end.shown && !start.shown) {
      bad.set("null-start", "the value at the start is missing");
    }
    if (start.shown) {
      taken.nulls = {start: start.shown.amount, end: end.shown ? end.shown.amount : null,
        "taken-off": valueOf("taken-off") !== "no"};
    }
    return {taken, bad, start, end};
  }

  /** Sets the verdicts anew: one value can change what others say. */
  function refresh() {
    const {taken, bad} = collect();
    let done = 0;
    let beyond = 0;
    let voided = 0;
    for (const [id, each] of rows) {
      const problem = bad.get("value/" + id);
      const reason = each.notTaken.value.trim();
      const judged = Judging.judge(each.planned, plan, taken);
      const side = problem ? "" : Judging.side(judged, plan.decision);
      let words = problem ? "not read: " + problem : Judging.words(judged, each.planned, plan.decision);
      if (!problem && reason && judged.verdict === "not-read") {
        words = "not taken";
      }
      if (side === "no") {
        words += ". If no: 1, 2, then " + each.then;
      }
      const odd = problem ? "" : Judging.unforeseen(each.planned, taken.shown[id], judged, plan.decision);
      words += odd ? "; " + odd : "";
      each.verdict.textContent = words;
      each.row.classList.toggle("is-odd", Boolean(odd));
      each.row.classList.toggle("is-no", side === "no" || judged.verdict === "void" || Boolean(problem));
      each.input.setAttribute("aria-invalid", String(Boolean(problem)));
      if (each.planned.limit !== null) {
        each.squares[0].classList.toggle("on", side === "ok");
        each.squares[1].classList.toggle("on", side === "no");
      }
      const size = plan.units[each.planned.dimension || "CURRENT"][Judging.plainUnit(each.unit)];
      const changed = typeof judged.changed === "bigint" && !problem;
      each.counted.textContent = changed ? Judging.decimal(judged.changed, BigInt(size)) + "\u00a0" + each.unit : "";
      each.counted.parentNode.classList.toggle("filled", changed);
      done += !problem && (taken.shown[id] || reason) ? 1 : 0;
      beyond += side === "no" ? 1 : 0;
      voided += !problem && judged.verdict === "void" ? 1 : 0;
    }
    ["mains-voltage", "null-start", "null-end"].filter(name => controls.has(name))
      .forEach(name => controls.get(name).setAttribute("aria-invalid", String(bad.has(name))));
    bar.progress.value = done;
    bar.count.textContent = done + " of " + rows.size + " readings"
      + (beyond ? ", " + beyond + " not accepted" : "") + (voided ? ", " + voided + " void" : "")
      + (bad.size ? ", " + bad.size + " cannot be read" : "");
  }

  // ---- keeping

  function kept() {
    const entries = {};
    controls.forEach((input, name) => {
      const value = input.type === "checkbox" ? input.checked : input.value;
      if (value && value !== input.defaultValue) {
        entries[name] = value;
      }
    });
    return entries;
  }

  function save() {
    try {
      localStorage.setItem(KEY, JSON.stringify({form: source.dataset.form, entries: kept()}));
      unsaved = false;
      bar.saved.textContent = "Saved on this device.";
      bar.trouble.textContent = "";
    } catch (problem) {
      unsaved = true;
      bar.saved.textContent = "";
      bar.trouble.textContent = "NOT SAVED: this browser keeps nothing more for this page (" + problem.name
        + "). What is typed is lost when the page is closed. Export or print it first.";
    }
  }

  function put(entries) {
    controls.forEach((input, name) => {
      const value = entries[name];
      if (input.type === "checkbox") {
        input.checked = value === true;
      } else {
        input.value = typeof value === "string" ? value : input.defaultValue;
      }
      input.shows();
    });
    refresh();
  }

  /** Puts back what was saved. Ticks and free boxes of another form of the same plan are left out, and that is said. */
  function restore() {
    let saved;
    try {
      const text = localStorage.getItem(KEY);
      if (text === null) {
        put({});
        return;
      }
      saved = JSON.parse(text);
      if (typeof saved.entries !== "object" || saved.entries === null) {
        throw new TypeError("no entries");
      }
    } catch (problem) {
      put({});
      bar.trouble.textContent = "What was saved for this plan cannot be read (" + problem.name + "). The form is empty.";
      return;
    }
    const same = saved.form === source.dataset.form;
    const entries = Object.fromEntries(Object.entries(saved.entries).filter(([name]) => same || !/^(box|tick)\//.test(name)));
    put(entries);
    say(same ? "What was saved is back." : "Readings are back. Ticks are not: they were made on another form of this plan.");
  }

  function say(words) {
    bar.said.textContent = words;
  }

  // ---- files

  /** Entries for a readings file, with units; and what stands against writing one: {name, words}. */
  function forFile() {
    const {taken, bad, start, end} = collect();
    const entries = {};
    for (const name of ["by", "date", "tester", "serial", "inventory", "accessories"]) {
      entries[name] = valueOf(name);
    }
    entries["mains-voltage"] = taken.mains ? taken.mains.text : "";
    entries["null-start"] = start.shown ? start.shown.text : "";
    entries["null-end"] = end.shown ? end.shown.text : "";
    entries["taken-off"] = valueOf("taken-off");
    for (const id of rows.keys()) {
      entries["value/" + id] = taken.shown[id] ? taken.shown[id].text : "";
      entries["not-taken/" + id] = valueOf("not-taken/" + id);
      entries["remark/" + id] = valueOf("remark/" + id);
    }
    const against = [...bad].map(([name, words]) => ({name, words: name.replace("value/", "") + ": " + words}));
    if (!entries.serial && !entries.inventory) {
      against.push({name: "inventory", words: "the asset or serial number of the device is missing"});
    }
    if (!entries.date) {
      against.push({name: "date", words: "the day is missing"});
    }
    const mains = Judging.mainsOf(plan, taken);
    if (mains.due && mains.measured === null) {
      against.push({name: "mains-voltage", words: "the measured mains voltage is missing"});
    } else if (Judging.unlike(mains)) {
      against.push({name: "mains-voltage", words: "the measured voltage cannot be that of the mains"});
    }
    if (!entries.by) {
      against.push({name: "by", words: "'Tested by' is missing"});
    }
    return {entries, against};
  }

  function exportReadings() {
    const {entries, against} = forFile();
    if (against.length > 0) {
      say("Not exported. " + against.map(each => each.words).join("; ") + ".");
      const first = controls.get(against[0].name);
      if (first) {
        first.focus();
      }
      return;
    }
    const blank = [...rows.keys()].filter(id => !entries["value/" + id] && !entries["not-taken/" + id]);
    const go = () => {
      const link = make("a", "", "", {download: "readings-" + SHORT + ".json"});
      link.href = URL.createObjectURL(new Blob([ReadingsFile.write(plan, entries)], {type: "application/json"}));
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60000);
      say("Exported as " + link.download + ". Judge it with: leadwright judge plan.json " + link.download);
    };
    if (blank.length === 0) {
      go();
    } else {
      ask("Not read yet: " + blank.join(", ") + ". They will stand in the file as not taken, and the result will not be"
        + " complete.", "Export all the same", go);
    }
  }

  function importReadings(text) {
    const found = ReadingsFile.read(plan, text);
    if (found.problem) {
      say("Not imported, nothing was changed: " + found.problem + ".");
      return;
    }
    const entries = found.entries;
    const go = () => {
      // Ticks and boxes that a readings file does not know stay as they are.
      const all = Object.fromEntries(Object.entries(kept()).filter(([name]) => /^(box|tick)\//.test(name)));
      put({...all, ...entries, ...inUnits(entries)});
      save();
      say("Imported.");
    };
    const typed = Object.keys(kept()).some(name => !/^(box|tick)\//.test(name));
    if (typed) {
      ask("The readings that are typed here will be replaced by those of the file.", "Replace them", go);
    } else {
      go();
    }
  }

  /** Values in the unit of their box stand there without it, as a person types them. */
  function inUnits(entries) {
    const bare = (text, unit) => {
      const end = " " + Judging.plainUnit(unit);
      return end !== " " && text.endsWith(end) ? text.slice(0, -end.length) : text;
    };
    const made = {};
    rows.forEach((each, id) => made["value/" + id] = bare(entries["value/" + id], each.unit));
    [["mains-voltage", "V"], ["null-start", "mohm"], ["null-end", "mohm"]].filter(([name]) => name in entries)
      .forEach(([name, unit]) => made[name] = bare(entries[name], unit));
    return made;
  }

  // ---- the bar and the panel

  const bar = {
    progress: make("progress", "", "", {max: plan.readings.length, "aria-label": "Readings taken"}),
    count: make("span", "count", "", {role: "status"}),
    saved: make("span", "saved", ""),
    said: make("p", "said", "", {role: "status"}),
    trouble: make("p", "trouble", "", {role: "alert"})
  };

  function button(words, act) {
    const made = make("button", "", words, {type: "button"});
    made.addEventListener("click", act);
    return made;
  }

  const dialog = make("dialog", "ask", "", {"aria-labelledby": "ask-words"});
  const askWords = make("p", "", "", {id: "ask-words"});

  function ask(words, yes, act) {
    askWords.textContent = words;
    const no = button("Keep as it is", () => dialog.close());
    dialog.replaceChildren(askWords, button(yes, () => {
      dialog.close();
      act();
    }), no);
    dialog.showModal();
    no.focus();
  }

  function clearAll() {
    ask("Everything ticked and typed on this sheet will be cleared on this device. Export it first if it is needed.",
      "Clear everything", () => {
        put({});
        try {
          localStorage.removeItem(KEY);
          say("Cleared. Nothing is kept for this plan on this device.");
        } catch (problem) {
          say("Cleared on the page; the browser gives no access to what it keeps (" + problem.name + ").");
        }
        bar.saved.textContent = "";
        unsaved = false;
      });
  }

  function nextReading() {
    const next = [...rows.values()].find(each => !each.input.value.trim() && !each.notTaken.value.trim());
    if (next) {
      next.input.focus();
      next.row.scrollIntoView({block: "center"});
    } else {
      say("Every reading has a value or a reason.");
    }
  }

  function furnish() {
    const top = make("div", "bench-bar", "", {role: "region", "aria-label": "Progress"});
    const line = make("p", "line", "");
    line.append(bar.progress, bar.count, bar.saved, button("Next reading", nextReading));
    top.append(line, bar.said, bar.trouble);

    const panel = make("section", "bench-panel", "", {"aria-labelledby": "bench-panel-title"});
    const file = make("input", "", "", {type: "file", accept: ".json,application/json"});
    file.hidden = true;
    file.addEventListener("change", async () => {
      const chosen = file.files[0];
      if (chosen) {
        try {
          importReadings(await chosen.text());
        } catch (problem) {
          say("Not imported, nothing was changed: the file cannot be read (" + problem.name + ").");
        }
        file.value = "";
      }
    });
    const words = make("p", "", "Ticks and values are kept in this browser on this device, under plan " + SHORT
      + ", while you work. Nothing is sent anywhere. Clear the sheet before the next device of this plan.");
    const buttons = make("p", "buttons", "");
    buttons.append(button("Export readings", exportReadings), button("Import readings", () => file.click()),
      button("Print", () => window.print()), button("Clear the sheet", clearAll), file);
    panel.append(make("h2", "", "Filling in on a screen", {id: "bench-panel-title"}), words);
    if (!plan["four-wire"] && controls.has("null-start")) {
      const choice = control("taken-off", make("select", "", ""), () => {});
      [["", "not said: taken as yes"], ["yes", "yes"], ["no", "no"]].forEach(([value, text]) =>
        choice.append(make("option", "", text, {value})));
      choice.defaultValue = "";
      const label = make("label", "choice", "The tester takes the leads' resistance off by itself ");
      label.append(choice);
      panel.append(label);
    }
    panel.append(buttons);
    form.before(top, panel);
    document.body.append(dialog);
  }

  // ---- beginning

  document.documentElement.classList.add("live");
  form.querySelectorAll("tr[data-reading]").forEach(readingRow);
  form.querySelectorAll("tr[data-free]").forEach(freeRow);
  boxes();
  squares();
  furnish();
  restore();

  document.addEventListener("input", event => {
    if (event.target.shows) {
      event.target.shows();
      refresh();
      save();
    }
  });
  document.addEventListener("keydown", event => {
    const inputs = [...rows.values()].map(each => each.input);
    const at = event.key === "Enter" ? inputs.indexOf(event.target) : -1;
    if (at >= 0 && at + 1 < inputs.length) {
      event.preventDefault();
      inputs[at + 1].focus();
    }
  });
  window.addEventListener("storage", event => {
    if (event.key === KEY || event.key === null) {
      restore();
      say("This sheet is also open elsewhere in this browser and was changed there: it shows what was saved last.");
    }
  });
  window.addEventListener("beforeunload", event => {
    if (unsaved) {
      event.preventDefault();
    }
  });
})();
