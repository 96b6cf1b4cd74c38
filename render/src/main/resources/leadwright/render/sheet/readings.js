"use strict";

/*
 * The readings file (readings/1) as JSON: what the judge of the program reads. Pure functions: nothing here knows the page.
 * Entries are texts by name: by, date, tester, serial, inventory, accessories, mains-voltage, null-start, null-end,
 * taken-off, and value/R05, not-taken/R05, remark/R05 for each reading. Values have their units.
 */
const ReadingsFile = (() => {
  const MOST = 4 * 1024 * 1024;
  const NOT_READ = "not read";
  const KEYS = ["leadwright", "plan", "occasion", "device", "by", "date", "tester", "mains-voltage", "nulls", "readings"];

  /** The file, every reading of the plan with a row: those without a value or a reason are 'not read'. */
  function write(plan, entries) {
    const file = {leadwright: "readings/1", plan: plan.fingerprint, occasion: plan.occasion, device: {}};
    for (const key of ["serial", "inventory"]) {
      if (entries[key]) {
        file.device[key] = entries[key];
      }
    }
    const accessories = (entries.accessories || "").split(",").map(each => each.trim()).filter(each => each);
    if (accessories.length > 0) {
      file.device.accessories = accessories;
    }
    for (const key of ["by", "date", "tester", "mains-voltage"]) {
      if (entries[key]) {
        file[key] = entries[key];
      }
    }
    if (entries["null-start"]) {
      file.nulls = {start: entries["null-start"]};
      if (entries["null-end"]) {
        file.nulls.end = entries["null-end"];
      }
      if (entries["taken-off"]) {
        file.nulls["taken-off"] = entries["taken-off"];
      }
    }
    file.readings = plan.readings.map(({id}) => {
      const row = {id};
      if (entries["value/" + id]) {
        row.value = entries["value/" + id];
      } else {
        row["not-taken"] = entries["not-taken/" + id] || NOT_READ;
      }
      if (entries["remark/" + id]) {
        row.remark = entries["remark/" + id];
      }
      return row;
    });
    return JSON.stringify(file, null, 2) + "\n";
  }

  const isText = value => typeof value === "string" && value.trim() !== "";
  const isSection = value => typeof value === "object" && value !== null && !Array.isArray(value);

  function refuse(words) {
    throw new RangeError(words);
  }

  function keysOf(section, known, where) {
    for (const key of Object.keys(section)) {
      if (!known.includes(key)) {
        refuse("it has a key '" + key + "'" + where + ", which is not known");
      }
    }
  }

  function texts(section, keys, entries) {
    for (const key of keys.filter(each => each in section)) {
      if (!isText(section[key])) {
        refuse("its '" + key + "' is no text");
      }
      entries[key] = section[key];
    }
  }

  /** An amount of the dimension with its unit, not below nothing. */
  function amount(plan, value, key, dimension) {
    const shown = isText(value) ? Judging.read(plan.units, value, "") : null;
    if (!shown || shown.kind !== "value" || shown.dimension !== dimension || shown.amount < 0n) {
      refuse("its '" + key + "' is no amount with its unit");
    }
    return shown.text;
  }

  function row(plan, given, entries) {
    if (!isSection(given) || !isText(given.id)) {
      refuse("it has a reading without an id");
    }
    const planned = plan.readings.find(each => each.id === given.id);
    if (!planned) {
      refuse("the plan has no reading '" + given.id + "'");
    }
    keysOf(given, ["id", "value", "not-taken", "remark"], " at " + given.id);
    if (("value/" + given.id) in entries) {
      refuse("reading " + given.id + " stands there twice");
    }
    if (("value" in given) === ("not-taken" in given)) {
      refuse("reading " + given.id + " has not one of a value and a reason why it was not taken");
    }
    entries["value/" + given.id] = "";
    if ("value" in given) {
      const shown = isText(given.value) ? Judging.read(plan.units, given.value, "") : null;
      const problem = !shown ? "no value" : shown.problem || Judging.mismatch(planned, shown);
      if (problem) {
        refuse("reading " + given.id + ": " + problem);
      }
      entries["value/" + given.id] = shown.text;
    } else if (!isText(given["not-taken"])) {
      refuse("reading " + given.id + " gives no reason why it was not taken");
    } else if (given["not-taken"] !== NOT_READ) {
      entries["not-taken/" + given.id] = given["not-taken"];
    }
    if ("remark" in given) {
      if (typeof given.remark !== "string") {
        refuse("the remark at " + given.id + " is no text");
      }
      entries["remark/" + given.id] = given.remark;
    }
  }

  function checked(plan, text) {
    if (text.length > MOST) {
      refuse("it is larger than any readings file");
    }
    let file;
    try {
      file = JSON.parse(text);
    } catch (problem) {
      refuse("it is not JSON, as a sheet exports its readings");
    }
    if (!isSection(file) || file.leadwright !== "readings/1") {
      refuse("it is no readings file (readings/1)");
    }
    keysOf(file, KEYS, "");
    if (!isText(file.plan) || !/^[0-9a-f]{8,64}$/.test(file.plan)) {
      refuse("it does not say of which plan it is");
    }
    if (!plan.fingerprint.startsWith(file.plan)) {
      refuse("its readings are of plan " + file.plan.slice(0, 8) + ", and this sheet is of plan "
        + plan.fingerprint.slice(0, 8));
    }
    if ("occasion" in file && file.occasion !== plan.occasion) {
      refuse("its readings are of another occasion than the plan's");
    }
    const entries = {};
    texts(file, ["by", "date", "tester"], entries);
    if ("date" in file && !/^\d{4}-\d{2}-\d{2}$/.test(file.date)) {
      refuse("its 'date' is no day as year-month-day");
    }
    if ("device" in file) {
      if (!isSection(file.device)) {
        refuse("its 'device' is no section");
      }
      keysOf(file.device, ["serial", "inventory", "accessories"], " in 'device'");
      texts(file.device, ["serial", "inventory"], entries);
      const list = "accessories" in file.device ? file.device.accessories : [];
      if (!Array.isArray(list) || !list.every(isText)) {
        refuse("its 'accessories' are no list of texts");
      }
      entries.accessories = list.join(", ");
    }
    if ("mains-voltage" in file) {
      entries["mains-voltage"] = amount(plan, file["mains-voltage"], "mains-voltage", "VOLTAGE");
    }
    if ("nulls" in file) {
      nulls(plan, file.nulls, entries);
    }
    if (!Array.isArray(file.readings)) {
      refuse("it has no list of readings");
    }
    file.readings.forEach(each => row(plan, each, entries));
    const missing = plan.readings.filter(each => !(("value/" + each.id) in entries));
    if (missing.length > 0) {
      refuse("readings of the plan are missing in it: " + missing.map(each => each.id).join(", "));
    }
    return entries;
  }

  function nulls(plan, section, entries) {
    if (!isSection(section)) {
      refuse("its 'nulls' are no section");
    }
    keysOf(section, ["start", "end", "taken-off"], " in 'nulls'");
    entries["null-start"] = amount(plan, section.start, "start", "RESISTANCE");
    if ("end" in section) {
      entries["null-end"] = amount(plan, section.end, "end", "RESISTANCE");
    }
    if ("taken-off" in section) {
      if (!["yes", "no"].includes(section["taken-off"])) {
        refuse("its 'taken-off' is neither yes nor no");
      }
      entries["taken-off"] = section["taken-off"];
    }
  }

  /** The entries of a file, {entries}; or why it is refused as a whole, {problem}. */
  function read(plan, text) {
    try {
      return {entries: checked(plan, text)};
    } catch (problem) {
      if (problem instanceof RangeError) {
        return {problem: problem.message};
      }
      throw problem;
    }
  }

  return {write, read};
})();
