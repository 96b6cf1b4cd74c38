"use strict";

/*
 * What a typed value says, and where it stands to its limit. Pure functions: nothing here knows the page.
 * The judge of the program decides; this says beforehand what it will say, and a test holds the two together.
 * Amounts are whole numbers of a base unit (BigInt), compared exactly; only uncertainties are decimals.
 */
const Judging = (() => {
  const MOST = 9223372036854775807n;

  // ---- what was typed

  /** The unit as files write it, or "" where it is none: small m is milli, capital M is mega. */
  function plainUnit(typed) {
    return typed.replace(/[\u00b5\u03bc]/g, "u").replace(/[\u03a9\u2126]/g, "ohm").replace(/ohms?$/i, "ohm")
      .replace(/^K/, "k").replace(/^U/, "u").replace(/a$/, "A").replace(/v$/, "V");
  }

  function dimensionOf(units, unit) {
    return Object.keys(units).find(each => unit in units[each]) || null;
  }

  /**
   * Reads a typed value: a number with or without its unit, "> 200 Mohm", "< 1 uA", "open" or "OL".
   * units: sizes of units by dimension; unit: the one printed in the box, which counts where none is typed.
   * Gives null for nothing, {problem}, or {kind: value | above | below | open, amount, dimension, text}.
   */
  function read(units, typed, unit) {
    const text = typed.trim().replace(/\u2212/g, "-");
    if (text === "") {
      return null;
    }
    if (/^open$/i.test(text) || /^[o0]\.?l\.?$/i.test(text)) {
      return {kind: "open", text: "open"};
    }
    const parts = /^([<>]?)\s*([+-]?)(\d*)(?:([.,])(\d*))?\s*([^\d\s.,].*)?$/.exec(text);
    if (!parts || (parts[3] === "" && !parts[5])) {
      return {problem: "this is not a number with its unit"};
    }
    const [, beyond, sign, whole, point, decimals = "", typedUnit] = parts;
    if (point === "," && decimals.length === 3 && !/^0*$/.test(whole)) {
      return {problem: "a comma before three digits can be read in two ways: write a point, or no comma"};
    }
    const name = plainUnit(typedUnit || unit);
    if (name === "") {
      return {problem: "write its unit too"};
    }
    const dimension = dimensionOf(units, name);
    if (dimension === null) {
      return {problem: "unit '" + (typedUnit || unit) + "' is not one for this value"};
    }
    const fraction = decimals.replace(/0+$/, "");
    const scale = 10n ** BigInt(fraction.length);
    const size = BigInt((whole || "0") + fraction) * BigInt(units[dimension][name]);
    if (size % scale !== 0n || size / scale > MOST) {
      return {problem: "this is too large, or finer than is counted"};
    }
    const amount = sign === "-" ? -(size / scale) : size / scale;
    if (amount < 0n && (beyond !== "" || dimension !== "RESISTANCE")) {
      return {problem: "less than nothing: no current or voltage is read so; read again"};
    }
    const number = (sign === "-" ? "-" : "") + (whole || "0") + (decimals === "" ? "" : "." + decimals);
    return {
      kind: beyond === ">" ? "above" : beyond === "<" ? "below" : "value",
      amount, dimension, text: (beyond ? beyond + " " : "") + number + " " + name
    };
  }

  /** An amount in a unit, exactly: amount(12400n, 1000n) is "12.4". */
  function decimal(amount, size) {
    const sign = amount < 0n ? "-" : "";
    const whole = amount < 0n ? -amount : amount;
    const digits = String(size).length - 1;
    const fraction = digits === 0 ? "" : String(whole % size).padStart(digits, "0").replace(/0+$/, "");
    return sign + whole / size + (fraction === "" ? "" : "." + fraction);
  }

  /** Why a value cannot be this reading, or "" where it can: another quantity, or what nobody reads on a bench. */
  function mismatch(planned, shown) {
    if (shown.kind === "open") {
      return planned.dimension === null || planned.dimension === "RESISTANCE"
        ? "" : "write where the tester's range ends, such as '> 10 mA'";
    }
    if (planned.dimension !== null && shown.dimension !== planned.dimension) {
      return "'" + shown.text + "' is another quantity than this reading";
    }
    if (shown.dimension === "CURRENT") {
      const most = planned.function === null ? 1000000000000n : 1000000000n;
      return shown.amount >= most
        ? (planned.function === null ? "1000 A" : "1 A") + " and more: compare the unit with the tester's display" : "";
    }
    if (shown.dimension === "VOLTAGE") {
      return shown.amount >= 1000000000n ? "1 kV and more: compare the unit with the tester's display" : "";
    }
    if (planned["through-leads"] && shown.amount >= 1000000000n) {
      return "1 k\u03a9 and more is no path: was m\u03a9 meant? Where none was found, write 'open'";
    }
    if (planned.function === "insulation" && shown.amount !== 0n && shown.amount < 1000000n) {
      return shown.amount < 0n ? "less than nothing" : "less than 1 \u03a9: was M\u03a9 meant?";
    }
    return planned.function === "insulation" && shown.amount >= 100000000000000000n
      ? "100 G\u03a9 and more: write where the tester's range ends, such as '> 200 M\u03a9'" : "";
  }

  // ---- the mains at the outlet

  const live = planned => /^(normal|reversed)/.test(planned.state);
  const fromMains = planned => planned.leakage && live(planned) && !planned["from-source"];
  const fromRawSource = (planned, plan) => planned.leakage && planned["from-source"] && plan["raw-source"];

  function mainsOf(plan, taken) {
    const measured = [];
    if (taken.mains) {
      measured.push(taken.mains.amount);
    }
    for (const planned of plan.readings) {
      const shown = taken.shown[planned.id];
      const between = planned.key.includes("/line-to-neutral") || planned.key.includes("/leg-to-leg");
      if (between && shown && shown.kind === "value" && shown.dimension === "VOLTAGE" && shown.amount > 0n) {
        measured.push(shown.amount);
      }
    }
    const lowest = measured.length === 0 ? null : measured.reduce((one, other) => (other < one ? other : one));
    const away = each => (lowest === null ? 0n : each > lowest ? each - lowest : lowest - each);
    const nominal = plan.nominal.map(BigInt).reduce((best, each) => {
      const nearer = best === null || away(each) < away(best) || (away(each) === away(best) && each > best);
      return nearer ? each : best;
    }, null);
    const due = plan.corrects && nominal !== null
      && plan.readings.some(each => fromMains(each) || fromRawSource(each, plan));
    return {nominal, measured: lowest, due};
  }

  /** The measured voltage is no mains voltage: less than half or more than one and a half of the nominal. */
  function unlike(mains) {
    return mains.nominal !== null && mains.measured !== null
      && (mains.measured * 2n < mains.nominal || mains.measured * 2n > mains.nominal * 3n);
  }

  const awaitsMains = (planned, mains, plan) =>
    mains.due && mains.measured === null && (fromMains(planned) || fromRawSource(planned, plan));

  function corrects(planned, mains, plan) {
    return mains.due && mains.measured !== null
      && (fromMains(planned) || (fromRawSource(planned, plan) && mains.measured < mains.nominal));
  }

  /** The current at nominal voltage, rounded up. */
  function corrected(current, mains) {
    const product = current * mains.nominal;
    return product / mains.measured + (product % mains.measured > 0n ? 1n : 0n);
  }

  // ---- what must hold before a reading says anything

  const halfWidth = (accuracy, amount) => Math.abs(amount) * accuracy.share / 1e6 + Number(accuracy.floor);

  function voltmeter(plan, volts) {
    return plan.accuracy.voltage ? halfWidth(plan.accuracy.voltage, volts) / volts : 0;
  }

  function testerCheck(planned, shown, plan, mains) {
    const id = planned.of.find(each => each in plan.checks);
    if (id === undefined) {
      return null;
    }
    if (shown.kind !== "value") {
      return {good: false, words: "the known resistor gave no value: the tester is not proven to work"};
    }
    const ohms = Number(plan.checks[id].value);
    const tolerance = plan.checks[id].tolerance / 1e6;
    const off = (name, amount, otherwise) =>
      (plan.accuracy[name] ? halfWidth(plan.accuracy[name], amount) : amount * otherwise);
    const within = (least, most) => (Number(shown.amount) >= least && Number(shown.amount) <= most
      ? {good: true, words: "the known resistor reads as it must"}
      : {good: false, words: "the known resistor does not read what it must: nothing read with it counts"});
    if (!planned["by-current"]) {
      const half = ohms * tolerance + off("earth", ohms, 0.30);
      return within(ohms - half, ohms + half);
    }
    if (mains.nominal === null && mains.measured === null) {
      return null;
    }
    const volts = Number(mains.measured);
    const low = mains.measured === null ? Number(mains.nominal) * 0.85 : volts * (1 - voltmeter(plan, volts));
    const high = mains.measured === null ? Number(mains.nominal) * 1.10 : volts * (1 + voltmeter(plan, volts));
    const least = 1e9 * low / (ohms * (1 + tolerance));
    const most = 1e9 * high / (ohms * (1 - tolerance));
    return within(least - off("leakage", least, 0.15), most + off("leakage", most, 0.15));
  }

  function supplyCheck(planned, plan, taken) {
    const value = shown => (shown && shown.kind === "value" ? shown.amount : null);
    const toNeutral = plan.readings.filter(each => each.key.includes("/line-to-neutral"))
      .map(each => value(taken.shown[each.id])).find(each => each !== null);
    const toEarth = value(taken.shown[planned.id]);
    if (toEarth === null || toNeutral === undefined) {
      return null;
    }
    if (planned.key.includes("/line-to-earth")) {
      const apart = toEarth > toNeutral ? toEarth - toNeutral : toNeutral - toEarth;
      return apart <= toNeutral / 10n
        ? {good: true, words: "within 10 % of line to neutral"}
        : {good: false, words: "the supply is not referenced to earth, and every leakage reads low"};
    }
    return toEarth <= toNeutral / 10n
      ? {good: true, words: "below a tenth of line to neutral"}
      : {good: false, words: "a few volts are usual: the supply is not referenced to earth, or changed over"};
  }

  /** What a check of tester, supply or earth lead came to: {good, words}, or null where the reading is none. */
  function check(planned, plan, taken, mains) {
    const shown = taken.shown[planned.id];
    if (!shown) {
      return null;
    }
    if (planned.quantity === "tester-check") {
      return testerCheck(planned, shown, plan, mains);
    }
    if (planned.quantity === "supply-voltage" && /\/(line|neutral)-to-earth/.test(planned.key)) {
      return supplyCheck(planned, plan, taken);
    }
    if (planned.quantity === "proof" && planned.key.includes("/earth-lead-off")) {
      return shown.kind === "open" || shown.kind === "above"
        ? {good: true, words: "no path: the earth lead is off"}
        : {good: false, words: "the earth lead was still on, and leakage went past the tester"};
    }
    return null;
  }

  const nullsOf = (plan, taken) => (plan["four-wire"] ? null : taken.nulls);

  function drift(nulls) {
    if (!nulls || nulls.end === null) {
      return 0n;
    }
    return nulls.end > nulls.start ? nulls.end - nulls.start : nulls.start - nulls.end;
  }

  function leads(plan, taken) {
    const nulls = nullsOf(plan, taken);
    if (nulls && plan.accuracy.earth && drift(nulls) > BigInt(plan.accuracy.earth.floor)) {
      return "the leads changed between start and end by more than the tester's floor: null again and repeat";
    }
    if (nulls && nulls["taken-off"] && plan["null-up-to"] !== null && nulls.start > BigInt(plan["null-up-to"])) {
      return "the leads have more than the tester can null";
    }
    return "";
  }

  function pastDue(plan, taken) {
    return plan["calibrated-until"] !== null && taken.date !== "" && taken.date > plan["calibrated-until"]
      ? "the tester's calibration was due on " + plan["calibrated-until"] : "";
  }

  /** Why a reading of the device says nothing; "" where it may be judged. */
  function voids(planned, plan, taken, mains) {
    const past = pastDue(plan, taken);
    if (past) {
      return past;
    }
    for (const each of plan.readings) {
      const found = check(each, plan, taken, mains);
      const bears = each.quantity === "tester-check" ? each.function === planned.function : planned.leakage;
      if (found && !found.good && bears) {
        return each.id + ": " + found.words;
      }
    }
    return planned["through-leads"] ? leads(plan, taken) : "";
  }

  // ---- the comparison

  /** The expanded uncertainty at the limit, rounded up; null where the kit states no accuracy. */
  function guardBand(planned, at, atNominal, leadsOff, plan, taken, mains) {
    const accuracy = planned.function === null ? null : plan.accuracy[planned.function];
    if (!accuracy || accuracy.dimension !== planned.dimension) {
      return null;
    }
    const factor = atNominal ? Number(mains.nominal) / Number(mains.measured) : 1;
    const shown = Number(at) / factor + Number(leadsOff);
    let half = halfWidth(accuracy, shown) * factor + (leadsOff === null ? 0 : halfWidth(accuracy, Number(leadsOff)));
    half += planned["through-leads"] ? Number(drift(nullsOf(plan, taken))) : 0;
    let standard = half / Math.sqrt(3);
    if (atNominal) {
      const volts = Number(mains.measured);
      const stated = plan.accuracy.voltage;
      const ofVoltage = (stated ? halfWidth(stated, volts) / Math.sqrt(3) / volts : 0) * Number(at);
      standard = Math.sqrt(standard * standard + ofVoltage * ofVoltage);
    }
    return BigInt(Math.ceil(2 * standard));
  }

  function decide(ceiling, limit, value, band) {
    const within = end => (ceiling ? value <= end : value >= end);
    const inwards = ceiling ? -1n : 1n;
    if (within(limit)) {
      return band === null || within(limit + inwards * band) ? "pass" : "pass-inside-uncertainty";
    }
    return band !== null && within(limit - inwards * band) ? "fail-inside-uncertainty" : "fail";
  }

  /** A value with a limit that the tester's range does not let compare. */
  function unread(shown, ceiling, limit, past) {
    const beyond = ceiling
      ? shown.kind === "open" || (shown.kind === "above" && shown.amount >= limit)
      : shown.kind === "below" && shown.amount <= limit;
    if (past) {
      return {verdict: "void", because: past};
    }
    return beyond ? {verdict: "fail", because: ""} : {
      verdict: "not-judged",
      because: shown.kind === "open"
        ? "no path, and how far the tester's range goes is not said: write it as '> 200 M\u03a9'"
        : "the tester's range ends on the wrong side of the limit"
    };
  }

  function weigh(planned, shown, plan, taken, mains) {
    const ceiling = planned.limit.bound === "at-most";
    const limit = BigInt(planned.limit.value);
    const past = pastDue(plan, taken);
    if (!(shown.kind === "value" || shown.kind === (ceiling ? "below" : "above"))) {
      return unread(shown, ceiling, limit, past);
    }
    const nulls = nullsOf(plan, taken);
    let leadsOff = null;
    if (nulls && planned["through-leads"] && !nulls["taken-off"]) {
      leadsOff = nulls.end !== null && nulls.end < nulls.start ? nulls.end : nulls.start;
    }
    const atNominal = corrects(planned, mains, plan);
    const ofDevice = leadsOff === null ? shown.amount : shown.amount - leadsOff;
    const counted = atNominal ? corrected(ofDevice, mains) : ofDevice;
    const band = guardBand(planned, limit, atNominal, leadsOff, plan, taken, mains);
    const verdict = decide(ceiling, limit, counted, band);
    const outright = verdict.startsWith("fail");
    const changed = leadsOff !== null || atNominal ? counted : null;
    const accuracy = planned.function === null ? null : plan.accuracy[planned.function];
    const floor = accuracy ? BigInt(accuracy.floor) : 0n;
    const voided = voids(planned, plan, taken, mains)
      || (counted < -floor ? "less than nothing by more than the tester's floor: null again and repeat" : "");
    if (outright && shown.kind !== "value" && !past) {
      return {verdict: "not-judged", because: "the tester's range ends on the wrong side of the limit", changed};
    }
    if (voided && (!outright || past)) {
      return {verdict: "void", because: voided, changed};
    }
    if (plan.decision === "guard-band" && band === null && verdict === "pass") {
      return {verdict: "not-judged", because: "within the limit, but there is no guard band to keep", changed};
    }
    return {verdict, because: "", changed};
  }

  /**
   * What the judge would say of one reading.
   * taken: {shown: values by id, mains: a voltage or null, nulls: {start, end, taken-off} or null, date: day or ""}.
   * Gives {verdict: the judge's word, because, changed: the corrected amount where it is another};
   * 'not-read' where nothing, or nothing that can be this reading, is there.
   */
  function judge(planned, plan, taken) {
    const shown = taken.shown[planned.id];
    if (!shown) {
      return {verdict: "not-read", because: ""};
    }
    const mains = mainsOf(plan, taken);
    const found = check(planned, plan, taken, mains);
    const past = pastDue(plan, taken);
    if (found) {
      return {verdict: found.good && !past ? "as-expected" : "void", because: past || found.words};
    }
    if (planned.limit === null) {
      const voided = voids(planned, plan, taken, mains);
      return {verdict: voided ? "void" : "not-judged", because: voided};
    }
    if (awaitsMains(planned, mains, plan) || unlike(mains)) {
      return {verdict: "not-read", because: unlike(mains)
        ? "the measured mains voltage cannot be" : "the measured mains voltage is due first"};
    }
    return weigh(planned, shown, plan, taken, mains);
  }

  /** The words for a verdict. A verdict without a limit says only whether something was written down. */
  function words(judged, planned, decision) {
    const floor = planned.limit !== null && planned.limit.bound === "at-least";
    const over = floor ? "under limit" : "over limit";
    const because = judged.because ? ": " + judged.because : "";
    switch (judged.verdict) {
      case "not-read": return judged.because ? "not compared" + because : "not read";
      case "pass": return "within limit";
      case "pass-inside-uncertainty": return decision === "guard-band"
        ? "not accepted: within limit, but in the guard band" : "within limit, by less than the uncertainty";
      case "fail-inside-uncertainty": return over + ", by no more than the uncertainty";
      case "fail": return over;
      case "void": return "void" + because;
      case "as-expected": return "as expected" + because;
      default: return planned.limit === null ? "written down, no limit" : "not judged" + because;
    }
  }

  const holds = (span, amount) =>
    amount >= BigInt(span.low) && (span.high === null || amount <= BigInt(span.high));

  /** What is to be said of a value that is accepted but is not what the plan foresees; "" for nothing. */
  function unforeseen(planned, shown, judged, decision) {
    if (!planned.foreseen || !shown || side(judged, decision) !== "ok" || shown.dimension !== planned.dimension
      || typeof shown.amount !== "bigint") {
      return "";
    }
    const {band, firm, assumed} = planned.foreseen;
    const letters = text => text.replace(/uA/g, "\u00b5A").replace(/ohm/g, "\u03a9");
    const missed = firm && !holds(firm, shown.amount) ? firm : !assumed && !holds(band, shown.amount) ? band : null;
    if (missed) {
      return "not what this hookup should read: check the connection (foreseen " + letters(missed.text)
        + " by the device file)";
    }
    return holds(band, shown.amount) ? "" : "not what is foreseen, " + letters(band.text)
      + " by assumed values: look at the connection";
  }

  /** Whether the verdict accepts (ok), rejects (no) or leaves open (""). */
  function side(judged, decision) {
    const guarded = decision === "guard-band";
    if (judged.verdict === "pass" || (judged.verdict === "pass-inside-uncertainty" && !guarded)) {
      return "ok";
    }
    return judged.verdict.startsWith("fail") || judged.verdict === "pass-inside-uncertainty" ? "no" : "";
  }

  return {read, decimal, mismatch, mainsOf, unlike, judge, words, unforeseen, side, plainUnit};
})();
